/** Plan picture of a talk: the gear, the pipe and the live zones, one of them brought out. Pure: drawing lists to SVG. */
import { itemMatrix, type Matrix } from '../../drawing/matrix.ts'
import type { Pen, Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { svgParts } from '../../drawing/svg.ts'
import type { Theme } from '../../drawing/theme.ts'
import type { SectionProfile, SiteModel } from '../../derive/types.ts'
import type { Zone } from '../../derive/zones.ts'
import { kindOf } from '../../scene/kinds/index.ts'
import { zonePens } from '../../scene/symbols/zone.ts'

export interface TalkPicture {
  site: SiteModel
  profile: SectionProfile
  zones: readonly Zone[]
  /** Brought out by its hatch; null: all are hatched. */
  chosen: Zone | null
  /** Spots of the crew drawn, by id. */
  spotIds: ReadonlySet<string>
  /** Ringed: the spot being put somewhere. */
  ringedId: string | null
  isTurned: boolean
  widthPx: number
  heightPx: number
  theme: Theme
}

/** Room round what the picture is about, and the least it shows, m. */
const MARGIN_RATIO = 0.14
const LEAST_SPAN_M = 9
const MOST_PX_PER_M = 55
/** Points of the run about this far apart where it bends, m. */
const BEND_STEP_M = 1.5

interface Box {
  minU: number
  maxU: number
  minV: number
  maxV: number
}

/** Sheet frame of the picture: u along the line to the right, v up the page. */
const turnOf = ({ site, isTurned }: Pick<TalkPicture, 'site' | 'isTurned'>): number => (site.setUp?.headingRad ?? 0) + (isTurned ? Math.PI : 0)

const boxOf = (points: readonly { xM: number; yM: number }[], headingRad: number): Box | null => {
  const [cos, sin] = [Math.cos(headingRad), Math.sin(headingRad)]
  const box = { minU: Infinity, maxU: -Infinity, minV: Infinity, maxV: -Infinity }
  for (const { xM, yM } of points) {
    const [u, v] = [xM * cos + yM * sin, yM * cos - xM * sin]
    box.minU = Math.min(box.minU, u)
    box.maxU = Math.max(box.maxU, u)
    box.minV = Math.min(box.minV, v)
    box.maxV = Math.max(box.maxV, v)
  }
  return box.minU > box.maxU ? null : box
}

/** Site → px of the picture: the chosen zone in the middle; without one the spots and the datum, or all zones. */
export function pictureMatrix(picture: TalkPicture): Matrix {
  const { site, zones, chosen, spotIds, widthPx, heightPx } = picture
  const headingRad = turnOf(picture)
  const spots = chosen === null ? [...spotIds].flatMap((id) => { const item = site.placed.get(id); return item === undefined ? [] : [item] }) : []
  // With everybody on it the picture is about where they stand: a public way runs on for ever.
  const rings = chosen !== null ? chosen.rings.flat() : spots.length > 0 ? [site.atRunning(0)] : zones.flatMap((zone) => zone.rings.flat())
  const origin = site.atRunning(0)
  const box = boxOf([...rings, ...spots], headingRad) ?? boxOf([origin, ...site.supports.map(({ runningM }) => site.atRunning(runningM))], headingRad)!
  const [spanU, spanV] = [Math.max(LEAST_SPAN_M, box.maxU - box.minU) * (1 + 2 * MARGIN_RATIO), Math.max(LEAST_SPAN_M, box.maxV - box.minV) * (1 + 2 * MARGIN_RATIO)]
  const scale = Math.min(MOST_PX_PER_M, widthPx / spanU, heightPx / spanV)
  const [cos, sin] = [Math.cos(headingRad), Math.sin(headingRad)]
  const [midU, midV] = [(box.minU + box.maxU) / 2, (box.minV + box.maxV) / 2]
  return { a: scale * cos, b: scale * sin, c: scale * sin, d: -scale * cos, e: widthPx / 2 - scale * midU, f: heightPx / 2 + scale * midV }
}

/** Px of the picture → site. */
export function siteAt({ a, b, c, d, e, f }: Matrix, xPx: number, yPx: number): { xM: number; yM: number } {
  const determinant = a * d - b * c
  const [x, y] = [xPx - e, yPx - f]
  return { xM: (d * x - c * y) / determinant, yM: (a * y - b * x) / determinant }
}

/** Stretch of the run as flat points. */
function runPoints(site: SiteModel, fromM: number, toM: number): number[] {
  const stations = [fromM, toM]
  for (const bend of site.bends) for (let at = bend.fromM; at <= bend.toM; at += BEND_STEP_M) if (at > fromM && at < toM) stations.push(at)
  return stations.toSorted((p, q) => p - q).flatMap((runningM) => {
    const { xM, yM } = site.atRunning(runningM)
    return [xM, yM]
  })
}

const ringOf = (zone: Zone, ring: Zone['rings'][number], isBroughtOut: boolean): Primitive => {
  const pen: Pen = zonePens[zone.zoneClass]
  const { hatch: _hatch, ...edge } = pen
  const isUnknown = zone.missing.length > 0
  return { t: 'path', points: ring.flatMap(({ xM, yM }) => [xM, yM]), closed: true, ...(isBroughtOut && !isUnknown ? pen : edge), ...(isBroughtOut ? { weight: 'building' as const } : { weight: 'hair' as const }), ...(isUnknown ? { dash: 'missing' as const } : {}) }
}

/** Whole picture as one SVG. `title`: what it shows, for a reader who does not see it. */
export function talkPictureSvg(picture: TalkPicture, title: string): string {
  const { site, profile, zones, chosen, spotIds, ringedId, widthPx, heightPx, theme } = picture
  const matrix = pictureMatrix(picture)
  const pxPerM = Math.hypot(matrix.a, matrix.b)
  const context: SymbolContext = { pipeOuterDiameterM: site.pipe.odM, stickLengthM: site.job.stickLengthM, pxPerM }
  const parts: { defs: string; body: string }[] = []
  const draw = (list: readonly Primitive[], at: Matrix = matrix): void => { parts.push(svgParts(list, { matrix: at, theme, idPrefix: `talk${parts.length}` })) }
  const items = [...site.placed.values()].filter(({ record, kind, id }) => !('zoneClass' in record) && (kind !== 'crew' || spotIds.has(id)))
  const symbol = (item: (typeof items)[number]): void => {
    const list = (kindOf(item.kind)?.planSymbol(item.record, context) ?? []).filter(({ t }) => t !== 'text')
    draw(list, 'place' in item.record ? itemMatrix(matrix, item.xM, item.yM, item.headingRad) : matrix)
  }
  // Largest outlines first, so that the lot lies under what stands on it.
  const features = items.filter(({ record }) => !('place' in record)).toSorted((p, q) => areaOf(q.outlineM) - areaOf(p.outlineM))
  for (const item of features) symbol(item)
  draw(zones.filter((zone) => zone.key !== chosen?.key).flatMap((zone) => zone.rings.map((ring) => ringOf(zone, ring, chosen === null))))
  if (chosen !== null) draw(chosen.rings.map((ring) => ringOf(chosen, ring, true)))
  if (site.run !== null) {
    const [fromM, toM] = [Math.min(-15, (profile.tailM ?? 0) - 3), Math.max(15, (profile.tipM ?? 0) + 6)]
    draw([{ t: 'path', points: runPoints(site, fromM, toM), stroke: 'ink2', weight: 'axis', dash: 'axis' }])
  }
  for (const item of items) if ('place' in item.record && item.kind !== 'crew') symbol(item)
  draw(pipeOf(site, profile))
  for (const item of items) if (item.kind === 'crew') symbol(item)
  const ringed = ringedId === null ? undefined : site.placed.get(ringedId)
  if (ringed !== undefined) draw([{ t: 'mark', xM: ringed.xM, yM: ringed.yM, parts: [{ t: 'circle', xM: 0, yM: 0, radiusM: 19, stroke: 'chosen', weight: 'pipe' }] }])
  const name = title.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${widthPx} ${heightPx}" width="100%" height="100%" role="img" aria-label="${name}"><defs>${parts.map(({ defs }) => defs).join('')}</defs>${parts.map(({ body }) => body).join('')}</svg>`
}

/** String and fed stick as they lie, and the rope where the stage pulls. */
function pipeOf(site: SiteModel, profile: SectionProfile): Primitive[] {
  if (site.run === null) return []
  const { tipM, stage } = profile
  const puller = [...site.placed.values()].find(({ record, runningM }) => 'pullerKind' in record && runningM !== null && tipM !== null && runningM > tipM)
  const nose = tipM === null ? null : site.atRunning(tipM)
  const isPulled = stage.phase === 'pull' || stage.phase === 'move'
  return [
    ...(isPulled && puller !== undefined && nose !== null ? [{ t: 'path', points: [nose.xM, nose.yM, puller.xM, puller.yM], stroke: 'ink', weight: 'pipe', dash: 'rope' } as const] : []),
    ...profile.bodies.map(({ startM, endM }): Primitive => ({ t: 'pipe', points: runPoints(site, startM, endM), outerDiameterM: site.pipe.odM ?? 0.3, leastPx: 7 })),
  ]
}

/** Twice the area of a ring of flat points. */
const areaOf = (points: readonly number[]): number => {
  let sum = 0
  for (let i = 0; i + 1 < points.length; i += 2) {
    const j = (i + 2) % points.length
    sum += points[i]! * points[j + 1]! - points[j]! * points[i + 1]!
  }
  return Math.abs(sum)
}
