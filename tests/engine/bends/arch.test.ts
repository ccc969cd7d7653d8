import { describe, expect, it } from 'vitest'
import { archFor, archSupports, parkedCurve, reverseCurveM } from '../../../src/engine/bends/arch.ts'

const ft = 0.3048
const degrees = (value: number): number => (value * Math.PI) / 180

describe('the arch into a bore', () => {
  it('rises R(1 − cos θ): 100 ft and 12° give 2.2 ft', () => {
    // 100 × (1 − 0.978148) = 2.185 ft; 100 × sin 12° = 20.79 ft over; ramp √(2.185 × (400 − 2.185)) = 29.48 ft.
    const arch = archFor({ entryAngleRad: degrees(12), radiusM: 100 * ft, rollerHeightM: 0 })
    expect(arch.riseM / ft).toBeCloseTo(2.185, 3)
    expect(arch.overM / ft).toBeCloseTo(20.791, 3)
    expect(arch.overPipeM / ft).toBeCloseTo(20.944, 3)
    expect(arch.rampM / ft).toBeCloseTo(29.484, 2)
    expect(arch.lengthM / ft).toBeCloseTo(20.791 + 29.484, 2)
  })

  it('enters at its angle, is level at its top and on the rollers, and nowhere bends more than its radius', () => {
    const arch = archFor({ entryAngleRad: degrees(15), radiusM: 40, rollerHeightM: 0.2 })
    const slope = (atM: number): number => (arch.levelM(atM + 1e-5) - arch.levelM(atM)) / 1e-5
    expect(Math.atan(slope(0))).toBeCloseTo(degrees(15), 4)
    expect(slope(arch.overM - 1e-5)).toBeCloseTo(0, 5)
    expect(slope(arch.lengthM - 1e-5)).toBeCloseTo(0, 5)
    expect(arch.levelM(arch.overM)).toBeCloseTo(arch.riseM, 9)
    expect(arch.levelM(arch.lengthM)).toBeCloseTo(0.2, 9)
    for (let backM = 1; backM < arch.lengthM - 1; backM += 0.5) {
      const h = 0.01
      const second = (arch.levelM(backM + h) - 2 * arch.levelM(backM) + arch.levelM(backM - h)) / h ** 2
      const radiusM = (1 + slope(backM) ** 2) ** 1.5 / Math.max(1e-12, Math.abs(second))
      expect(radiusM).toBeGreaterThan(40 * 0.99)
    }
  })

  it('needs no ramp where the rollers stand as high as its top', () => {
    const arch = archFor({ entryAngleRad: degrees(10), radiusM: 20, rollerHeightM: 1 })
    expect(arch.rampM).toBe(0)
    expect(arch.lengthM).toBe(arch.overM)
    expect(arch.levelM(50)).toBeCloseTo(arch.riseM, 12)
  })

  it('stands on its top and on supports no farther apart than asked, which carry all of it but its ends', () => {
    const arch = archFor({ entryAngleRad: degrees(12), radiusM: 100 * ft, rollerHeightM: 0 })
    const supports = archSupports(arch, 15 * ft)
    // 20.8 ft over in two parts of 10.4 ft, 29.5 ft of ramp in two of 14.7 ft: three supports.
    expect(supports.map(({ backM }) => backM / ft)).toEqual([expect.closeTo(10.395, 2), expect.closeTo(20.791, 2), expect.closeTo(35.533, 2)])
    expect(supports[1]!.levelM).toBeCloseTo(arch.riseM, 9)
    // Half of the first and of the last gap rest on entry and roller.
    const endsM = ((supports[0]!.backM + arch.lengthM - supports[2]!.backM) / 2) * (arch.pipeM / arch.lengthM)
    expect(supports.reduce((sum, { carriesM }) => sum + carriesM, endsM)).toBeCloseTo(arch.pipeM, 9)
  })

  it('refuses angles and radii that cannot be', () => {
    expect(() => archFor({ entryAngleRad: 0, radiusM: 10, rollerHeightM: 0 })).toThrow('entryAngleRad is 0')
    expect(() => archFor({ entryAngleRad: 2, radiusM: 10, rollerHeightM: 0 })).toThrow('must be at most')
    expect(() => archSupports(archFor({ entryAngleRad: 0.2, radiusM: 10, rollerHeightM: 0 }), 0)).toThrow('spacingM')
  })
})

describe('the pit of a liner', () => {
  it('is √(d(4R − d)) long: 8 ft deep at R 54 ft takes 40.8 ft', () => {
    // 8 × (216 − 8) = 1,664; √1,664 = 40.79 ft. ASTM F585, from memory, confirm.
    expect(reverseCurveM(8 * ft, 54 * ft) / ft).toBeCloseTo(40.79, 2)
    expect(reverseCurveM(0, 54)).toBe(0)
    expect(() => reverseCurveM(109, 54)).toThrow('depthM')
  })
})

describe('a string parked on a curve', () => {
  it('takes a chord of 2R sin(φ/2) and a depth of R(1 − cos(φ/2))', () => {
    // 60 m on 40 m: φ = 1.5; chord 80 × sin 0.75 = 54.53 m, depth 40 × (1 − cos 0.75) = 10.73 m.
    const parked = parkedCurve(60, 40)
    expect(parked.chordM).toBeCloseTo(54.531, 3)
    expect(parked.depthM).toBeCloseTo(10.732, 3)
    expect(parked.isOverHalfTurn).toBe(false)
  })
  it('goes on in straight legs past a half turn', () => {
    // Half circle of 10 m: 31.416 m; 40 m leaves 4.292 m a leg.
    expect(parkedCurve(40, 10)).toEqual({ turnRad: Math.PI, isOverHalfTurn: true, chordM: 20, depthM: expect.closeTo(14.292, 3) })
  })
})
