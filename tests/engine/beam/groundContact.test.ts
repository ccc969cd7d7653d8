import { describe, expect, it } from 'vitest'
import { solveContactBeam } from '../../../src/engine/beam/solveContactBeam.ts'
import type { ContactBeamInput, ContactBeamResult } from '../../../src/engine/beam/types.ts'

const EI = 1.1e5
const q = 180
const c = q / EI
const section = { bendingStiffnessNm2: EI, lineLoadNPerM: q }
const flat = { xM: [0], levelM: [0] }

function solve(input: Omit<ContactBeamInput, 'section'>): ContactBeamResult {
  const result = solveContactBeam({ section, ...input })
  expect(result.status).toBe('ok')
  return result
}

describe('contact with the ground', () => {
  it('a pipe on level ground lies on all of it', () => {
    const result = solve({ lengthM: 30, supports: [], ground: flat })
    expect(result.groundContacts).toEqual([{ startM: 0, endM: 30, kind: 'interval', forceN: q * 30 }])
    expect(result.maxMoment.momentNm).toBe(0)
  })

  it('a pipe on an even slope lies along it', () => {
    const result = solve({ lengthM: 30, supports: [], ground: { xM: [0, 15, 40], levelM: [0, 0.75, 2] } })
    expect(result.groundContacts).toHaveLength(1)
    expect(result.at(20).levelM).toBeCloseTo(1, 12)
    expect(result.at(20).slopeRatio).toBeCloseTo(0.05, 12)
  })

  it('over a hollow it bridges l = (12 EI Δ/q)^⅓ with equal edge forces q l/2', () => {
    // Symmetric about the kink: EI·Δ = ∫ q x (l − x)/2 dx = q l³/12.
    const turn = 2 / 30
    const result = solve({ lengthM: 60, supports: [], ground: { xM: [0, 30, 60], levelM: [1, 0, 1] } })
    const length = Math.cbrt((12 * turn) / c)
    const [left, right] = result.groundContacts
    expect(left!.endM).toBeCloseTo(30 - length / 2, 9)
    expect(right!.startM).toBeCloseTo(30 + length / 2, 9)
    expect(left!.forceN).toBeCloseTo(q * 30, 6)
    // moment at the middle q l²/8
    expect(result.at(30).momentNm).toBeCloseTo((q * length * length) / 8, 6)
  })

  it('over a ridge it stands off (12 EI Δ/q)^⅓ on both sides', () => {
    // Each side: u = u′ = κ = 0 at the edge, 0 at the ridge, slope ½Δ there: c l³/24 = Δ/2.
    const turn = 2 / 30
    const result = solve({ lengthM: 60, supports: [], ground: { xM: [0, 30, 60], levelM: [0, 1, 0] } })
    const length = Math.cbrt((12 * turn) / c)
    const [left, ridge, right] = result.groundContacts
    expect(left!.endM).toBeCloseTo(30 - length, 9)
    expect(ridge).toMatchObject({ startM: 30, endM: 30, kind: 'point' })
    expect(right!.startM).toBeCloseTo(30 + length, 9)
    // κ = −c l²/4 at the ridge
    expect(result.at(30).momentNm).toBeCloseTo((-q * length * length) / 4, 6)
  })

  it('a bowed pipe, ends up, lies but for √(2 EI k₀/q) at each end', () => {
    const k0 = 0.01
    const result = solve({ lengthM: 24, supports: [], ground: flat, bow: { curvaturePerM: k0, angleRad: 0 } })
    const end = Math.sqrt((2 * k0) / c)
    expect(result.groundContacts).toHaveLength(1)
    expect(result.groundContacts[0]!.startM).toBeCloseTo(end, 12)
    // the tip stands c end⁴/8 above the ground: ½k₀e² − c(e⁴/6 − e⁴/24) = c e⁴/8 with k₀ = c e²/2
    expect(result.ends.levelM[0]).toBeCloseTo((c * end ** 4) / 8, 12)
    expect(result.at(12).momentNm).toBeCloseTo(-EI * k0, 8)
  })

  it('a pipe bowed too much to lie rocks on its middle', () => {
    const result = solve({ lengthM: 12, supports: [], ground: flat, bow: { curvaturePerM: 0.05, angleRad: 0 } })
    expect(result.groundContacts).toEqual([{ startM: 6, endM: 6, kind: 'point', forceN: expect.closeTo(q * 12, 8) }])
    expect(result.ends.levelM[0]).toBeCloseTo(result.ends.levelM[1], 12)
  })

  it('a bowed pipe, ends down, stands on its tips and lies between if it is long', () => {
    const k0 = -0.01
    const result = solve({ lengthM: 24, supports: [], ground: flat, bow: { curvaturePerM: 0.01, angleRad: Math.PI } })
    // κ = k₀ at the tip, height 0: 0 = κ l²/6 + c l⁴/24
    const free = Math.sqrt((-4 * k0) / c)
    expect(result.groundContacts.map((g) => g.kind)).toEqual(['point', 'interval', 'point'])
    expect(result.groundContacts[1]!.startM).toBeCloseTo(free, 9)
  })

  it('a bow on its side changes nothing in the upright plane', () => {
    const supports = [2, 9, 14].map((xM) => ({ xM, levelM: 0.5 }))
    const straight = solve({ lengthM: 16, supports })
    const aside = solve({ lengthM: 16, supports, bow: { curvaturePerM: 0.02, angleRad: Math.PI / 2 } })
    expect(aside.supports).toEqual(straight.supports)
  })

  it('turning the bow through the circle, ends up lowers the sag most', () => {
    const sagAt = (degrees: number): number =>
      solve({ lengthM: 12, supports: [{ xM: 1, levelM: 0 }, { xM: 11, levelM: 0 }], bow: { curvaturePerM: 0.004, angleRad: (degrees * Math.PI) / 180 } }).at(6).levelM
    const levels = [0, 45, 90, 135, 180].map(sagAt)
    // ends up: the middle hangs lowest against the ends; ends down: highest
    expect([...levels].sort((a, b) => a - b)).toEqual(levels)
    // k₀ L²/8 each way from the straight one: 0.004·100/8 = 0.05 m
    expect(levels[4]! - levels[2]!).toBeCloseTo(0.05, 12)
  })

  it('a stand below the ground carries nothing and the pipe lies over it', () => {
    const result = solve({ lengthM: 20, supports: [{ xM: 5, levelM: -0.1 }, { xM: 10, levelM: 0 }], ground: flat })
    expect(result.supports.map((s) => s.reactionN)).toEqual([0, 0])
    expect(result.groundTotalN).toBeCloseTo(q * 20, 9)
  })

  it('with one stand it comes to rest on the ground', () => {
    const result = solve({ lengthM: 12, supports: [{ xM: 2, levelM: 0.3 }], ground: flat })
    expect(result.supports[0]!.reactionN).toBeGreaterThan(0)
    expect(result.groundContacts[result.groundContacts.length - 1]!.endM).toBe(12)
    expect(result.supports[0]!.reactionN + result.groundTotalN).toBeCloseTo(q * 12, 9)
  })

  it('a clamp on the ground, level with it, takes no moment', () => {
    const result = solve({ lengthM: 40, supports: [], clamps: [{ xM: 10, levelM: 0, slopeRatio: 0 }], ground: flat })
    expect(result.clamps[0]).toMatchObject({ momentLeftNm: 0, momentRightNm: 0 })
    expect(result.groundTotalN + result.clamps[0]!.forceN).toBeCloseTo(q * 40, 9)
  })

  it('runs over a step: down to the mouth of it, on its brow, and lies again', () => {
    const result = solve({ lengthM: 60, supports: [], ground: { xM: [30, 30.001], levelM: [0, 0.5] } })
    expect(result.groundContacts.map((g) => g.kind)).toEqual(['interval', 'point', 'interval'])
    expect(result.groundContacts[1]!.startM).toBeCloseTo(30.001, 12)
    expect(result.at(30.001).levelM).toBeCloseTo(0.5, 12)
  })

  it('needless points in a straight run of the ground change nothing', () => {
    const supports = [{ xM: 20, levelM: 0.4 }]
    const few = solve({ lengthM: 40, supports, ground: { xM: [0, 40], levelM: [0, 0.4] } })
    const xM = Array.from({ length: 401 }, (_, i) => i * 0.1)
    const many = solve({ lengthM: 40, supports, ground: { xM, levelM: xM.map((x) => 0.01 * x) } })
    expect(many.supports[0]!.reactionN).toBeCloseTo(few.supports[0]!.reactionN, 6)
    expect(many.groundContacts).toHaveLength(few.groundContacts.length)
  })

  it('finds an edge between ground points to a micrometre, wherever the points are', () => {
    const edge = (offsetM: number): number =>
      solve({
        lengthM: 60,
        supports: [{ xM: 30, levelM: 0.3 }],
        ground: { xM: [-1, 7 + offsetM, 23 + offsetM, 61], levelM: [0, 0, 0, 0] },
      }).groundContacts[0]!.endM
    const expected = 30 - ((72 * 0.3) / c) ** 0.25
    for (const offsetM of [0, 0.137, 0.5, 1.1]) expect(Math.abs(edge(offsetM) - expected)).toBeLessThan(1e-6)
  })
})
