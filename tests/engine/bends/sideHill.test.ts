import { describe, expect, it } from 'vitest'
import { sideHill, windOnPipeNPerM } from '../../../src/engine/bends/sideHill.ts'

const lbPerFt = 4.4482216152605 / 0.3048

describe('a string on a side slope', () => {
  it('24.6 lb/ft on 3 to 1 with friction 0.4 is safe 1.2 times', () => {
    // φ = 18.43°: 24.6 × 0.3162 = 7.78 lb/ft drives, 0.4 × 24.6 × 0.9487 = 9.34 holds: 1.2.
    const safety = sideHill({ lineLoadNPerM: 24.6 * lbPerFt, crossSlopeRatio: 1 / 3, frictionRatio: 0.4, windNPerM: 0 })
    expect(safety.drivesNPerM / lbPerFt).toBeCloseTo(7.779, 3)
    expect(safety.holdsNPerM / lbPerFt).toBeCloseTo(9.335, 3)
    expect(safety.safetyRatio).toBeCloseTo(1.2, 9)
  })
  it('without wind the safety is friction over slope, whatever the pipe', () => {
    // 0.1 ÷ 0.3333 = 0.3 on a wet liner.
    expect(sideHill({ lineLoadNPerM: 7, crossSlopeRatio: 1 / 3, frictionRatio: 0.1, windNPerM: 0 }).safetyRatio).toBeCloseTo(0.3, 9)
  })
  it('wind adds to what drives', () => {
    // 100 N/m at 0.75: φ = 36.87°, 60 drives and 20 of wind, 0.8 × 80 = 64 holds: 0.8.
    expect(sideHill({ lineLoadNPerM: 100, crossSlopeRatio: 0.75, frictionRatio: 0.8, windNPerM: 20 }).safetyRatio).toBeCloseTo(0.8, 9)
  })
  it('nothing drives on level ground in calm air', () => {
    expect(sideHill({ lineLoadNPerM: 100, crossSlopeRatio: 0, frictionRatio: 0.3, windNPerM: 0 }).safetyRatio).toBe(Infinity)
  })
  it('wind is 0.00256 V² lb/ft² on the outside diameter', () => {
    // 35 mph on 18 in: 0.00256 × 1,225 × 1.5 = 4.704 lb/ft, 19 % of 24.6 lb/ft.
    const windN = windOnPipeNPerM({ odM: 18 * 0.0254, windMPerS: 35 * 0.44704, airDensityKgPerM3: 1.2256, dragCoefficientRatio: 1 })
    expect(windN / lbPerFt).toBeCloseTo(4.704, 1)
    expect(windN / lbPerFt / 24.6).toBeCloseTo(0.19, 2)
  })
})
