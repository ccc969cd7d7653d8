import { describe, expect, it } from 'vitest'
import { expansionPerC, restrainedBow, thermalChangeM } from '../../../src/engine/pipe/thermal.ts'
import { must } from './caseChecks.ts'

describe('thermal change', () => {
  it('shrinks in the cold and is per degree Celsius', () => {
    expect(expansionPerC('PE4710')).toBeCloseTo(1.44e-4, 12) // 8e-5 × 1.8
    expect(must(thermalChangeM({ material: 'PE4710', lengthM: 100, temperatureChangeC: -10 }))).toBeCloseTo(-0.144, 12)
  })

  it('names what is missing', () => {
    expect(thermalChangeM({ material: 'PE4710', lengthM: null, temperatureChangeC: null })).toEqual({ status: 'missing', fields: ['lengthM', 'temperatureChangeC'] })
  })

  it('gives no bow without expansion and refuses shrinkage, which pulls straight', () => {
    expect(restrainedBow({ lengthM: 30, odM: 0.3, expansionRatio: 0 })).toEqual({ bowM: 0, strainRatio: 0 })
    expect(() => restrainedBow({ lengthM: 30, odM: 0.3, expansionRatio: -0.001 })).toThrow('expansionRatio')
  })
})
