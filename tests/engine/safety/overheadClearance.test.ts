import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { overheadClearanceM, transitClearanceM } from '../../../src/engine/safety/overheadClearance.ts'
import { footM } from '../../../src/units/factors.ts'

// One seed, so that a failing run can be repeated.
fc.configureGlobal({ seed: 20_261 })

describe('distance from an overhead line', () => {
  it('takes the larger of both rules at any voltage, and never falls with it', () => {
    const kv = fc.double({ min: 0, max: 1000, noNaN: true })
    fc.assert(fc.property(kv, kv, (a, b) => {
      const low = overheadClearanceM(Math.min(a, b))
      const high = overheadClearanceM(Math.max(a, b))
      expect(low.clearanceM).toBe(Math.max(low.tableAM!, low.vehiclesM!))
      expect(high.clearanceM!).toBeGreaterThanOrEqual(low.clearanceM!)
    }))
  })

  it('keeps 20 ft while the voltage is unknown and says so', () => {
    const unknown = overheadClearanceM(null)
    expect(unknown).toMatchObject({ status: 'unknownVoltage', tableAM: null })
    expect(unknown.clearanceM! / footM).toBeCloseTo(20, 9)
    expect(transitClearanceM(null)).toBeNull()
  })

  it('gives no distance over 1,000 kV and refuses a negative voltage by name', () => {
    expect(overheadClearanceM(1001)).toMatchObject({ status: 'setByOwner', clearanceM: null })
    expect(transitClearanceM(1001)).toBeNull()
    expect(() => overheadClearanceM(-1)).toThrow('voltageKv')
  })

  it('works the vehicle rule out: 138 kV is 10 ft + 88 × 0.4 in = 155.2 in', () => {
    expect(overheadClearanceM(138).vehiclesM! / 0.0254).toBeCloseTo(155.2, 9)
    expect(overheadClearanceM(33).vehiclesM! / footM).toBeCloseTo(10, 9)
  })
})
