import { containment } from './polygon.ts'
import { type Chain, considerPair, nothingFound } from './segmentPair.ts'
import { nearestOfChains } from './segmentSearch.ts'
import { ORIGIN, type Vec } from './vector.ts'

/** A figure in plan. A polygon is filled (even-odd) and closes by itself; a polyline is bare, without width. */
export type Shape =
  | { readonly kind: 'polygon'; readonly points: readonly Vec[] }
  | { readonly kind: 'polyline'; readonly points: readonly Vec[] }
  | { readonly kind: 'point'; readonly point: Vec }

/** Least distance and where it is: `from` on the first figure, `to` on the second; the same place when they meet. */
export interface Closest {
  readonly distanceM: number
  readonly from: Vec
  readonly to: Vec
}

/**
 * Least distance between two figures.
 *
 * Exactly 0 when they touch, cross, or one lies inside the other; decided by exact predicates, with no tolerance.
 * Otherwise within a few units in the last place of the coordinates involved.
 * Degenerate figures have an answer: zero-length, collinear, collapsed and self-crossing ones are what is left of
 * them. A figure without points is at Infinity from everything (`from` and `to` then only repeat a known point).
 * Cost: see `nearestOfChains`. Fails: RangeError when a coordinate is not finite.
 */
export function distanceBetween(a: Shape, b: Shape): Closest {
  const aPoints = pointsOf(a)
  const bPoints = pointsOf(b)
  const aFirst = aPoints[0]
  const bFirst = bPoints[0]
  const aChain = chainOf(a, aPoints)
  const bChain = chainOf(b, bPoints)
  if (!aFirst || !bFirst) {
    const known = aFirst ?? bFirst ?? ORIGIN
    return { distanceM: Infinity, from: known, to: known }
  }
  // Outlines that do not meet lie wholly in or wholly out, so any one point settles it; a point inside is 0 in any case.
  if (a.kind === 'polygon' && containment(aPoints, bFirst) !== 'outside') return { distanceM: 0, from: bFirst, to: bFirst }
  if (b.kind === 'polygon' && containment(bPoints, aFirst) !== 'outside') return { distanceM: 0, from: aFirst, to: aFirst }
  const best = nearestOfChains(aChain, bChain)
  return {
    distanceM: Math.sqrt(best.squaredM2),
    from: { xM: best.fromX, yM: best.fromY },
    to: { xM: best.toX, yM: best.toY },
  }
}

/** Nearest place on the closed segment a–b to p, its distance, and how far along it lies (0 at a, 1 at b). */
export function nearestOnSegment(p: Vec, a: Vec, b: Vec): { distanceM: number; nearest: Vec; ratio: number } {
  const best = nothingFound()
  considerPair(best, { coords: Float64Array.of(p.xM, p.yM, p.xM, p.yM), count: 1 }, 0, { coords: Float64Array.of(a.xM, a.yM, b.xM, b.yM), count: 1 }, 0)
  const nearest = { xM: best.toX, yM: best.toY }
  const sideM = Math.hypot(b.xM - a.xM, b.yM - a.yM)
  const ratio = sideM === 0 ? 0 : Math.min(1, Math.hypot(nearest.xM - a.xM, nearest.yM - a.yM) / sideM)
  return { distanceM: Math.sqrt(best.squaredM2), nearest, ratio }
}

const pointsOf = (shape: Shape): readonly Vec[] => (shape.kind === 'point' ? [shape.point] : shape.points)

function chainOf(shape: Shape, points: readonly Vec[]): Chain {
  const isClosing = shape.kind === 'polygon' || points.length === 1
  const count = points.length === 0 ? 0 : points.length + (isClosing ? 1 : 0)
  const coords = new Float64Array(2 * count)
  for (let i = 0; i < count; i++) {
    const { xM, yM } = points[i === points.length ? 0 : i] as Vec
    if (!Number.isFinite(xM) || !Number.isFinite(yM)) throw new RangeError(`distanceBetween: coordinate of point ${i % points.length} is not finite`)
    coords[2 * i] = xM
    coords[2 * i + 1] = yM
  }
  return { coords, count: Math.max(0, count - 1) }
}
