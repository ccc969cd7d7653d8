import { isOnSegment, orientation } from './orientation.ts'
import { type Pose, type Vec, add, distanceM, rotate, subtract } from './vector.ts'

export interface Box {
  readonly minXM: number
  readonly minYM: number
  readonly maxXM: number
  readonly maxYM: number
}

/** Where a point lies against a filled polygon. */
export type Containment = 'inside' | 'boundary' | 'outside'

/** Smallest upright box round the points; null when there are none. */
export function boundingBox(points: readonly Vec[]): Box | null {
  if (points.length === 0) return null
  let [minXM, minYM, maxXM, maxYM] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const { xM, yM } of points) {
    minXM = Math.min(minXM, xM)
    minYM = Math.min(minYM, yM)
    maxXM = Math.max(maxXM, xM)
    maxYM = Math.max(maxYM, yM)
  }
  return { minXM, minYM, maxXM, maxYM }
}

/**
 * Area by the shoelace sum, positive for a counter-clockwise ring; 0 for fewer than three points.
 * The ring closes by itself. For a ring that crosses itself the loops cancel by sign: use `filledAreaM2` of buffer.ts.
 * Coordinates are taken from the first point, so a yard at map coordinates loses no digits.
 */
export function signedAreaM2(points: readonly Vec[]): number {
  const first = points[0]
  if (!first) return 0
  let twice = 0
  for (let i = 1; i + 1 < points.length; i++) {
    const a = subtract(points[i] as Vec, first)
    const b = subtract(points[i + 1] as Vec, first)
    twice += a.xM * b.yM - a.yM * b.xM
  }
  return twice / 2
}

export const areaM2 = (points: readonly Vec[]): number => Math.abs(signedAreaM2(points))

/**
 * Centre of area of a ring. A ring without area gives the centre of its outline by length; of one place, that
 * place; of no points, null. Source: derived (sum over triangles from the first point).
 */
export function centroid(points: readonly Vec[]): Vec | null {
  const first = points[0]
  if (!first) return null
  let twice = 0
  let [sumX, sumY] = [0, 0]
  let extentM = 0
  for (let i = 1; i + 1 < points.length; i++) {
    const a = subtract(points[i] as Vec, first)
    const b = subtract(points[i + 1] as Vec, first)
    const cross = a.xM * b.yM - a.yM * b.xM
    twice += cross
    sumX += cross * (a.xM + b.xM)
    sumY += cross * (a.yM + b.yM)
    extentM = Math.max(extentM, Math.abs(a.xM), Math.abs(a.yM), Math.abs(b.xM), Math.abs(b.yM))
  }
  // Below rounding of the sum itself the area is noise and its centre would be anywhere.
  if (Math.abs(twice) > 1e-14 * extentM * extentM) {
    return { xM: first.xM + sumX / (3 * twice), yM: first.yM + sumY / (3 * twice) }
  }
  return outlineCentre(points, first)
}

function outlineCentre(points: readonly Vec[], first: Vec): Vec {
  let totalM = 0
  let [sumX, sumY] = [0, 0]
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length] as Vec
    const sideM = distanceM(a, b)
    totalM += sideM
    sumX += sideM * ((a.xM - first.xM + (b.xM - first.xM)) / 2)
    sumY += sideM * ((a.yM - first.yM + (b.yM - first.yM)) / 2)
  })
  return totalM === 0 ? first : { xM: first.xM + sumX / totalM, yM: first.yM + sumY / totalM }
}

/**
 * Where `p` lies against the filled ring, by the even-odd rule (a loop inside a loop is a hole).
 * Exact: 'boundary' means exactly on an edge. A ring without area has a boundary and no inside. Cost O(n).
 */
export function containment(points: readonly Vec[], p: Vec): Containment {
  let isInside = false
  for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
    const a = points[j] as Vec
    const b = points[i] as Vec
    if (isOnSegment(p, a, b)) return 'boundary'
    // Half-open in y, so an edge end on the ray is counted once.
    if (a.yM > p.yM !== b.yM > p.yM) {
      const side = orientation(a, b, p)
      if (b.yM > a.yM ? side > 0 : side < 0) isInside = !isInside
    }
  }
  return isInside ? 'inside' : 'outside'
}

/** Whether `p` is inside or on the outline of the filled ring. */
export const polygonContains = (points: readonly Vec[], p: Vec): boolean => containment(points, p) !== 'outside'

/** A point of the item's own frame (x along its heading, y to its left) in the frame the pose is given in. */
export const localToWorld = (pose: Pose, local: Vec): Vec => add(rotate(local, pose.headingRad), pose)

/** Reverse of `localToWorld`. */
export const worldToLocal = (pose: Pose, world: Vec): Vec => rotate(subtract(world, pose), -pose.headingRad)

export const transformPoints = (pose: Pose, points: readonly Vec[]): Vec[] => points.map((p) => localToWorld(pose, p))

/** Counter-clockwise corners of a rectangle centred on the pose, `lengthM` along its heading, `widthM` across. */
export function rectangleAt(pose: Pose, size: { readonly lengthM: number; readonly widthM: number }): Vec[] {
  const halfL = size.lengthM / 2
  const halfW = size.widthM / 2
  return transformPoints(pose, [
    { xM: -halfL, yM: -halfW },
    { xM: halfL, yM: -halfW },
    { xM: halfL, yM: halfW },
    { xM: -halfL, yM: halfW },
  ])
}
