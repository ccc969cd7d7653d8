/** Least move of a body after which it stands clear: what rules out one place rules out those about it. */
import { distanceBetween } from '../geometry/distance.ts'
import { boundingBox, containment, type Box } from '../geometry/polygon.ts'
import { add, along, between, ORIGIN, type Vec } from '../geometry/vector.ts'
import { gapBetween, ROUNDING_M, type SiteObstacle } from './gearBodies.ts'

/** How far a body shifted by this must at least still move to be clear; null where it is clear. */
export type Lack = (shift: Vec) => number | null

const STEP_M = 0.1
const TURNS: readonly number[] = Array.from({ length: 24 }, (_, i) => (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * (Math.PI / 12))
const tidy = (valueM: number): number => Math.round(valueM * 1000) / 1000 + 0

/**
 * Least displacement, to the decimetre, after which nothing is lacking; null where none within `mostM` does.
 * Tried outward in 24 directions about `firstRad`, so that of equal ones the preferred direction wins. A place that lacks
 * d rules out every place within d of it, so most are never measured.
 */
export function clearShift(lackM: Lack, firstRad: number, mostM = 12, directions: readonly number[] = TURNS): Vec | null {
  const shut: { xM: number; yM: number; radiusM: number }[] = []
  let last = 0
  const isShut = ({ xM, yM }: Vec): boolean => {
    const holds = (i: number): boolean => {
      const disc = shut[i]
      return disc !== undefined && (disc.xM - xM) ** 2 + (disc.yM - yM) ** 2 < disc.radiusM ** 2
    }
    if (holds(last)) return true
    for (let i = shut.length - 1; i >= 0; i -= 1) if (holds(i)) return (last = i) >= 0
    return false
  }
  for (let step = 1; step * STEP_M <= mostM + 1e-9; step += 1) {
    for (const turnRad of directions) {
      const { xM, yM } = along(firstRad + turnRad, step * STEP_M)
      const shift = { xM: tidy(xM), yM: tidy(yM) }
      if (isShut(shift)) continue
      const lack = lackM(shift)
      if (lack === null) return shift
      shut.push({ ...shift, radiusM: lack - ROUNDING_M })
    }
  }
  return null
}

export const shifted = (points: readonly Vec[], by: Vec): Vec[] => points.map((p) => add(p, by))

/** What a body keeps from an obstacle: at least `roomM` of clear room. */
export interface Room {
  obstacle: SiteObstacle
  roomM: number
}

/** Lack of a body against obstacles, each with its room; those whose box stays away are not measured. */
export function roomLack(points: readonly Vec[], rooms: readonly Room[]): Lack {
  const own = boundingBox(points)
  const boxed = rooms.flatMap(({ obstacle, roomM }) => {
    const box = boundingBox(figureOf(obstacle))
    return box === null ? [] : [{ obstacle, roomM, box, keepM: roomM + obstacle.halfWidthM }]
  })
  return (shift) => {
    if (own === null) return null
    let there: Vec[] | null = null
    let most: number | null = null
    for (const { obstacle, roomM, box, keepM } of boxed) {
      if (isApart(own, shift, box, keepM)) continue
      there ??= shifted(points, shift)
      const { clearM } = gapBetween(there, obstacle)
      if (clearM >= roomM - ROUNDING_M) continue
      const lack = Math.max(roomM - clearM, deepest(there, obstacle))
      most = Math.max(most ?? 0, lack)
    }
    return most
  }
}

const figureOf = ({ shape }: SiteObstacle): readonly Vec[] => (shape.kind === 'point' ? [shape.point] : shape.points)

const isApart = (a: Box, { xM, yM }: Vec, b: Box, roomM: number): boolean =>
  a.minXM + xM > b.maxXM + roomM || a.maxXM + xM < b.minXM - roomM || a.minYM + yM > b.maxYM + roomM || a.maxYM + yM < b.minYM - roomM

/** How deep a place of the one lies in the other: while it is moved by less it stays in. */
function deepest(points: readonly Vec[], { shape }: SiteObstacle): number {
  const others = shape.kind === 'point' ? [shape.point] : shape.points
  const inBody = depthOf(shape.kind === 'polygon' ? placesOf(others) : others, points)
  return shape.kind === 'polygon' ? Math.max(inBody, depthOf(placesOf(points), others)) : inBody
}

/** Outlines with more corners than this are dense enough by themselves. */
const FEW_CORNERS = 12
const PARTS_OF_SIDE = 4

/** Corners of a filled outline, places along its sides, and between side and middle: a long body may cross with no corner in. */
function placesOf(ring: readonly Vec[]): readonly Vec[] {
  if (ring.length > FEW_CORNERS) return ring
  const middle = between(ring.reduce(add, ORIGIN), ORIGIN, 1 - 1 / ring.length)
  const sides = ring.flatMap((corner, i) => Array.from({ length: PARTS_OF_SIDE }, (_, part) => between(corner, ring[(i + 1) % ring.length]!, part / PARTS_OF_SIDE)))
  // A place between outline and middle is in the figure only where the figure is convex about it; `containment` says so.
  const inner = [middle, ...sides.map((place) => between(place, middle, 0.5))].filter((place) => containment(ring, place) === 'inside')
  return [...sides, ...inner]
}

function depthOf(places: readonly Vec[], ring: readonly Vec[]): number {
  const outline = { kind: 'polyline' as const, points: [...ring, ...ring.slice(0, 1)] }
  return places.reduce((most, point) => (containment(ring, point) === 'inside' ? Math.max(most, distanceBetween({ kind: 'point', point }, outline).distanceM) : most), 0)
}

/** Several bodies moved as one: what the worst lacks. */
export const mostLacking = (lacks: readonly Lack[]): Lack => (shift) => {
  let most: number | null = null
  for (const lack of lacks) {
    const one = lack(shift)
    if (one !== null) most = Math.max(most ?? 0, one)
  }
  return most
}
