import { describe, expect, it } from 'vitest'
import { allowableTensileLoadN, yieldTemperatureRatio } from '../../../src/engine/pipe/allowablePull.ts'
import type { AllowablePullInput } from '../../../src/engine/pipe/allowablePull.ts'
import { fahrenheitToC, psiPa } from '../../../src/units/factors.ts'
import { must } from './caseChecks.ts'

const pull = (over: Partial<AllowablePullInput> = {}): AllowablePullInput => ({ edition: 'F1804', material: 'PE4710', odM: 0.32385, dr: 17, durationS: 12 * 3600, wallTemperatureC: 23, ...over })

describe('allowable tensile load', () => {
  it('steps down with the duration and ends where the edition ends', () => {
    const psi = (over: Partial<AllowablePullInput>) => must(allowableTensileLoadN(pull(over))).stressPa / psiPa
    expect(psi({ durationS: 3600 })).toBeCloseTo(1400, 6) // 3,500 × 0.40 × 1.0
    expect(psi({ durationS: 3601 })).toBeCloseTo(1330, 6) // × 0.95
    expect(psi({ durationS: 24 * 3600 })).toBeCloseTo(1274, 6) // × 0.91
    expect(psi({ edition: 'handbookCh12', durationS: 5 * 3600 })).toBeCloseTo(1150, 6) // the 12 h row, at or above 5 h
    expect(allowableTensileLoadN(pull({ durationS: 25 * 3600 }))).toMatchObject({ status: 'uncovered', field: 'durationS' })
    expect(allowableTensileLoadN(pull({ edition: 'ppi2015', durationS: 13 * 3600 }))).toMatchObject({ status: 'uncovered', field: 'durationS' })
  })

  it('falls with a hot wall by the house rule and says that it is assumed', () => {
    expect(yieldTemperatureRatio(fahrenheitToC(123))).toBeCloseTo(0.7, 9) // 1 − 0.006 × 50
    expect(yieldTemperatureRatio(fahrenheitToC(200))).toBe(0.5)
    expect(yieldTemperatureRatio(0)).toBe(1)
    expect(must(allowableTensileLoadN(pull())).isTemperatureAssumed).toBe(false)
    expect(must(allowableTensileLoadN(pull({ wallTemperatureC: 50 }))).isTemperatureAssumed).toBe(true)
  })

  it('names what is missing: inputs, and a yield stress the tables lack', () => {
    expect(allowableTensileLoadN(pull({ wallTemperatureC: null, dr: null }))).toEqual({ status: 'missing', fields: ['dr', 'wallTemperatureC'] })
    expect(allowableTensileLoadN(pull({ material: 'PE2708' }))).toEqual({ status: 'missing', fields: ['yieldPa'] })
    expect(must(allowableTensileLoadN(pull({ material: 'PE2708', yieldPa: 2600 * psiPa }))).stressPa / psiPa).toBeCloseTo(988, 6) // 2,600 × 0.38
    expect(allowableTensileLoadN(pull({ edition: 'ppi2015', material: 'PE2708' }))).toMatchObject({ status: 'uncovered', field: 'material' })
  })
})
