import { orientationOfNumbers as side } from './orientation.ts'

/** A run of segments in flat coordinates: segment i goes from point i to point i + 1. */
export interface Chain {
  /** x0, y0, x1, y1 … in metres; `count + 1` points. */
  readonly coords: Float64Array
  readonly count: number
}

/** The nearest pair of points found so far, the first on chain A and the second on chain B. */
export interface Nearest {
  squaredM2: number
  fromX: number
  fromY: number
  toX: number
  toY: number
}

export const nothingFound = (): Nearest => ({ squaredM2: Infinity, fromX: 0, fromY: 0, toX: 0, toY: 0 })

/** Squared distance of two intervals along one axis, to be added over both axes. */
export function squaredGapM2(minA: number, maxA: number, minB: number, maxB: number): number {
  const gap = Math.max(minB - maxA, minA - maxB)
  return gap > 0 ? gap * gap : 0
}

function record(best: Nearest, squaredM2: number, fromX: number, fromY: number, toX: number, toY: number): void {
  best.squaredM2 = squaredM2
  best.fromX = fromX
  best.fromY = fromY
  best.toX = toX
  best.toY = toY
}

/** Lowers `best` with the distance from point p to the closed segment a–b; `isFromA` says p lies on chain A. */
function considerPoint(best: Nearest, px: number, py: number, ax: number, ay: number, bx: number, by: number, isFromA: boolean): void {
  const dx = bx - ax
  const dy = by - ay
  const lengthSquared = dx * dx + dy * dy
  const along = lengthSquared > 0 ? ((px - ax) * dx + (py - ay) * dy) / lengthSquared : 0
  // The nearer end is the base: the rounding of the foot then grows with the distance to it, not with the whole side.
  const isPastMiddle = along > 0.5
  const baseX = isPastMiddle ? bx : ax
  const baseY = isPastMiddle ? by : ay
  const ratio = isPastMiddle ? Math.min(along - 1, 0) : Math.max(along, 0)
  const qx = baseX + ratio * dx
  const qy = baseY + ratio * dy
  const squared = (px - qx) ** 2 + (py - qy) ** 2
  if (squared < best.squaredM2) {
    if (isFromA) record(best, squared, px, py, qx, qy)
    else record(best, squared, qx, qy, px, py)
  }
}

const within = (p: number, a: number, b: number): boolean => p >= Math.min(a, b) && p <= Math.max(a, b)

/**
 * Lowers `best` with the distance between segment i of chain a and segment j of chain b.
 *
 * Exactly 0 when they cross, touch or overlap, decided by the exact predicate. Otherwise the least distance is
 * always at an end of one of the two, so four point distances settle it. Segments of no length are points.
 */
export function considerPair(best: Nearest, a: Chain, i: number, b: Chain, j: number): void {
  const [ac, bc] = [a.coords, b.coords]
  const ax = ac[2 * i] as number
  const ay = ac[2 * i + 1] as number
  const bx = ac[2 * i + 2] as number
  const by = ac[2 * i + 3] as number
  const cx = bc[2 * j] as number
  const cy = bc[2 * j + 1] as number
  const dx = bc[2 * j + 2] as number
  const dy = bc[2 * j + 3] as number
  const boxM2 =
    squaredGapM2(Math.min(ax, bx), Math.max(ax, bx), Math.min(cx, dx), Math.max(cx, dx)) +
    squaredGapM2(Math.min(ay, by), Math.max(ay, by), Math.min(cy, dy), Math.max(cy, dy))
  if (boxM2 >= best.squaredM2) return
  let doCross = false
  if (boxM2 === 0) {
    const cSide = side(ax, ay, bx, by, cx, cy)
    const dSide = side(ax, ay, bx, by, dx, dy)
    const aSide = side(cx, cy, dx, dy, ax, ay)
    const bSide = side(cx, cy, dx, dy, bx, by)
    if (cSide === 0 && within(cx, ax, bx) && within(cy, ay, by)) return record(best, 0, cx, cy, cx, cy)
    if (dSide === 0 && within(dx, ax, bx) && within(dy, ay, by)) return record(best, 0, dx, dy, dx, dy)
    if (aSide === 0 && within(ax, cx, dx) && within(ay, cy, dy)) return record(best, 0, ax, ay, ax, ay)
    if (bSide === 0 && within(bx, cx, dx) && within(by, cy, dy)) return record(best, 0, bx, by, bx, by)
    doCross = cSide * dSide < 0 && aSide * bSide < 0
    if (doCross) {
      const denominator = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
      const ratio = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / denominator
      if (ratio >= 0 && ratio <= 1) {
        const x = ax + ratio * (bx - ax)
        const y = ay + ratio * (by - ay)
        return record(best, 0, x, y, x, y)
      }
    }
  }
  considerPoint(best, ax, ay, cx, cy, dx, dy, true)
  considerPoint(best, bx, by, cx, cy, dx, dy, true)
  considerPoint(best, cx, cy, ax, ay, bx, by, false)
  considerPoint(best, dx, dy, ax, ay, bx, by, false)
  // They cross at an angle too small for the crossing to be computed: the ends are as near as numbers can say.
  if (doCross) best.squaredM2 = 0
}
