import { orient2d } from 'robust-predicates'
import type { Vec } from './vector.ts'

/**
 * On which side of the directed line a → b the point c lies: 1 left (counter-clockwise), −1 right, 0 on it.
 *
 * Exact for all finite coordinates whose products neither overflow nor underflow (1e-140 to 1e140 m).
 * The predicate of the library has its y axis pointing down; the sign is turned here, once, for y up.
 * Source: Shewchuk, Adaptive precision floating-point arithmetic and fast robust geometric predicates, 1997.
 */
export function orientation(a: Vec, b: Vec, c: Vec): -1 | 0 | 1 {
  return orientationOfNumbers(a.xM, a.yM, b.xM, b.yM, c.xM, c.yM)
}

/** `orientation` for coordinates that lie in flat arrays, in the order ax, ay, bx, by, cx, cy. */
export function orientationOfNumbers(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): -1 | 0 | 1 {
  const area = orient2d(ax, ay, bx, by, cx, cy)
  return area < 0 ? 1 : area > 0 ? -1 : 0
}

/** Whether p lies exactly on the closed segment a–b (a and b may coincide). */
export function isOnSegment(p: Vec, a: Vec, b: Vec): boolean {
  return (
    p.xM >= Math.min(a.xM, b.xM) &&
    p.xM <= Math.max(a.xM, b.xM) &&
    p.yM >= Math.min(a.yM, b.yM) &&
    p.yM <= Math.max(a.yM, b.yM) &&
    orientation(a, b, p) === 0
  )
}
