import { describe, expect, it } from 'vitest'
import { growthGap } from '../../src/checks/list/growthGap.ts'
import { findingsOf, inM, siteOf } from './yardCase.ts'

describe('growth of the string', () => {
  it('is expansion times length times swing, with a gap of a quarter more', () => {
    // 319 ft 5.875 in by 60 °F (33.33 °C) at 0.8e-4 to 1.0e-4 per °F: 18.4 to 23 in (PPI Handbook, 2nd edition, chapter 3, from memory).
    const [note] = findingsOf(growthGap, siteOf({ job: { temperatureSwingC: { value: 60 / 1.8, basis: 'measured' } } }))
    expect(note!.level).toBe('NOTE')
    const growthIn = note!.measured!.value! / inM
    expect(growthIn).toBeGreaterThan(18.3)
    expect(growthIn).toBeLessThan(23.1)
    expect(note!.limit!.value! / note!.measured!.value!).toBeCloseTo(1.25, 9)
  })

  it('asks once for an unknown swing', () => {
    const [unknown, ...others] = findingsOf(growthGap, siteOf({}))
    expect([unknown!.isUnknown, unknown!.missing.map(({ path }) => path), others]).toEqual([true, ['temperatureSwingC.value'], []])
  })
})
