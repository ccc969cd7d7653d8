import Delaunator from 'delaunator'
import { nearestOnSegment } from './distance.ts'
import { orientation } from './orientation.ts'
import { IN_LINE_RATIO, SAME_LEVEL_PLACE_M } from './tolerance.ts'
import { type Vec, between, crossM2, distanceM, squaredDistanceM2, subtract } from './vector.ts'

/** A measured level of the ground: z up, of whatever mark the caller measures from. */
export interface GroundLevel extends Vec {
  readonly levelM: number
}

/** Ground between measured levels: planes over Delaunay triangles, and beyond them the rule of `levelAt`. */
export interface Surface {
  readonly levels: readonly GroundLevel[]
  /** Three level indices a triangle, counter-clockwise. */
  readonly triangles: Uint32Array
  /** Half-edge e and its twin in the neighbour, −1 on the hull; edge e runs from triangles[e] to the next corner. */
  readonly twins: Int32Array
  /** Indices of the hull, counter-clockwise. */
  readonly hull: Uint32Array
  /** Best plane through all levels, used only to carry the overall fall outwards. */
  readonly trend: { readonly at: Vec; readonly levelM: number; readonly slopeX: number; readonly slopeY: number }
}

export const nextEdge = (edge: number): number => (edge % 3 === 2 ? edge - 2 : edge + 1)

/**
 * Ground surface through the levels; null with fewer than three places, or when they lie in line (spread across
 * under `IN_LINE_RATIO` of the spread along): then the cross-fall is unknown, not zero.
 * Levels in one place (`SAME_LEVEL_PLACE_M`) count as one at their mean.
 * Cost O(n log n). Method: Delaunay triangulation; formulas and the rule outside in docs/formulas/ground.md.
 */
export function groundSurface(given: readonly GroundLevel[]): Surface | null {
  const levels = mergePlaces(given)
  if (levels.length < 3) return null
  const spread = spreadOf(levels)
  if (!(spread.acrossM > IN_LINE_RATIO * spread.alongM)) return null
  const origin = levels[0] as GroundLevel
  // Mirrored in y: the library winds counter-clockwise with y down, so the triangles come out so with y up.
  const delaunay = Delaunator.from(
    levels,
    (p) => p.xM - origin.xM,
    (p) => origin.yM - p.yM,
  )
  if (delaunay.triangles.length === 0) return null
  return { levels, triangles: delaunay.triangles, twins: delaunay.halfedges, hull: delaunay.hull, trend: trendOf(spread) }
}

function mergePlaces(given: readonly GroundLevel[]): GroundLevel[] {
  const groups = new Map<string, { first: GroundLevel; sumM: number; count: number }>()
  const cellOf = (v: number): number => Math.floor(v / SAME_LEVEL_PLACE_M)
  for (const level of given) {
    const [cx, cy] = [cellOf(level.xM), cellOf(level.yM)]
    let found
    for (let dx = -1; dx <= 1 && !found; dx++) {
      for (let dy = -1; dy <= 1 && !found; dy++) {
        const group = groups.get(`${cx + dx},${cy + dy}`)
        if (group && squaredDistanceM2(group.first, level) <= SAME_LEVEL_PLACE_M ** 2) found = group
      }
    }
    if (found) {
      found.sumM += level.levelM
      found.count += 1
    } else groups.set(`${cx},${cy}`, { first: level, sumM: level.levelM, count: 1 })
  }
  return [...groups.values()].map(({ first, sumM, count }) => ({ xM: first.xM, yM: first.yM, levelM: sumM / count }))
}

interface Spread {
  readonly centre: Vec
  readonly centreLevelM: number
  /** Root mean square distances from the centre along and across the main direction. */
  readonly alongM: number
  readonly acrossM: number
  readonly sums: { readonly xx: number; readonly xy: number; readonly yy: number; readonly xz: number; readonly yz: number }
}

function spreadOf(levels: readonly GroundLevel[]): Spread {
  const first = levels[0] as GroundLevel
  const count = levels.length
  const mean = { xM: 0, yM: 0, levelM: 0 }
  for (const p of levels) {
    mean.xM += (p.xM - first.xM) / count
    mean.yM += (p.yM - first.yM) / count
    mean.levelM += (p.levelM - first.levelM) / count
  }
  const sums = { xx: 0, xy: 0, yy: 0, xz: 0, yz: 0 }
  for (const p of levels) {
    const x = p.xM - first.xM - mean.xM
    const y = p.yM - first.yM - mean.yM
    const z = p.levelM - first.levelM - mean.levelM
    sums.xx += x * x
    sums.xy += x * y
    sums.yy += y * y
    sums.xz += x * z
    sums.yz += y * z
  }
  const half = (sums.xx + sums.yy) / 2
  const radius = Math.hypot((sums.xx - sums.yy) / 2, sums.xy)
  const centre = { xM: first.xM + mean.xM, yM: first.yM + mean.yM }
  // The smaller root as determinant over the larger one: half − radius would lose its digits for levels in line.
  const large = half + radius
  const small = large > 0 ? Math.max(0, (sums.xx * sums.yy - sums.xy * sums.xy) / large) : 0
  return { centre, centreLevelM: first.levelM + mean.levelM, alongM: Math.sqrt(large / count), acrossM: Math.sqrt(small / count), sums }
}

function trendOf(spread: Spread): Surface['trend'] {
  const { xx, xy, yy, xz, yz } = spread.sums
  const determinant = xx * yy - xy * xy
  const slopeX = (xz * yy - yz * xy) / determinant
  const slopeY = (yz * xx - xz * xy) / determinant
  return { at: spread.centre, levelM: spread.centreLevelM, slopeX, slopeY }
}

const trendAtM = ({ trend }: Surface, p: Vec): number => trend.levelM + trend.slopeX * (p.xM - trend.at.xM) + trend.slopeY * (p.yM - trend.at.yM)

/**
 * Ground level at a point, and how far the nearest measured level is.
 *
 * Inside the hull: the plane of the triangle, exact at the levels. Outside: nearest-edge rule: the overall fall of
 * all levels carried on, plus what the nearest place of the hull lies above or below that fall. It is continuous,
 * exact on an even slope, and cannot run away along a sliver triangle as the triangle's own plane would.
 * `isOutside` says the value is carried on; callers judge `nearestLevelM` against their own limit.
 * Cost O(n) for the nearest level, O(√n) for the triangle.
 */
export function levelAt(surface: Surface, point: Vec): { levelM: number; nearestLevelM: number; isOutside: boolean } {
  let nearestM2 = Infinity
  for (const level of surface.levels) nearestM2 = Math.min(nearestM2, squaredDistanceM2(level, point))
  const nearestLevelM = Math.sqrt(nearestM2)
  const triangle = triangleAt(surface, point)
  if (triangle !== null) return { levelM: levelInTriangleM(surface, triangle, point), nearestLevelM, isOutside: false }
  return { levelM: trendAtM(surface, point) + hullResidualM(surface, point), nearestLevelM, isOutside: true }
}

const corner = (surface: Surface, edge: number): GroundLevel => surface.levels[surface.triangles[edge] as number] as GroundLevel

/** First edge of the triangle that holds the point, or null outside. Visibility walk: it cannot circle in a Delaunay mesh. */
function triangleAt(surface: Surface, point: Vec): number | null {
  let triangle = 0
  for (let steps = 0; steps <= surface.triangles.length; steps++) {
    let crossed = -1
    for (let edge = triangle; edge < triangle + 3 && crossed < 0; edge++) {
      if (orientation(corner(surface, edge), corner(surface, nextEdge(edge)), point) < 0) crossed = edge
    }
    if (crossed < 0) return triangle
    const twin = surface.twins[crossed] as number
    // The hull is convex: right of one of its edges is outside of all of it.
    if (twin < 0) return null
    triangle = twin - (twin % 3)
  }
  return null
}

function levelInTriangleM(surface: Surface, triangle: number, point: Vec): number {
  const a = corner(surface, triangle)
  const b = corner(surface, triangle + 1)
  const c = corner(surface, triangle + 2)
  const [ab, ac, ap] = [subtract(b, a), subtract(c, a), subtract(point, a)]
  const area = crossM2(ab, ac)
  const shareB = Math.min(1, Math.max(0, crossM2(ap, ac) / area))
  const shareC = Math.min(1 - shareB, Math.max(0, crossM2(ab, ap) / area))
  return a.levelM + shareB * (b.levelM - a.levelM) + shareC * (c.levelM - a.levelM)
}

function hullResidualM(surface: Surface, point: Vec): number {
  const { hull, levels } = surface
  let best = { distanceM: Infinity, residualM: 0 }
  for (let i = 0; i < hull.length; i++) {
    const a = levels[hull[i] as number] as GroundLevel
    const b = levels[hull[(i + 1) % hull.length] as number] as GroundLevel
    const near = nearestOnSegment(point, a, b)
    if (near.distanceM < best.distanceM) {
      const aM = a.levelM - trendAtM(surface, a)
      const bM = b.levelM - trendAtM(surface, b)
      best = { distanceM: near.distanceM, residualM: aM + near.ratio * (bM - aM) }
    }
  }
  return best.residualM
}

/** A place along a straight line over the ground: distance from its start, and the level there. */
export interface ProfilePoint {
  readonly distanceM: number
  readonly levelM: number
}

/**
 * Ground along the straight line from → to: start, end and every kink between, so that straight joins between the
 * points are the surface itself. Kinks lie where the line meets a triangle edge and, outside, where the nearest
 * place of the hull passes a corner of it. A line of no length gives one point. Cost O(n · kinks).
 */
export function groundProfile(surface: Surface, from: Vec, to: Vec): ProfilePoint[] {
  const totalM = distanceM(from, to)
  const ratios = [0]
  if (totalM > 0) ratios.push(...kinkRatios(surface, from, to), 1)
  const sorted = ratios.sort((a, b) => a - b)
  return sorted
    .filter((ratio, i) => i === 0 || ratio > (sorted[i - 1] as number))
    .map((ratio) => ({ distanceM: ratio * totalM, levelM: levelAt(surface, between(from, to, ratio)).levelM }))
}

function kinkRatios(surface: Surface, from: Vec, to: Vec): number[] {
  const { triangles, twins, hull, levels } = surface
  const line = subtract(to, from)
  const found: number[] = []
  /** Where from → to meets the line through `at` with direction `direction`, if at `reach` of it (0 to `maxReach`). */
  const meet = (at: Vec, direction: Vec, maxReach: number): void => {
    const denominator = crossM2(line, direction)
    if (denominator === 0) return
    const offset = subtract(at, from)
    const ratio = crossM2(offset, direction) / denominator
    const reach = crossM2(offset, line) / denominator
    if (ratio > 0 && ratio < 1 && reach >= 0 && reach <= maxReach) found.push(ratio)
  }
  for (let edge = 0; edge < triangles.length; edge++) {
    if ((twins[edge] as number) > edge) continue
    meet(corner(surface, edge), subtract(corner(surface, nextEdge(edge)), corner(surface, edge)), 1)
  }
  for (let i = 0; i < hull.length; i++) {
    const a = levels[hull[i] as number] as GroundLevel
    const b = levels[hull[(i + 1) % hull.length] as number] as GroundLevel
    const outwards = { xM: b.yM - a.yM, yM: a.xM - b.xM }
    meet(a, outwards, Infinity)
    meet(b, outwards, Infinity)
  }
  return found
}
