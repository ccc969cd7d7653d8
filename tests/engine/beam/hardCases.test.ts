import { describe, expect, it } from 'vitest'
import { solveContactBeam } from '../../../src/engine/beam/solveContactBeam.ts'
import type { ContactBeamInput, ContactBeamResult, PointSupport } from '../../../src/engine/beam/types.ts'
import { certify } from '../../helpers/beamCertificate.ts'
import { seededRandom } from '../../helpers/seededRandom.ts'

const section = { bendingStiffnessNm2: 1e5, lineLoadNPerM: 180 }
const flat = { xM: [0], levelM: [0] }
const level = (...xs: readonly number[]): PointSupport[] => xs.map((xM) => ({ xM, levelM: 0.8 }))

function solve(input: Omit<ContactBeamInput, 'section'>): ContactBeamResult {
  return solveContactBeam({ section, ...input })
}

function proven(input: Omit<ContactBeamInput, 'section'>): ContactBeamResult {
  const result = solve(input)
  expect(result.status).toBe('ok')
  const found = certify({ section, ...input }, result)
  expect(found.penetrationM).toBeLessThan(1e-9)
  expect(found.levelM).toBeLessThan(1e-9)
  expect(found.slopeM).toBeLessThan(1e-8)
  expect(found.momentMisfitRatio).toBeLessThan(1e-8)
  return result
}

describe('hard cases', () => {
  it('without ground, weight outside the outer supports is unstable', () => {
    expect(solve({ lengthM: 12, supports: level(1, 5) }).status).toBe('unstable')
    expect(solve({ lengthM: 12, supports: level(2) }).status).toBe('unstable')
    expect(solve({ lengthM: 12, supports: [{ xM: 2, levelM: 0.8, twoWay: true }, { xM: 1, levelM: 0.8 }] }).status).toBe('unstable')
  })

  it('one jaw point and a support on the heavy side hold it, the jaw pulling down', () => {
    const result = proven({ lengthM: 12, supports: [{ xM: 1, levelM: 0.8, twoWay: true }, { xM: 4, levelM: 0.8 }] })
    // moments about x = 4: jaw × 3 = −180·12·2 → −1440 N
    expect(result.supports[0]!.reactionN).toBeCloseTo(-1440, 6)
  })

  it('balanced exactly on one support it stays, with half its length each side hanging q a⁴/8EI', () => {
    const result = solve({ lengthM: 12, supports: level(6) })
    expect(result.status).toBe('ok')
    expect(result.supports[0]!.reactionN).toBeCloseTo(180 * 12, 9)
    // 180·6⁴/(8·1e5) = 0.2916 m
    expect(result.ends.levelM[0]).toBeCloseTo(0.8 - 0.2916, 9)
  })

  it('balanced on one support it turns just clear of a higher one beside it', () => {
    const result = solve({ lengthM: 12, supports: [...level(6), { xM: 9, levelM: 0.9 }] })
    expect(result.supports[0]!.reactionN).toBeCloseTo(180 * 12, 6)
    expect(result.at(9).levelM).toBeGreaterThanOrEqual(0.9 - 1e-12)
  })

  it('one support on the ground line keeps nothing from the ground', () => {
    const result = proven({ lengthM: 12, supports: [{ xM: 3, levelM: 0 }], ground: flat })
    expect(result.supports[0]).toMatchObject({ reactionN: 0, gapM: 0 })
  })

  it('one stand a foot too high carries the pipe with its neighbours hanging clear', () => {
    const supports = level(0, 6, 12, 18, 24, 30, 36)
    supports[3] = { xM: 18, levelM: 0.8 + 0.3048 }
    const result = proven({ lengthM: 36, supports })
    expect(result.supports[3]!.reactionN).toBeGreaterThan(180 * 12)
    expect(result.supports[2]!.lifted && result.supports[4]!.lifted).toBe(true)
  })

  it('supports at both ends of the pipe carry as the textbook says', () => {
    const result = proven({ lengthM: 12, supports: level(0, 12) })
    expect(result.supports.map((s) => s.reactionN)).toEqual([expect.closeTo(1080, 9), expect.closeTo(1080, 9)])
  })

  it('coincident supports count as one: the higher rules, the force is shared', () => {
    const single = proven({ lengthM: 12, supports: level(1, 6, 11) })
    const double = proven({ lengthM: 12, supports: [...level(1, 6, 11), { xM: 6 + 5e-7, levelM: 0.7 }] })
    expect(double.supports[1]!.reactionN).toBeCloseTo(single.supports[1]!.reactionN / 2, 4)
    expect(double.supports[3]).toMatchObject({ reactionN: double.supports[1]!.reactionN, gapM: 0, lifted: false })
  })

  it('supports a hair farther apart than that still have an answer', () => {
    for (const apartM of [2e-6, 1e-5, 1e-3]) {
      const result = solve({ lengthM: 12, supports: [...level(1, 6, 11), { xM: 6 + apartM, levelM: 0.8 }] })
      expect(result.status).toBe('ok')
      const total = result.supports.reduce((sum, s) => sum + s.reactionN, 0)
      expect(total).toBeCloseTo(180 * 12, 4)
    }
  })

  it('a wider merge, as of a roller’s size, joins neighbours', () => {
    const result = solve({ lengthM: 12, supports: [...level(1, 6, 11), { xM: 6.05, levelM: 0.79 }], mergeToleranceM: 0.1 })
    expect(result.supports[3]!.reactionN).toBe(result.supports[1]!.reactionN)
  })

  it('every status but ok says why, and its numbers are not numbers', () => {
    const tipped = solve({ lengthM: 12, supports: level(1) })
    expect(tipped.reason).toMatch(/outside/)
    expect(tipped.maxMoment.momentNm).toBeNaN()
    expect(tipped.at(3).levelM).toBeNaN()
    expect(tipped.supports).toEqual([])
  })

  it('dense rollers 0.5 m apart with 2 mm scatter: most lift, all is proven', () => {
    const random = seededRandom(4)
    const supports = Array.from({ length: 81 }, (_, i) => ({ xM: i * 0.5, levelM: 0.15 + (random() - 0.5) * 0.004 }))
    const result = proven({ lengthM: 40, supports })
    expect(result.supports.filter((s) => s.lifted).length).toBeGreaterThan(40)
  })

  it('two jaws a side, a hair out of line, push and pull', () => {
    const supports = [{ xM: 0.1, levelM: 0.8, twoWay: true }, { xM: 0.7, levelM: 0.803, twoWay: true }, ...level(7.6, 10.6)]
    const result = proven({ lengthM: 12, supports, ground: flat })
    expect(Math.min(...result.supports.map((s) => s.reactionN))).toBeLessThan(0)
  })

  it('slopes past 0.1 are said, not clipped', () => {
    const result = solve({ lengthM: 24, supports: level(0, 24) })
    // 180·24³/(24·1e5) = 1.0368
    expect(result.maxSlopeRatio).toBeCloseTo(1.0368, 9)
    expect(result.outOfSmallSlope).toBe(true)
    expect(solve({ lengthM: 6, supports: level(0, 6) }).outOfSmallSlope).toBe(false)
  })

  it('marginal says what nobody can set: under 1 % of the mean load, or 0.5 mm clear', () => {
    const supports = level(0, 6, 12)
    supports[1] = { xM: 6, levelM: 0.8 - 0.0004 - (5 * 180 * 12 ** 4) / (384 * 1e5) }
    const result = proven({ lengthM: 12, supports })
    expect(result.supports[1]!.lifted).toBe(true)
    expect(result.supports[1]!.gapM).toBeCloseTo(0.0004, 9)
    expect(result.supports[1]!.marginal).toBe(true)
    expect(result.supports[0]!.marginal).toBe(false)
  })

  it('a support touched without force is neither lifted nor pulling, whichever way rounding falls', () => {
    for (const nudgeM of [-1e-15, 0, 1e-15]) {
      const supports = level(0, 6, 12)
      supports[1] = { xM: 6, levelM: 0.8 + nudgeM - (5 * 180 * 12 ** 4) / (384 * 1e5) }
      const result = proven({ lengthM: 12, supports })
      expect(result.supports[1]!.lifted).toBe(false)
      expect(result.supports[1]!.reactionN).toBeLessThan(1e-6)
    }
  })

  it('far from the datum and high above it the answer is the same', () => {
    const near = proven({ lengthM: 30, supports: level(0, 7, 15, 22, 30), ground: flat })
    const far = proven({
      startM: 1e5,
      lengthM: 30,
      supports: level(0, 7, 15, 22, 30).map((s) => ({ xM: s.xM + 1e5, levelM: s.levelM + 2000 })),
      ground: { xM: [1e5], levelM: [2000] },
    })
    far.supports.forEach((s, i) => expect(s.reactionN).toBeCloseTo(near.supports[i]!.reactionN, 5))
  })

  it('from 2 in DR 11 to 65 in DR 21 over the same stands', () => {
    const supports = [0, 5, 9, 16, 21, 30].map((xM, i) => ({ xM, levelM: 0.8 + (i % 2) * 0.02 }))
    // EI and w of 2 in DR 11 and 65 in DR 21 at 500 MPa, rounded
    for (const own of [{ bendingStiffnessNm2: 182, lineLoadNPerM: 8.8 }, { bendingStiffnessNm2: 4.3e7, lineLoadNPerM: 3420 }]) {
      const result = solveContactBeam({ lengthM: 30, section: own, supports, ground: flat })
      expect(result.status).toBe('ok')
      expect(certify({ lengthM: 30, section: own, supports, ground: flat }, result).penetrationM).toBeLessThan(1e-9)
    }
  })

  it('a string over rough ground is solved within a handful of passes, cold and after a stand is moved', () => {
    const random = seededRandom(7)
    const xM: number[] = []
    const levelM: number[] = []
    for (let x = 0, h = 0; x < 612; x += 1.5 * (0.6 + 0.8 * random()), h += (random() - 0.5) * 0.12) {
      xM.push(x)
      levelM.push(h)
    }
    const heightAt = (x: number): number => {
      const i = xM.findIndex((value) => value >= x)
      return levelM[i - 1]! + ((levelM[i]! - levelM[i - 1]!) * (x - xM[i - 1]!)) / (xM[i]! - xM[i - 1]!)
    }
    const supports = Array.from({ length: 300 }, (_, i) => ({ xM: 1 + i * 2.032, levelM: heightAt(1 + i * 2.032) + 0.15 }))
    const input = { lengthM: 609.6, supports, ground: { xM, levelM } }
    const cold = proven(input)
    expect(cold.passes).toBeLessThanOrEqual(12)
    const moved = supports.map((s, i) => (i === 137 ? { ...s, levelM: s.levelM + 0.0127 } : s))
    const warm = proven({ ...input, supports: moved, warmStart: cold.pattern })
    expect(warm.passes).toBeLessThanOrEqual(6)
    const again = solve({ ...input, supports: moved })
    warm.supports.forEach((s, i) => expect(Math.abs(s.reactionN - again.supports[i]!.reactionN)).toBeLessThan(1e-5))
  })

  it('a pattern of another case costs passes, not accuracy', () => {
    const input = { lengthM: 60, supports: [{ xM: 30, levelM: 0.3 }], ground: flat }
    const straight = solve(input)
    const patterns = [
      { carrying: [false], ground: [] },
      { carrying: [true], ground: [{ kind: 'point' as const, startM: 30, endM: 30 }] },
      { carrying: [true, true], ground: [] },
      { carrying: [false], ground: [{ kind: 'interval' as const, startM: -50, endM: 500 }] },
      { carrying: [true], ground: [{ kind: 'interval' as const, startM: 40, endM: 10 }, { kind: 'point' as const, startM: NaN, endM: NaN }] },
    ]
    for (const warmStart of patterns) {
      const result = solve({ ...input, warmStart })
      expect(result.status).toBe('ok')
      expect(result.supports[0]!.reactionN).toBeCloseTo(straight.supports[0]!.reactionN, 6)
    }
  })
})

describe('malformed input is rejected by name', () => {
  const good: ContactBeamInput = { lengthM: 12, section, supports: level(1, 11) }
  it.each([
    [{ lengthM: 0 }, /lengthM/],
    [{ lengthM: NaN }, /lengthM/],
    [{ startM: Infinity }, /startM/],
    [{ section: { bendingStiffnessNm2: 0, lineLoadNPerM: 1 } }, /bendingStiffnessNm2/],
    [{ section: { bendingStiffnessNm2: 1, lineLoadNPerM: -1 } }, /lineLoadNPerM/],
    [{ mergeToleranceM: -1 }, /mergeToleranceM/],
    [{ supports: level(13) }, /supports\[0\]\.xM = 13 is off the pipe/],
    [{ supports: [{ xM: 3, levelM: NaN }] }, /supports\[0\]\.levelM/],
    [{ supports: [] }, /nothing to hold/],
    [{ clamps: [{ xM: -1, levelM: 0, slopeRatio: 0 }] }, /clamps\[0\]\.xM/],
    [{ clamps: [{ xM: 1, levelM: 0.9, slopeRatio: NaN }] }, /clamps\[0\]\.slopeRatio/],
    [{ clamps: [3, 3].map((xM) => ({ xM, levelM: 1, slopeRatio: 0 })) }, /two clamps at the same place/],
    [{ clamps: [{ xM: 1, levelM: 0.5, slopeRatio: 0 }] }, /supports\[0\] stands above the clamp/],
    [{ ground: { xM: [], levelM: [] } }, /ground has no points/],
    [{ ground: { xM: [0, 1], levelM: [0] } }, /ground\.xM has 2 values and ground\.levelM 1/],
    [{ ground: { xM: [0, 0], levelM: [0, 1] } }, /ground\.xM must increase/],
    [{ ground: { xM: [0, 1], levelM: [0, NaN] } }, /ground\.levelM\[1\]/],
    [{ ground: flat, clamps: [{ xM: 3, levelM: -0.1, slopeRatio: 0 }] }, /below the ground/],
    [{ ground: flat, clamps: [{ xM: 3, levelM: 0, slopeRatio: -0.1 }] }, /points into the ground/],
    [{ ground: flat, supports: [{ xM: 3, levelM: -0.1, twoWay: true }] }, /supports\[0\] may pull and lies below the ground/],
    [{ bow: { curvaturePerM: NaN, angleRad: 0 } }, /bow\.curvaturePerM/],
  ] as const)('%j', (change, reason) => {
    const result = solveContactBeam({ ...good, ...(change as Partial<ContactBeamInput>) })
    expect(result.status).toBe('rejected')
    expect(result.reason).toMatch(reason)
  })
})
