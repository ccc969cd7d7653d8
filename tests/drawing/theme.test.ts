import { describe, expect, it } from 'vitest'
import type { InkName } from '../../src/drawing/primitives.ts'
import { contrastRatio, themes } from '../../src/drawing/theme.ts'

/** What docs/look.md states, by ink and what it stands on: day, night, and the least for full sun (WCAG 2.2, 1.4.3 and 1.4.11). */
const stated: readonly (readonly [ink: InkName, on: InkName, day: number, night: number, sunLeast: number])[] = [
  ['ink', 'paper', 15.0, 12.7, 15],
  ['ink2', 'paper', 6.8, 7.6, 7],
  ['chosen', 'paper', 5.3, 8.2, 7],
  ['chosenInk', 'chosen', 5.3, 8.2, 7],
  ['red', 'paper', 5.8, 6.1, 7],
  ['amber', 'paper', 5.2, 8.2, 7],
  ['blue', 'paper', 6.5, 7.0, 7],
  ['check', 'paper', 6.5, 7.0, 7],
  ['safe', 'paper', 5.7, 7.1, 7],
  ['tapeInk', 'tape', 11.3, 9.0, 7],
  ['tapeInk', 'tapePale', 14.8, 5.4, 7],
  ['stopInk', 'stop', 6.7, 4.7, 7],
  ['fixInk', 'fix', 9.8, 10.5, 7],
  ['checkInk', 'check', 7.5, 8.0, 7],
]

describe('colours of the sheet', () => {
  it.each([['#000000', '#FFFFFF', 21], ['#777777', '#FFFFFF', 4.48]])('gives the contrast of %s on %s that WCAG 2.2 gives, %d', (one, other, ratio) => {
    expect(contrastRatio(one, other)).toBeCloseTo(ratio, 2)
  })

  it.each(stated)('%s on %s stands as stated: %d by day, %d by night, at least %d in full sun', (ink, on, day, night, sunLeast) => {
    const at = (theme: 'day' | 'night' | 'sun') => contrastRatio(themes[theme].inks[ink], themes[theme].inks[on])
    // Stated to one decimal; the eighth of a point beyond covers figures that were rounded up.
    expect(Math.abs(at('day') - day)).toBeLessThan(0.15)
    expect(Math.abs(at('night') - night)).toBeLessThan(0.15)
    expect(at('sun')).toBeGreaterThanOrEqual(sunLeast)
  })

  it('leaves hair lines faint, since they carry nothing', () => {
    expect(contrastRatio(themes.day.inks.hair, themes.day.inks.paper)).toBeLessThan(2)
    expect(contrastRatio(themes.night.inks.hair, themes.night.inks.paper)).toBeLessThan(2)
  })

  it('needs the ink edge of a FIX by day, yellow alone standing under 3 to 1', () => {
    expect(contrastRatio(themes.day.inks.fix, themes.day.inks.paper)).toBeLessThan(3)
    expect(contrastRatio(themes.day.inks.ink, themes.day.inks.paper)).toBeGreaterThan(3)
  })

  it('keeps words on the lot readable in every theme, not only on paper', () => {
    for (const theme of Object.values(themes)) {
      for (const ink of ['ink', 'ink2', 'red', 'amber', 'blue', 'chosen'] as const) expect(contrastRatio(theme.inks[ink], theme.inks.lot), `${theme.name} ${ink}`).toBeGreaterThanOrEqual(4.5)
    }
  })
})
