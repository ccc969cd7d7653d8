import { describe, expect, it } from 'vitest'
import { nearestOfChains } from '../../src/geometry/segmentSearch.ts'
import type { Chain } from '../../src/geometry/segmentPair.ts'

const zigzag = (count: number, x0: number): Chain => ({
  coords: Float64Array.from({ length: 2 * (count + 1) }, (_, i) => (i % 2 ? (i - 1) / 2 : x0 + (((i / 2) * 7) % 3))),
  count,
})

describe('nearest of two chains', () => {
  it('finds the one close pair among 100 million', () => {
    // The chains wander 0 … 2 and 10 … 12 in x; one corner of the second is pulled to x = 2.5, at y = 5000.
    const a = zigzag(10_000, 0)
    const b = zigzag(10_000, 10)
    b.coords[2 * 5000] = 2.5
    const best = nearestOfChains(a, b)
    // Chain a near y = 5000 has x = (5000·7 mod 3) = 2 at y = 5000: 0.5 m away.
    expect((5000 * 7) % 3).toBe(2)
    expect(Math.sqrt(best.squaredM2)).toBeCloseTo(0.5, 12)
    expect([best.toX, best.toY]).toEqual([2.5, 5000])
  })

  it('an empty chain finds nothing', () => {
    expect(nearestOfChains({ coords: new Float64Array(0), count: 0 }, zigzag(3, 0)).squaredM2).toBe(Infinity)
  })
})
