import { describe, expect, it } from 'vitest'
import { overlapAreaM2 } from '../../src/geometry/buffer.ts'
import { scannedOverlapM2 } from '../../src/geometry/scanArea.ts'
import { type Vec, vec } from '../../src/geometry/vector.ts'
import { seededRandom } from '../helpers/seededRandom.ts'

const points = (...pairs: [number, number][]): Vec[] => pairs.map(([x, y]) => vec(x, y))
const big = points([-100, -100], [100, -100], [100, 100], [-100, 100])

describe('overlap by scan lines', () => {
  it.each([
    ['a strip wholly inside: 20 + π', big, points([0, 0], [10, 0]), 2, 20 + Math.PI],
    ['a disc', big, points([3, 3]), 2, Math.PI],
    ['half the strip beside an edge: 4·0.6', points([0, 0], [4, 0], [4, 4], [0, 4]), points([-10, 0], [20, 0]), 1.2, 2.4],
    ['a strip along itself counts once', big, points([0, 0], [10, 0], [0, 0], [10, 0]), 2, 20 + Math.PI],
    ['the loops of a bow-tie, 2·1', points([0, 0], [2, 2], [2, 0], [0, 2]), points([-5, 1], [5, 1]), 10, 2],
  ])('%s', (_name, polygon, line, widthM, expectedM2) => {
    // 4,000 bands; where the rim turns a band is off by a part of itself
    expect(Math.abs(scannedOverlapM2(polygon, line, widthM) - expectedM2)).toBeLessThan(2e-4 * expectedM2)
  })

  it('nothing in common, no width, no area: 0', () => {
    expect(scannedOverlapM2(big, points([500, 0], [510, 0]), 2)).toBe(0)
    expect(scannedOverlapM2(big, points([0, 0], [10, 0]), 0)).toBe(0)
    expect(scannedOverlapM2(points([0, 0], [5, 5]), points([0, 0], [10, 0]), 1)).toBe(0)
    expect(scannedOverlapM2(points([0, 0], [5, 5], [2, 2]), points([0, 0], [10, 0]), 1)).toBeCloseTo(0, 12)
    expect(scannedOverlapM2(big, [], 1)).toBe(0)
  })

  it('agrees with cutting outlines, another method, on 60 seeded figures that cross themselves', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const random = seededRandom(seed)
      const cloud = (count: number): Vec[] => Array.from({ length: count }, () => vec(50 * random(), 50 * random()))
      const [polygon, line, widthM] = [cloud(3 + (seed % 9)), cloud(1 + (seed % 6)), 0.2 + 5 * random()]
      const cut = overlapAreaM2(polygon, line, widthM)
      expect(Math.abs(scannedOverlapM2(polygon, line, widthM) - cut), `seed ${seed}`).toBeLessThan(1e-4 * Math.max(cut, widthM * widthM))
    }
  })

  it('is what many points get: a circle of 5,000 sides round a strip', () => {
    const circle = Array.from({ length: 5000 }, (_, i) => vec(50 * Math.cos((i * Math.PI) / 2500), 50 * Math.sin((i * Math.PI) / 2500)))
    expect(Math.abs(overlapAreaM2(circle, points([0, 0], [10, 0]), 2) - (20 + Math.PI))).toBeLessThan(5e-3)
  })
})
