import { EndType, FillRule, JoinType, type Path64, type Paths64, inflatePaths, intersect, areaPaths, union } from 'clipper2-ts'
import type { Shape } from './distance.ts'
import { type Box, boundingBox } from './polygon.ts'
import { scannedOverlapM2 } from './scanArea.ts'
import { ARC_SAG_RATIO, CLIPPER_GRID_RATIO } from './tolerance.ts'
import type { Vec } from './vector.ts'

/**
 * Outlines and areas of widened figures. For drawing and for areas only: arcs are flattened (inside the true arc)
 * and corners sit on a grid of the extent · 2⁻²⁵ (0.03 mm on a kilometre). Clearances come from distance.ts.
 */

/** Cutting outlines takes time with the square of the points where they cross everywhere; beyond this it is not done. */
const MOST_CUT_POINTS = 300

/** Rings of a region: outer rings counter-clockwise, holes clockwise, none crossing. */
export type Region = readonly (readonly Vec[])[]

/** Local whole-number grid: origin in the middle, so that a yard at map coordinates loses nothing. */
export interface Grid {
  readonly origin: Vec
  readonly stepM: number
}

export function gridFor(points: readonly Vec[], marginM: number): Grid {
  const box = boundingBox(points) as Box
  const extentM = Math.max(box.maxXM - box.minXM, box.maxYM - box.minYM) + 2 * marginM
  const origin = { xM: (box.minXM + box.maxXM) / 2, yM: (box.minYM + box.maxYM) / 2 }
  return { origin, stepM: extentM > 0 ? extentM * CLIPPER_GRID_RATIO : 1 }
}

export const toGrid = (grid: Grid, points: readonly Vec[]): Path64 =>
  points.map((p) => ({ x: Math.round((p.xM - grid.origin.xM) / grid.stepM), y: Math.round((p.yM - grid.origin.yM) / grid.stepM) }))

export const fromGrid = (grid: Grid, paths: Paths64): Region =>
  paths.map((path) => path.map((p) => ({ xM: p.x * grid.stepM + grid.origin.xM, yM: p.y * grid.stepM + grid.origin.yM })))

const areaOf = (grid: Grid, paths: Paths64): number => Math.abs(areaPaths(paths)) * grid.stepM ** 2

/** A line widened by `radiusM` to every side, round joins and caps; a line of no length gives a disc. */
export function widened(grid: Grid, line: readonly Vec[], radiusM: number, sagM: number): Paths64 {
  const radius = radiusM / grid.stepM
  if (line.length === 0 || radius < 0.5) return []
  // Under 0.01 of a grid step the library falls back to a coarse arc.
  const sag = Math.max(0.0101, sagM / grid.stepM)
  return inflatePaths([toGrid(grid, line)], radius, JoinType.Round, EndType.Round, 2, sag)
}

export const filled = (grid: Grid, points: readonly Vec[]): Paths64 => union([toGrid(grid, points)], FillRule.EvenOdd)

/**
 * Everything within `radiusM` of a figure, as rings. `sagM` bounds how far flattened arcs lie inside the true ones.
 * A radius of 0 gives the filled polygon itself, and nothing for lines and points. Collapsed polygons count as lines.
 */
export function bufferRegion(shape: Shape, size: { readonly radiusM: number; readonly sagM: number }): Region {
  const points = shape.kind === 'point' ? [shape.point] : shape.points
  const first = points[0]
  if (!first) return []
  const grid = gridFor(points, size.radiusM)
  if (shape.kind !== 'polygon') return fromGrid(grid, widened(grid, points, size.radiusM, size.sagM))
  const rim = widened(grid, [...points, first], size.radiusM, size.sagM)
  return fromGrid(grid, union([...filled(grid, points), ...rim], FillRule.NonZero))
}

/** The strip a body of `widthM` covers while its middle follows `line`. */
export const sweptStrip = (line: readonly Vec[], size: { readonly widthM: number; readonly sagM: number }): Region =>
  bufferRegion({ kind: 'polyline', points: line }, { radiusM: size.widthM / 2, sagM: size.sagM })

/** Area of a region. */
export function regionAreaM2(region: Region): number {
  const all = region.flat()
  if (all.length === 0) return 0
  const grid = gridFor(all, 0)
  return areaOf(grid, region.map((ring) => toGrid(grid, ring)))
}

/** Area a ring fills by the even-odd rule, also where it crosses itself. */
export function filledAreaM2(points: readonly Vec[]): number {
  if (points.length < 3) return 0
  const grid = gridFor(points, 0)
  return areaOf(grid, filled(grid, points))
}

/**
 * Area common to a filled polygon (even-odd) and the strip of `widthM` along `line` (round joins and caps).
 * Accuracy: 2e-5 of the rounded parts, plus the grid step times the outline. 0 for a strip of no width.
 * Figures of more than `MOST_CUT_POINTS` points together are integrated on scan lines, less exactly (scanArea.ts).
 */
export function overlapAreaM2(polygon: readonly Vec[], line: readonly Vec[], widthM: number): number {
  if (polygon.length < 3 || line.length === 0 || !(widthM > 0)) return 0
  if (polygon.length + line.length > MOST_CUT_POINTS) return scannedOverlapM2(polygon, line, widthM)
  const grid = gridFor([...polygon, ...line], widthM / 2)
  const strip = widened(grid, line, widthM / 2, (ARC_SAG_RATIO * widthM) / 2)
  if (strip.length === 0) return 0
  return areaOf(grid, intersect(filled(grid, polygon), strip, FillRule.NonZero))
}
