/** Clear room between the strip a body sweeps and what stands beside it. */
import { overlapAreaM2 } from '../../geometry/buffer.ts'
import { type Closest, type Shape, distanceBetween } from '../../geometry/distance.ts'
import type { Vec } from '../../geometry/vector.ts'
import { requireNumber } from '../outcome.ts'

/** The strip: everything within half of `widthM` of the line its middle follows. One point is a disc. */
export interface Corridor {
  readonly points: readonly Vec[]
  readonly widthM: number
}

/** A filled polygon (even-odd), a line widened to `widthM`, or a point widened to `radiusM`. */
export type Obstacle =
  | { readonly kind: 'polygon'; readonly points: readonly Vec[] }
  | { readonly kind: 'polyline'; readonly points: readonly Vec[]; readonly widthM: number }
  | { readonly kind: 'point'; readonly point: Vec; readonly radiusM: number }

export interface ObstacleClearance {
  /** From the corridor's middle line to the obstacle's own figure; 0 when touching or inside. */
  readonly distanceM: number
  /** `distanceM` less half the corridor and the obstacle's own half width or radius; negative by how far they overlap. */
  readonly clearanceM: number
  readonly isHit: boolean
  /** Where it is nearest: on the corridor's middle line, and on the obstacle's own figure. */
  readonly from: Vec
  readonly to: Vec
  /** Polygons only: area common to the polygon and the strip (round joins and caps). */
  readonly overlapAreaM2: number | null
}

/**
 * Clearance of one obstacle.
 *
 * Model:  exact plan distance between figures; widths subtracted, so nothing is flattened. Only `overlapAreaM2` uses
 *         flattened arcs (to 2e-5 of the rounded parts).
 * Valid:  any figure with at least one point; touching, collinear, contained, crossing, collapsed ones have an answer.
 * Fails:  RangeError naming the field for no points, a negative width, or anything not finite.
 * Source: geometry, derived; docs/formulas/clearance.md.
 */
export function clearanceOf(corridor: Corridor, obstacle: Obstacle): ObstacleClearance {
  requireSound(corridor, obstacle)
  const { distanceM, from, to }: Closest = distanceBetween({ kind: 'polyline', points: corridor.points }, figureOf(obstacle))
  const clearanceM = distanceM - corridor.widthM / 2 - ownHalfWidthM(obstacle)
  const isHit = clearanceM < 0
  return { distanceM, clearanceM, isHit, from, to, overlapAreaM2: overlapOf(corridor, obstacle, isHit) }
}

/** Clearances in the order of the obstacles. */
export const solveClearance = (corridor: Corridor, obstacles: readonly Obstacle[]): ObstacleClearance[] =>
  obstacles.map((obstacle) => clearanceOf(corridor, obstacle))

const figureOf = (obstacle: Obstacle): Shape =>
  obstacle.kind === 'point' ? { kind: 'point', point: obstacle.point } : { kind: obstacle.kind, points: obstacle.points }

function ownHalfWidthM(obstacle: Obstacle): number {
  if (obstacle.kind === 'polygon') return 0
  return obstacle.kind === 'point' ? obstacle.radiusM : obstacle.widthM / 2
}

function overlapOf(corridor: Corridor, obstacle: Obstacle, isHit: boolean): number | null {
  if (obstacle.kind !== 'polygon') return null
  return isHit ? overlapAreaM2(obstacle.points, corridor.points, corridor.widthM) : 0
}

function requireSound(corridor: Corridor, obstacle: Obstacle): void {
  requireNumber('corridor.widthM', corridor.widthM, { atLeast: 0 })
  if (corridor.points.length === 0) throw new RangeError('corridor.points: at least one is needed')
  if (obstacle.kind !== 'point' && obstacle.points.length === 0) throw new RangeError('obstacle.points: at least one is needed')
  if (obstacle.kind === 'polyline') requireNumber('obstacle.widthM', obstacle.widthM, { atLeast: 0 })
  if (obstacle.kind === 'point') requireNumber('obstacle.radiusM', obstacle.radiusM, { atLeast: 0 })
}
