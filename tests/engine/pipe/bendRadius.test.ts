import { describe, expect, it } from 'vitest'
import { bendTimesOd, minimumBendRadiusM } from '../../../src/engine/pipe/bendRadius.ts'

describe('bend radius', () => {
  it('takes the larger multiple between two rows, so metric SDRs are safe', () => {
    expect(bendTimesOd(7.4)).toBe(20) // between 7.3 and 9, both 20
    expect(bendTimesOd(10)).toBe(25) // between 9 (20) and 11 (25)
    expect(bendTimesOd(13.6)).toBe(25)
    expect(bendTimesOd(33)).toBe(52) // between 32.5 (42) and 41 (52)
    expect(bendTimesOd(6)).toBe(20)
    expect(bendTimesOd(42)).toBeUndefined()
  })

  it('needs no DR for a fitting in the bend, and names what is missing without one', () => {
    expect(minimumBendRadiusM({ odM: 0.5, dr: null, fittingInBend: true })).toEqual({ status: 'ok', value: 50 })
    expect(minimumBendRadiusM({ odM: 0.5, dr: null, fittingInBend: false })).toEqual({ status: 'missing', fields: ['dr'] })
    expect(minimumBendRadiusM({ odM: null, dr: null, fittingInBend: true })).toEqual({ status: 'missing', fields: ['odM'] })
    expect(minimumBendRadiusM({ odM: 0.5, dr: 50, fittingInBend: false })).toMatchObject({ status: 'uncovered', field: 'dr' })
  })
})
