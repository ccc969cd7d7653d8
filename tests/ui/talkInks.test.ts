import { describe, expect, it } from 'vitest'
import { contrastRatio, themes } from '../../src/drawing/theme.ts'
import { stopSignInks, talkInks } from '../../src/ui/talk/talkInks.ts'

/** WCAG 2.2, success criterion 1.4.6 Contrast (Enhanced): 7 to 1. */
const LEAST_CONTRAST = 7

/** color-mix(in srgb): each channel by its share. */
const mixed = (one: string, other: string, share: number): string =>
  `#${[1, 3, 5].map((at) => Math.round(parseInt(one.slice(at, at + 2), 16) * share + parseInt(other.slice(at, at + 2), 16) * (1 - share)).toString(16).padStart(2, '0')).join('')}`

describe('inks of the talk', () => {
  for (const { name, inks } of Object.values(themes)) {
    it(`stand 7 to 1 on the page in the ${name} theme`, () => {
      for (const [ink, { of, with: other, share }] of Object.entries(talkInks)) expect(contrastRatio(mixed(inks[of], inks[other], share), inks.paper), `${ink} on paper`).toBeGreaterThanOrEqual(LEAST_CONTRAST)
      expect(contrastRatio(inks.ink, inks.paper)).toBeGreaterThanOrEqual(LEAST_CONTRAST)
      expect(contrastRatio(inks.ink, inks.sheet)).toBeGreaterThanOrEqual(LEAST_CONTRAST)
    })
    it(`let the big button and the stop sign be read in the ${name} theme`, () => {
      const next = talkInks['--talk-next']
      expect(contrastRatio(mixed(inks[next.of], inks[next.with], next.share), inks.chosenInk)).toBeGreaterThanOrEqual(LEAST_CONTRAST)
    })
  }
  it('keep the stop sign white on its own red', () => {
    expect(contrastRatio(stopSignInks.field, stopSignInks.word)).toBeGreaterThanOrEqual(LEAST_CONTRAST)
  })
})
