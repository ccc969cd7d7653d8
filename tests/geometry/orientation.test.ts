import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isOnSegment, orientation } from '../../src/geometry/orientation.ts'
import { vec } from '../../src/geometry/vector.ts'

describe('orientation', () => {
  it('is 1 for a left turn with y up, −1 for a right turn, 0 on the line', () => {
    expect(orientation(vec(0, 0), vec(1, 0), vec(0, 1))).toBe(1)
    expect(orientation(vec(0, 0), vec(1, 0), vec(0, -1))).toBe(-1)
    expect(orientation(vec(0, 0), vec(1, 0), vec(7, 0))).toBe(0)
  })

  it('is exact where the rounded product is 0: points one unit in the last place off the line y = x', () => {
    // Kettner et al., Classroom examples of robustness problems in geometric computations (2008): p near (0.5, 0.5)
    // against the line through (12, 12) and (24, 24); the sign is that of y − x.
    const ulp = 2 ** -53
    for (let i = 0; i < 16; i++) {
      for (let j = 0; j < 16; j++) {
        const p = vec(0.5 + i * ulp, 0.5 + j * ulp)
        expect(orientation(vec(12, 12), vec(24, 24), p)).toBe(Math.sign(p.yM - p.xM))
      }
    }
  })

  it('turns its sign when two points change places', () => {
    const c = fc.double({ min: -1e6, max: 1e6, noNaN: true })
    fc.assert(
      fc.property(c, c, c, c, c, c, (ax, ay, bx, by, cx, cy) => {
        const [a, b, p] = [vec(ax, ay), vec(bx, by), vec(cx, cy)]
        expect(orientation(a, b, p) + orientation(b, a, p)).toBe(0)
        expect(orientation(a, b, p)).toBe(orientation(b, p, a))
      }),
    )
  })

  it('a point is on a closed segment at its ends and between, not beyond', () => {
    const [a, b] = [vec(0, 0), vec(4, 2)]
    expect([vec(0, 0), vec(2, 1), vec(4, 2)].map((p) => isOnSegment(p, a, b))).toEqual([true, true, true])
    expect([vec(6, 3), vec(-2, -1), vec(2, 1.0001)].map((p) => isOnSegment(p, a, b))).toEqual([false, false, false])
    expect(isOnSegment(vec(1, 1), vec(1, 1), vec(1, 1))).toBe(true)
  })
})
