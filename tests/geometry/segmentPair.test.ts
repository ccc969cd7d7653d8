import { describe, expect, it } from 'vitest'
import { considerPair, nothingFound, squaredGapM2 } from '../../src/geometry/segmentPair.ts'

const segment = (...coords: [number, number, number, number]) => ({ coords: Float64Array.from(coords), count: 1 })
const near = (a: [number, number, number, number], b: [number, number, number, number]) => {
  const best = nothingFound()
  considerPair(best, segment(...a), 0, segment(...b), 0)
  return best
}

describe('a pair of segments', () => {
  it('meets at the crossing', () => {
    expect(near([0, 0, 4, 4], [0, 4, 4, 0])).toEqual({ squaredM2: 0, fromX: 2, fromY: 2, toX: 2, toY: 2 })
  })

  it('takes the end nearest the other where they do not meet', () => {
    // end (4, 0) against the line x = 6: 2 m
    expect(near([0, 0, 4, 0], [6, -5, 6, 5])).toEqual({ squaredM2: 4, fromX: 4, fromY: 0, toX: 6, toY: 0 })
  })

  it('leaves a nearer pair that was found before', () => {
    const best = { squaredM2: 1, fromX: 9, fromY: 9, toX: 9, toY: 8 }
    considerPair(best, segment(0, 0, 1, 0), 0, segment(0, 3, 1, 3), 0)
    expect(best).toEqual({ squaredM2: 1, fromX: 9, fromY: 9, toX: 9, toY: 8 })
  })

  it('the gap of two intervals is 0 where they overlap or touch', () => {
    expect(squaredGapM2(0, 2, 1, 3)).toBe(0)
    expect(squaredGapM2(0, 2, 2, 3)).toBe(0)
    expect(squaredGapM2(0, 2, 5, 6)).toBe(9)
    expect(squaredGapM2(5, 6, 0, 2)).toBe(9)
  })
})
