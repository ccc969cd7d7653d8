import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Shape, distanceBetween, nearestOnSegment } from '../../src/geometry/distance.ts'
import { type Vec, distanceM, rotate, vec } from '../../src/geometry/vector.ts'
import { runGeometrySoak } from '../helpers/geometrySoak.ts'
import { seededRandom } from '../helpers/seededRandom.ts'

const points = (...pairs: [number, number][]): Vec[] => pairs.map(([x, y]) => vec(x, y))
const polygon = (...pairs: [number, number][]): Shape => ({ kind: 'polygon', points: points(...pairs) })
const polyline = (...pairs: [number, number][]): Shape => ({ kind: 'polyline', points: points(...pairs) })
const point = (x: number, y: number): Shape => ({ kind: 'point', point: vec(x, y) })

const box = polygon([0, 0], [4, 0], [4, 4], [0, 4])

describe('distance by hand', () => {
  it.each<[string, Shape, Shape, number, Vec, Vec]>([
    ['two points, 3-4-5', point(0, 0), point(3, 4), 5, vec(0, 0), vec(3, 4)],
    ['point beside the middle of a line', point(2, 3), polyline([0, 0], [10, 0]), 3, vec(2, 3), vec(2, 0)],
    ['point past the end of a line', point(13, 4), polyline([0, 0], [10, 0]), 5, vec(13, 4), vec(10, 0)], // 3, 4
    ['box and point to its right', box, point(7, 1), 3, vec(4, 1), vec(7, 1)],
    ['box and corner of another', box, polygon([7, 8], [9, 8], [9, 9]), 5, vec(4, 4), vec(7, 8)], // 3, 4
    ['two parallel lines', polyline([0, 0], [10, 0]), polyline([0, 2.5], [10, 2.5]), 2.5, vec(0, 0), vec(0, 2.5)],
    ['line of 45° and a point: 2/√2', polyline([0, 0], [10, 10]), point(2, 0), Math.SQRT2, vec(1, 1), vec(2, 0)],
    ['the case of the raw contract: corridor and triangle', polyline([0, 0], [30, 0]), polygon([5, 2], [9, 2], [9, 4]), 2, vec(5, 0), vec(5, 2)],
  ])('%s', (_name, a, b, expectedM, from, to) => {
    const near = distanceBetween(a, b)
    expect(near.distanceM).toBeCloseTo(expectedM, 12)
    expect(distanceM(near.from, from)).toBeLessThan(1e-12)
    expect(distanceM(near.to, to)).toBeLessThan(1e-12)
  })
})

describe('exactly 0', () => {
  it.each<[string, Shape, Shape]>([
    ['boxes that share an edge', box, polygon([4, 0], [8, 0], [8, 4], [4, 4])],
    ['boxes that touch at a corner', box, polygon([4, 4], [8, 4], [8, 8], [4, 8])],
    ['lines that overlap in part', polyline([0, 0], [5, 0]), polyline([3, 0], [9, 0])],
    ['identical polygons', box, box],
    ['a polygon inside that touches an edge', box, polygon([0, 1], [2, 1], [2, 3])],
    ['a polygon well inside', box, polygon([1, 1], [2, 1], [2, 2])],
    ['the same, the other way round', polygon([1, 1], [2, 1], [2, 2]), box],
    ['a vertex on an edge', box, polyline([2, 4], [2, 9])],
    ['an edge with points given twice', polygon([0, 0], [2, 0], [2, 0], [4, 0], [4, 4], [4, 4], [0, 4]), polyline([3, 0], [3, -5])],
    ['a sliver 1e-10 wide and a line across it', polygon([0, 0], [10, 0], [10, 1e-10]), polyline([5, -1], [5, 1])],
    ['the crossing of a bow-tie', polygon([0, 0], [2, 2], [2, 0], [0, 2]), point(1, 1)],
    ['a loop of a bow-tie', polygon([0, 0], [2, 2], [2, 0], [0, 2]), point(1.9, 1)],
    ['a line that crosses itself, at the crossing', polyline([0, 0], [4, 4], [4, 0], [0, 4]), point(2, 2)],
    ['a point on the end of a line', polyline([0, 0], [5, 0]), point(5, 0)],
    ['a polygon of no size on a line', polygon([2, 0], [2, 0], [2, 0]), polyline([0, 0], [5, 0])],
    ['at map coordinates', polygon([500000, 4000000], [500004, 4000000], [500004, 4000004]), polyline([500004, 4000002], [500009, 4000002])],
    ['lines crossing at an angle of 1e-9', polyline([0, 0], [1000, 0]), polyline([0, -5e-7], [1000, 5e-7])],
  ])('%s', (_name, a, b) => {
    const near = distanceBetween(a, b)
    expect(near.distanceM).toBe(0)
    // where they meet is on both, to rounding
    expect(distanceBetween(a, { kind: 'point', point: near.from }).distanceM).toBeLessThan(1e-9)
    expect(distanceBetween(b, { kind: 'point', point: near.to }).distanceM).toBeLessThan(1e-9)
  })

  it('is not 0 a hair away: 1e-9 turned out of touch, and outside a bow-tie', () => {
    expect(distanceBetween(polyline([0, 0], [10, 0]), polyline([0, 1e-9], [10, 2e-9])).distanceM).toBe(1e-9)
    // the notch between the loops: nearest is the edge y = x at 45°, 0.2/√2 from (1, 1.2)
    expect(distanceBetween(polygon([0, 0], [2, 2], [2, 0], [0, 2]), point(1, 1.2)).distanceM).toBeCloseTo(0.2 / Math.SQRT2, 12)
  })

  it('the hole of a ring that runs round twice is outside', () => {
    const ring = polygon([0, 0], [6, 0], [6, 6], [0, 6], [0, 0], [2, 2], [2, 4], [4, 4], [4, 2], [2, 2])
    expect(distanceBetween(ring, point(3, 3)).distanceM).toBeCloseTo(1, 12)
  })
})

describe('degenerate figures', () => {
  it('what is left of a figure counts', () => {
    expect(distanceBetween(polyline([1, 1]), point(4, 5)).distanceM).toBe(5)
    expect(distanceBetween(polygon([1, 1]), point(4, 5)).distanceM).toBe(5)
    expect(distanceBetween(polygon([0, 0], [10, 0]), point(5, 2)).distanceM).toBe(2)
    expect(distanceBetween(polyline([0, 0], [0, 0], [0, 0]), polyline([3, 4], [3, 4])).distanceM).toBe(5)
    expect(distanceBetween(polygon([0, 0], [10, 0], [5, 0]), polyline([5, 1], [5, 2])).distanceM).toBe(1)
  })

  it('a figure without points is infinitely far, never NaN', () => {
    const near = distanceBetween({ kind: 'polyline', points: [] }, point(1, 2))
    expect(near.distanceM).toBe(Infinity)
    expect(near.to).toEqual(vec(1, 2))
    expect(distanceBetween({ kind: 'polygon', points: [] }, { kind: 'polygon', points: [] }).distanceM).toBe(Infinity)
  })

  it('a coordinate that is not finite is refused by name, it never passes as far away', () => {
    expect(() => distanceBetween(polyline([0, 0], [Number.NaN, 1]), box)).toThrow('coordinate of point 1 is not finite')
    expect(() => distanceBetween(box, point(Infinity, 0))).toThrow(RangeError)
  })

  it('the nearest place on a segment knows how far along it lies', () => {
    expect(nearestOnSegment(vec(3, 2), vec(0, 0), vec(4, 0))).toEqual({ distanceM: 2, nearest: vec(3, 0), ratio: 0.75 })
    expect(nearestOnSegment(vec(9, 0), vec(0, 0), vec(4, 0)).ratio).toBe(1)
    expect(nearestOnSegment(vec(3, 4), vec(0, 0), vec(0, 0))).toEqual({ distanceM: 5, nearest: vec(0, 0), ratio: 0 })
  })
})

describe('laws', () => {
  const scene = (seed: number): [Shape, Shape] => {
    const random = seededRandom(seed)
    const cloud = (count: number, shift: number): Vec[] => Array.from({ length: count }, () => vec(shift + 20 * random(), 20 * random()))
    return [
      { kind: seed % 2 ? 'polygon' : 'polyline', points: cloud(5, 0) },
      { kind: seed % 3 ? 'polygon' : 'polyline', points: cloud(6, 18) },
    ]
  }
  const moved = (shape: Shape, f: (p: Vec) => Vec): Shape => (shape.kind === 'point' ? { kind: 'point', point: f(shape.point) } : { kind: shape.kind, points: shape.points.map(f) })
  const seeds = fc.integer({ min: 1, max: 1e6 })

  it('a shift of whole yards to map coordinates changes nothing beyond rounding there', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const [a, b] = scene(seed)
        const shift = (p: Vec): Vec => vec(p.xM + 524_288, p.yM + 4_194_304)
        // 4,194,304 m holds 4.7e-10 m a step; each coordinate is rounded once
        expect(Math.abs(distanceBetween(moved(a, shift), moved(b, shift)).distanceM - distanceBetween(a, b).distanceM)).toBeLessThan(5e-9)
      }),
      { numRuns: 60 },
    )
  })

  it('a turn changes nothing', () => {
    fc.assert(
      fc.property(seeds, fc.double({ min: 0, max: 6, noNaN: true }), (seed, angleRad) => {
        const [a, b] = scene(seed)
        const turn = (p: Vec): Vec => rotate(p, angleRad)
        expect(Math.abs(distanceBetween(moved(a, turn), moved(b, turn)).distanceM - distanceBetween(a, b).distanceM)).toBeLessThan(1e-12)
      }),
      { numRuns: 60 },
    )
  })

  it.each([1e-6, 2 ** -20, 2 ** 20, 1e6])('scaled by %s the distance scales with it', (factor) => {
    for (let seed = 1; seed <= 60; seed++) {
      const [a, b] = scene(seed)
      const scaled = (p: Vec): Vec => vec(p.xM * factor, p.yM * factor)
      const expected = distanceBetween(a, b).distanceM * factor
      expect(Math.abs(distanceBetween(moved(a, scaled), moved(b, scaled)).distanceM - expected)).toBeLessThanOrEqual(1e-13 * 40 * factor)
    }
  })

  it('the nearest two places are that far apart, and no sampled pair is nearer', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const [a, b] = scene(seed).map((shape) => ({ kind: 'polyline' as const, points: shape.kind === 'point' ? [] : shape.points }))
      const near = distanceBetween(a as Shape, b as Shape)
      expect(Math.abs(distanceM(near.from, near.to) - near.distanceM)).toBeLessThan(1e-12)
      let sampledM = Infinity
      const sample = (line: Vec[]): Vec[] => line.slice(1).flatMap((q, i) => Array.from({ length: 21 }, (_, k) => vec(line[i]!.xM + ((q.xM - line[i]!.xM) * k) / 20, line[i]!.yM + ((q.yM - line[i]!.yM) * k) / 20)))
      for (const p of sample(a!.points as Vec[])) for (const q of sample(b!.points as Vec[])) sampledM = Math.min(sampledM, distanceM(p, q))
      expect(near.distanceM).toBeLessThanOrEqual(sampledM + 1e-12)
    }
  })

  it('many segments (branch and bound) and few (plain loop) agree', () => {
    const random = seededRandom(7)
    const wander = (count: number, x: number): Vec[] => {
      let p = vec(x, 0)
      return Array.from({ length: count }, () => (p = vec(p.xM + random() - 0.5, p.yM + random())))
    }
    const [a, b] = [wander(400, 0), wander(500, 12)]
    const whole = distanceBetween({ kind: 'polyline', points: a }, { kind: 'polyline', points: b }).distanceM
    let leastM = Infinity
    for (let i = 0; i + 1 < a.length; i++) for (let j = 0; j + 1 < b.length; j++) {
      leastM = Math.min(leastM, distanceBetween({ kind: 'polyline', points: a.slice(i, i + 2) }, { kind: 'polyline', points: b.slice(j, j + 2) }).distanceM)
    }
    expect(whole).toBe(leastM)
    expect(whole).toBeGreaterThan(0)
  })
})

it('100 seeded scenes agree with an independent library', () => {
  const result = runGeometrySoak({ seed: 1, count: 100 })
  expect(result.failures).toEqual([])
  expect(Object.keys(result.classes).length).toBe(14)
  expect(result.areasCompared).toBeGreaterThan(40)
})
