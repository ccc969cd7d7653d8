import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Corridor, type Obstacle, clearanceOf, solveClearance } from '../../../src/engine/clearance/solveClearance.ts'
import { type Vec, rotate, vec } from '../../../src/geometry/vector.ts'
import { seededRandom } from '../../helpers/seededRandom.ts'

const points = (...pairs: [number, number][]): Vec[] => pairs.map(([x, y]) => vec(x, y))
const polygon = (...pairs: [number, number][]): Obstacle => ({ kind: 'polygon', points: points(...pairs) })
const polyline = (widthM: number, ...pairs: [number, number][]): Obstacle => ({ kind: 'polyline', points: points(...pairs), widthM })
const post = (x: number, y: number, radiusM: number): Obstacle => ({ kind: 'point', point: vec(x, y), radiusM })
/** 30 m along +x, 1.2 m wide. */
const corridor: Corridor = { points: points([0, 0], [30, 0]), widthM: 1.2 }

describe('clearance by hand', () => {
  it.each<[string, Obstacle, number, number, boolean, number | null]>([
    ['triangle 2 m off', polygon([5, 2], [9, 2], [9, 4]), 2, 1.4, false, 0], // 2 − 0.6
    ['fence 0.4 m wide, 3 m off', polyline(0.4, [0, 3], [30, 3]), 3, 2.2, false, null], // 3 − 0.6 − 0.2
    ['post of 0.5 m, 2 m off', post(12, -2, 0.5), 2, 0.9, false, null], // 2 − 0.6 − 0.5
    ['post past the end, 3-4-5', post(33, 4, 0.5), 5, 3.9, false, null],
    ['box that reaches 0.1 m into the strip over 4 m', polygon([5, 0.5], [9, 0.5], [9, 4], [5, 4]), 0.5, -0.1, true, 0.4],
    ['box on the middle line: half the strip over 4 m', polygon([5, 0], [9, 0], [9, 4], [5, 4]), 0, -0.6, true, 2.4],
    ['the strip lies inside a field: 30·1.2 + π·0.6²', polygon([-50, -50], [80, -50], [80, 50], [-50, 50]), 0, -0.6, true, 36 + Math.PI * 0.36],
    ['box that touches the rim of the strip', polygon([5, 0.6], [9, 0.6], [9, 4], [5, 4]), 0.6, 0, false, 0],
    ['fence across', polyline(0, [15, -5], [15, 5]), 0, -0.6, true, null],
  ])('%s', (_name, obstacle, distanceM, clearanceM, isHit, overlapM2) => {
    const result = clearanceOf(corridor, obstacle)
    expect(result.distanceM).toBeCloseTo(distanceM, 12)
    expect(result.clearanceM).toBeCloseTo(clearanceM, 12)
    expect(result.isHit).toBe(isHit)
    if (overlapM2 === null) expect(result.overlapAreaM2).toBeNull()
    else expect(result.overlapAreaM2).toBeCloseTo(overlapM2, 4)
  })

  it('says where: on the middle line and on the obstacle', () => {
    expect(clearanceOf(corridor, post(12, -2, 0.5))).toMatchObject({ from: vec(12, 0), to: vec(12, -2) })
  })

  it('keeps the order of the obstacles', () => {
    expect(solveClearance(corridor, [post(12, -2, 0.5), post(12, -9, 0.5)]).map((result) => result.distanceM)).toEqual([2, 9])
    expect(solveClearance(corridor, [])).toEqual([])
  })
})

describe('degenerate figures have an answer', () => {
  const shapes: [string, Obstacle][] = [
    ['one point', polygon([3, 4])],
    ['two points', polygon([3, 4], [9, 4])],
    ['collinear', polygon([3, 4], [9, 4], [5, 4])],
    ['one place three times', polygon([3, 4], [3, 4], [3, 4])],
    ['line of no length', polyline(0.2, [3, 4], [3, 4])],
    ['bow-tie', polygon([3, 4], [9, 9], [9, 4], [3, 9])],
  ]
  it.each(shapes)('%s, 4 m off', (_name, obstacle) => {
    for (const strip of [corridor, { points: points([3, 0]), widthM: 1.2 }, { points: points([3, 0], [3, 0]), widthM: 1.2 }]) {
      const result = clearanceOf(strip, obstacle)
      expect(result.distanceM).toBe(4)
      expect(result.isHit).toBe(false)
    }
  })

  it('a corridor of no width still hits what it crosses, at clearance 0 it does not', () => {
    const line = { points: points([0, 0], [30, 0]), widthM: 0 }
    const result = clearanceOf(line, polygon([5, -1], [9, -1], [9, 4]))
    // distance 0 less nothing is 0: by the contract a hit is a clearance below 0
    expect(result).toMatchObject({ distanceM: 0, clearanceM: 0, isHit: false, overlapAreaM2: 0 })
  })
})

describe('laws', () => {
  const scene = (seed: number): [Corridor, Obstacle] => {
    const random = seededRandom(seed)
    const cloud = (count: number, x: number): Vec[] => Array.from({ length: count }, () => vec(x + 30 * random(), 20 * random()))
    return [{ points: cloud(4, 0), widthM: 3 * random() }, seed % 2 ? { kind: 'polygon', points: cloud(4, 20) } : { kind: 'polyline', points: cloud(3, 20), widthM: random() }]
  }

  it('turned and shifted to map coordinates nothing changes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.double({ min: 0, max: 6, noNaN: true }), (seed, angleRad) => {
        const [strip, obstacle] = scene(seed)
        const there = (p: Vec): Vec => vec(rotate(p, angleRad).xM + 500_000, rotate(p, angleRad).yM + 4_000_000)
        const moved: Obstacle = obstacle.kind === 'point' ? obstacle : { ...obstacle, points: obstacle.points.map(there) }
        const here = clearanceOf(strip, obstacle)
        const away = clearanceOf({ ...strip, points: strip.points.map(there) }, moved)
        expect(Math.abs(away.clearanceM - here.clearanceM)).toBeLessThan(5e-9)
        // a grid step of 2e-6 m along outlines of some 100 m
        expect(Math.abs((away.overlapAreaM2 ?? 0) - (here.overlapAreaM2 ?? 0))).toBeLessThan(1e-3)
      }),
      { numRuns: 40 },
    )
  })

  it('a wider strip is never clearer, and overlap grows with it', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const [strip, obstacle] = scene(seed)
      const [narrow, wide] = [clearanceOf(strip, obstacle), clearanceOf({ ...strip, widthM: strip.widthM + 1 }, obstacle)]
      expect(wide.clearanceM).toBeCloseTo(narrow.clearanceM - 0.5, 12)
      expect(wide.overlapAreaM2 ?? 0).toBeGreaterThanOrEqual((narrow.overlapAreaM2 ?? 0) - 1e-6)
    }
  })

  it('overlaps exactly where it hits', () => {
    for (let seed = 1; seed <= 200; seed += 2) {
      const [strip, obstacle] = scene(seed)
      const result = clearanceOf(strip, obstacle)
      if (result.clearanceM < -1e-3) expect(result.overlapAreaM2, `seed ${seed}`).toBeGreaterThan(0)
      if (!result.isHit) expect(result.overlapAreaM2).toBe(0)
    }
  })
})

describe('malformed input is refused by name', () => {
  it.each<[string, Corridor, Obstacle]>([
    ['corridor.widthM', { ...corridor, widthM: -1 }, post(0, 0, 1)],
    ['corridor.points', { points: [], widthM: 1 }, post(0, 0, 1)],
    ['obstacle.points', corridor, polygon()],
    ['obstacle.widthM', corridor, polyline(Number.NaN, [0, 0], [1, 1])],
    ['obstacle.radiusM', corridor, post(0, 0, -1)],
    ['not finite', corridor, post(Number.NaN, 0, 1)],
  ])('%s', (name, strip, obstacle) => expect(() => clearanceOf(strip, obstacle)).toThrow(name))
})
