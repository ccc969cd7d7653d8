/** What a chosen crew spot must see and its way out. Fetched with the first spot chosen: the way needs the cutting of outlines. */
import type { Primitive } from '../../drawing/primitives.ts'
import { limitsOf } from '../../checks/limits.ts'
import { drawnWayOut } from '../../derive/people/egress.ts'
import { sightLinesOf, type SightLine } from '../../derive/people/sight.ts'
import { spotsOf, type Spot } from '../../derive/people/spots.ts'
import type { SiteModel } from '../../derive/types.ts'
import type { Vec } from '../../geometry/vector.ts'
import type { Phase } from '../../scene/parts.ts'
import { toPx, type Picture } from './picture.ts'

const HEAD_PX = 9

let last: { site: SiteModel; key: string; way: readonly Vec[] | null } | null = null

function wayOf(site: SiteModel, spot: Spot, phase: Phase): readonly Vec[] | null {
  const wayM = limitsOf(site.document).limit('way-width').check
  if (wayM === null || wayM <= 0) return null
  const key = `${spot.id} ${phase} ${wayM}`
  if (last === null || last.site !== site || last.key !== key) last = { site, key, way: drawnWayOut(site, spot, phase, wayM) }
  return last.way
}

/**
 * For a single chosen crew spot, at the phase shown or else the first it is used in: a thin line to each thing it must
 * see, dashed where something hides it or it is too far, and its way out, dashed, with an arrow at the muster point.
 * While a hand moves something the way is left out: it is worked out once the hand lets go.
 */
export const peopleShapes = (picture: Picture, isMoving: boolean): Primitive[] => {
  const { site, view } = picture
  const [id] = view.selection
  const spot = view.selection.length === 1 ? spotsOf(site).find((one) => one.id === id) : undefined
  if (spot === undefined) return []
  const phase = spot.record.phases.includes(view.phase) ? view.phase : spot.record.phases[0]
  if (phase === undefined) return []
  const mostM = limitsOf(site.document).limit('sight-distance').check
  const lines = sightLinesOf(site).filter((line) => line.spot.id === spot.id && line.phases.includes(phase))
  return [...lines.flatMap((line) => sightShapes(picture, line, mostM)), ...(isMoving ? [] : wayShapes(picture, wayOf(site, spot, phase)))]
}

function sightShapes(picture: Picture, line: SightLine, mostM: number | null): Primitive[] {
  const [a, b] = [toPx(picture, line.from.xM, line.from.yM), toPx(picture, line.to.xM, line.to.yM)]
  const isHidden = line.blockedBy.length > 0 || line.mayBlock.length > 0 || (mostM !== null && line.distanceM > mostM)
  return [
    { t: 'path', points: [a.xPx, a.yPx, b.xPx, b.yPx], stroke: 'chosen', weight: 'ticks', ...(isHidden ? { dash: 'proposal' as const } : {}) },
    { t: 'circle', xM: b.xPx, yM: b.yPx, radiusM: 4, stroke: 'chosen', weight: 'ticks', ...(isHidden ? {} : { fill: 'chosen' as const }) },
  ]
}

function wayShapes(picture: Picture, way: readonly Vec[] | null): Primitive[] {
  if (way === null || way.length < 2) return []
  const px = way.map(({ xM, yM }) => toPx(picture, xM, yM))
  const [from, to] = [px.at(-2)!, px.at(-1)!]
  const far = Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx) || 1
  const [ux, uy] = [(to.xPx - from.xPx) / far, (to.yPx - from.yPx) / far]
  const back = { xPx: to.xPx - ux * HEAD_PX, yPx: to.yPx - uy * HEAD_PX }
  return [
    { t: 'path', points: px.flatMap(({ xPx, yPx }) => [xPx, yPx]), stroke: 'ink', weight: 'gear', dash: 'lane' },
    { t: 'path', points: [back.xPx - uy * HEAD_PX * 0.5, back.yPx + ux * HEAD_PX * 0.5, to.xPx, to.yPx, back.xPx + uy * HEAD_PX * 0.5, back.yPx - ux * HEAD_PX * 0.5], stroke: 'ink', weight: 'gear' },
  ]
}
