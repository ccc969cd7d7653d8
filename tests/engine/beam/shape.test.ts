import { describe, expect, it } from 'vitest'
import { solveContactBeam } from '../../../src/engine/beam/solveContactBeam.ts'
import { beamCase } from '../../helpers/beamCases.ts'

const section = { bendingStiffnessNm2: 1e5, lineLoadNPerM: 180 }

describe('the bent shape', () => {
  it('is the quartic of the simple beam, w = −q x (L³ − 2 L x² + x³)/24EI', () => {
    const result = solveContactBeam({ lengthM: 6, section, supports: [0, 6].map((xM) => ({ xM, levelM: 2 })) })
    for (const x of [0, 1, 2.5, 3, 5.9, 6]) {
      const { levelM, slopeRatio, momentNm, shearN } = result.at(x)
      expect(levelM).toBeCloseTo(2 - (180 * x * (216 - 12 * x * x + x ** 3)) / 24e5, 12)
      expect(slopeRatio).toBeCloseTo((-180 * (216 - 36 * x * x + 4 * x ** 3)) / 24e5, 12)
      expect(momentNm).toBeCloseTo((180 * x * (6 - x)) / 2, 8)
      expect(shearN).toBeCloseTo(180 * (3 - x), 8)
    }
  })

  it('is held to the body beyond its ends', () => {
    const result = solveContactBeam({ lengthM: 6, section, supports: [1, 5].map((xM) => ({ xM, levelM: 0 })) })
    expect(result.at(-5)).toEqual(result.at(0))
    expect(result.at(99).levelM).toBe(result.ends.levelM[1])
  })

  it('moment and slope follow from the level by differences', () => {
    for (let i = 0; i < 28; i++) {
      const { input } = beamCase(23, i)
      const result = solveContactBeam(input)
      const start = input.startM ?? 0
      const k0 = input.bow ? input.bow.curvaturePerM * Math.cos(input.bow.angleRad) : 0
      const h = input.lengthM * 1e-4
      const joins = [...input.supports.map((s) => s.xM), ...result.groundContacts.flatMap((g) => [g.startM, g.endM]), ...(input.clamps ?? []).map((c) => c.xM)]
      for (let k = 1; k < 20; k++) {
        const x = start + (input.lengthM * k) / 20
        if (joins.some((join) => Math.abs(join - x) < 2 * h)) continue
        const [left, here, right] = [result.at(x - h), result.at(x), result.at(x + h)]
        // the central difference leaves w‴ h²/6
        const left3 = ((Math.abs(here.shearN) / input.section.bendingStiffnessNm2) * h * h) / 6
        expect(Math.abs((right.levelM - left.levelM) / (2 * h) - here.slopeRatio)).toBeLessThan(1.1 * left3 + 1e-9)
        const curvature = (right.slopeRatio - left.slopeRatio) / (2 * h)
        expect(Math.abs(curvature - here.momentNm / input.section.bendingStiffnessNm2 - k0)).toBeLessThan(1e-5)
      }
    }
  })

  it('the curve for drawing rises in x, has both ends, every contact and every step', () => {
    for (let i = 0; i < 28; i++) {
      const { input } = beamCase(29, i)
      const result = solveContactBeam(input)
      const start = input.startM ?? 0
      const { xM, levelM } = result.curve(0.5)
      expect(xM[0]).toBe(start)
      expect(xM[xM.length - 1]).toBe(start + input.lengthM)
      for (let k = 1; k < xM.length; k++) expect(xM[k]!).toBeGreaterThan(xM[k - 1]!)
      xM.forEach((x, k) => expect(Math.abs(levelM[k]! - result.at(x).levelM)).toBeLessThan(1e-9))
      const wanted = [...result.groundContacts.flatMap((g) => [g.startM, g.endM])]
      for (const x of wanted) expect(xM.some((value) => Math.abs(value - x) < 1e-9)).toBe(true)
      expect(xM.length).toBeGreaterThanOrEqual(Math.floor(input.lengthM / 0.5))
    }
  })

  it('a step that is not above 0 is refused', () => {
    const result = solveContactBeam({ lengthM: 6, section, supports: [1, 5].map((xM) => ({ xM, levelM: 0 })) })
    expect(() => result.curve(0)).toThrow(/stepM/)
  })

  it('the largest sag lies below the chord where it says, and nothing in the span lies lower', () => {
    const result = solveContactBeam({ lengthM: 14, section, supports: [{ xM: 0, levelM: 1 }, { xM: 6, levelM: 1.05 }, { xM: 14, levelM: 0.95 }] })
    for (const { fromM, toM, sagM, atM } of result.sags) {
      const below = (x: number): number => {
        const a = result.at(fromM).levelM
        const b = result.at(toM).levelM
        return a + ((b - a) * (x - fromM)) / (toM - fromM) - result.at(x).levelM
      }
      expect(below(atM)).toBeCloseTo(sagM, 12)
      for (let k = 0; k <= 200; k++) expect(below(fromM + ((toM - fromM) * k) / 200)).toBeLessThanOrEqual(sagM + 1e-12)
    }
  })

  it('a span that hogs all through has no sag', () => {
    // two stands close together under long free ends
    const result = solveContactBeam({ lengthM: 12, section, supports: [5.5, 6.5].map((xM) => ({ xM, levelM: 0 })) })
    expect(result.sags).toEqual([{ fromM: 5.5, toM: 6.5, sagM: 0, atM: 6 }])
  })
})
