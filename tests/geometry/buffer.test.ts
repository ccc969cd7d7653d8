import { describe, expect, it } from 'vitest'
import { bufferRegion, filledAreaM2, overlapAreaM2, regionAreaM2, sweptStrip } from '../../src/geometry/buffer.ts'
import type { Shape } from '../../src/geometry/distance.ts'
import { type Vec, rotate, vec } from '../../src/geometry/vector.ts'

const points = (...pairs: [number, number][]): Vec[] => pairs.map(([x, y]) => vec(x, y))
const big = points([-100, -100], [100, -100], [100, 100], [-100, 100])
const fine = { radiusM: 1, sagM: 1e-6 }
const areaOf = (shape: Shape): number => regionAreaM2(bufferRegion(shape, fine))

describe('widened figures', () => {
  it.each<[string, Shape, number]>([
    ['a point: a disc, π', { kind: 'point', point: vec(3, 3) }, Math.PI],
    ['a line of 10: 20 + π', { kind: 'polyline', points: points([0, 0], [10, 0]) }, 20 + Math.PI],
    ['the same there and back', { kind: 'polyline', points: points([0, 0], [10, 0], [0, 0], [10, 0]) }, 20 + Math.PI],
    ['a line of no length', { kind: 'polyline', points: points([5, 5], [5, 5]) }, Math.PI],
    ['a 3-4-5 triangle: area + perimeter + π', { kind: 'polygon', points: points([0, 0], [4, 0], [4, 3]) }, 6 + 12 + Math.PI],
    ['a collapsed polygon counts as its line', { kind: 'polygon', points: points([0, 0], [4, 0], [4, 0]) }, 8 + Math.PI],
    ['a bow-tie of two triangles of 1, bases 2 apart', { kind: 'polygon', points: points([0, 0], [2, 2], [2, 0], [0, 2]) }, bowTieArea()],
  ])('%s', (_name, shape, expectedM2) => expect(Math.abs(areaOf(shape) - expectedM2)).toBeLessThan(5e-5))

  it('radius 0 leaves the polygon and nothing of a line', () => {
    const size = { radiusM: 0, sagM: 1e-3 }
    expect(regionAreaM2(bufferRegion({ kind: 'polygon', points: points([0, 0], [4, 0], [4, 3]) }, size))).toBeCloseTo(6, 9)
    expect(bufferRegion({ kind: 'polyline', points: points([0, 0], [4, 0]) }, size)).toEqual([])
    expect(bufferRegion({ kind: 'polyline', points: [] }, fine)).toEqual([])
  })

  it('flattened arcs stay inside the true ones, by no more than the sag asked for', () => {
    const disc = bufferRegion({ kind: 'point', point: vec(0, 0) }, { radiusM: 2, sagM: 0.01 })
    const corners = disc[0]!
    expect(corners.length).toBeLessThan(60)
    corners.forEach((p, i) => {
      const q = corners[(i + 1) % corners.length]!
      expect(Math.hypot(p.xM, p.yM)).toBeLessThanOrEqual(2 + 1e-6)
      expect(Math.hypot((p.xM + q.xM) / 2, (p.yM + q.yM) / 2)).toBeGreaterThanOrEqual(2 - 0.01 - 1e-6)
    })
  })

  it('a strip round a square walk has a hole', () => {
    // 4 sides of 10, 2 wide: outline (12² − 4 + π) less the hole 8²
    const strip = sweptStrip(points([0, 0], [10, 0], [10, 10], [0, 10], [0, 0]), { widthM: 2, sagM: 1e-5 })
    expect(strip.length).toBe(2)
    expect(Math.abs(regionAreaM2(strip) - (144 - 4 + Math.PI - 64))).toBeLessThan(1e-3)
    expect(regionAreaM2([])).toBe(0)
  })
})

describe('areas', () => {
  it('fills by the even-odd rule', () => {
    expect(filledAreaM2(points([0, 0], [2, 2], [2, 0], [0, 2]))).toBeCloseTo(2, 9) // two triangles of 2·1/2
    expect(filledAreaM2(points([0, 0], [6, 0], [6, 6], [0, 6], [0, 0], [2, 2], [2, 4], [4, 4], [4, 2], [2, 2]))).toBeCloseTo(32, 5) // 36 − 4, on a grid of 6 m · 2⁻²⁵
    expect(filledAreaM2(points([0, 0], [6, 0]))).toBe(0)
  })

  it.each([
    ['strip wholly inside', points([0, 0], [10, 0]), 2, 20 + Math.PI],
    ['one place', points([0, 0]), 2, Math.PI],
    ['no width', points([0, 0], [10, 0]), 0, 0],
    ['far away', points([500, 0], [510, 0]), 2, 0],
  ])('overlap: %s', (_name, line, widthM, expectedM2) => expect(Math.abs(overlapAreaM2(big, line, widthM) - expectedM2)).toBeLessThan(1e-4))

  it('overlap along one edge is the half strip: 4 × 0.6 beside a 4 m edge', () => {
    const square = points([0, 0], [4, 0], [4, 4], [0, 4])
    // corridor along y = 0, 1.2 wide, from −10 to 20
    expect(overlapAreaM2(square, points([-10, 0], [20, 0]), 1.2)).toBeCloseTo(2.4, 5)
  })

  it('turning and moving everything to map coordinates keeps the overlap', () => {
    const square = points([0, 0], [4, 0], [4, 4], [0, 4])
    const line = points([-3, 1], [2, 2], [2, 9])
    const there = (p: Vec): Vec => vec(rotate(p, 0.7).xM + 500_000, rotate(p, 0.7).yM + 4_000_000)
    const here = overlapAreaM2(square, line, 1.2)
    expect(Math.abs(overlapAreaM2(square.map(there), line.map(there), 1.2) - here)).toBeLessThan(1e-5)
    expect(here).toBeGreaterThan(4)
  })
})

/** Union of two triangles (0,0)-(0,2)-(1,1) and (2,2)-(2,0)-(1,1) grown by 1: by integrating the right half over y, times two. */
function bowTieArea(): number {
  // Right half x ≥ 1: distance to the triangle (2,0), (2,2), (1,1) at most 1. By y from −1 to 3, width from x = 1 to the rim.
  const steps = 200_000
  let sum = 0
  for (let i = 0; i < steps; i++) {
    const y = -1 + ((i + 0.5) * 4) / steps
    const rim = y < 0 || y > 2 ? 2 + Math.sqrt(Math.max(0, 1 - (y < 0 ? y * y : (y - 2) ** 2))) : 3
    // the notch above and below: at x ≥ 1 inside the offset of the sloping edge where |y − 1| ≤ (x − 1) + √2, or the disc of the tip (2, 0)
    const rise = Math.abs(y - 1)
    const fromEdge = rise - Math.SQRT2 + 1
    const fromDisc = 2 - Math.sqrt(Math.max(0, 1 - Math.min(y * y, (y - 2) ** 2)))
    // the offset edge is parallel to the slope and ends over the tip, at x = 2 − 1/√2; beyond it the disc of the tip is the rim
    const left = fromEdge <= 2 - Math.SQRT1_2 ? Math.max(1, fromEdge) : fromDisc
    if (rim > left) sum += ((rim - left) * 4) / steps
  }
  return 2 * sum
}
