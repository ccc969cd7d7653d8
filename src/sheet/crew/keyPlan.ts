/** The key plan at a true scale: what stands and runs on the site, zones by number, the string at its longest. */
import { itemMatrix, type Matrix } from '../../drawing/matrix.ts'
import type { BoxPx } from '../../drawing/paint.ts'
import type { Pen, Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { PlacedItem, SiteModel } from '../../derive/types.ts'
import { kindOf } from '../../scene/kinds/index.ts'
import { zonePens } from '../../scene/symbols/zone.ts'
import type { Lettering } from '../lettering.ts'
import { fitPlan } from '../planFit.ts'
import { createLabels } from './labels.ts'
import type { CrewReader } from './reader.ts'
import type { DrawnScale } from './scale.ts'
import { inPoints, type SheetGroup } from './types.ts'
import type { NumberedZone } from './zoneList.ts'

export interface KeyPlanExtent {
  /** Middle of what has to be shown, along and across (right positive), m. */
  midAlongM: number
  midOffsetM: number
  lengthM: number
  widthM: number
}

/** What has to be in sight, in the frame along the axis. */
export const extentOf = (site: SiteModel): KeyPlanExtent => {
  // Fitted to a page of no margin to speak of, the fit gives back what it took up.
  const wide = { x0: 0, y0: 0, x1: 1000, y1: 1e9 }
  const tall = { x0: 0, y0: 0, x1: 1e9, y1: 1000 }
  const [along, across] = [fitPlan(site, wide), fitPlan(site, tall)]
  return { midAlongM: along.leftRunningM + 500 / along.pxPerM, midOffsetM: along.midOffsetM, lengthM: 920 / along.pxPerM, widthM: 920 / across.pxPerM }
}

/** Site frame → pt of the page; exit to the right, the right side looking down-string below. */
export const planMatrix = (site: SiteModel, extent: KeyPlanExtent, box: BoxPx, { ptPerM }: DrawnScale): Matrix => {
  const { xM, yM } = site.setUp?.datum ?? { xM: 0, yM: 0 }
  const headingRad = site.setUp?.headingRad ?? 0
  const [cos, sin] = [Math.cos(headingRad), Math.sin(headingRad)]
  const [a, b, c, d] = [ptPerM * cos, ptPerM * sin, ptPerM * sin, -ptPerM * cos]
  const [midX, midY] = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2]
  return { a, b, c, d, e: midX - extent.midAlongM * ptPerM - a * xM - c * yM, f: midY - extent.midOffsetM * ptPerM - b * xM - d * yM }
}

const at = (m: Matrix, xM: number, yM: number): { x: number; y: number } => ({ x: m.a * xM + m.c * yM + m.e, y: m.b * xM + m.d * yM + m.f })

const areaOf = ({ outlineM, kind }: PlacedItem): number => {
  if (kindOf(kind)?.placing !== 'polygon') return -1
  let sum = 0
  for (let i = 0; i + 1 < outlineM.length; i += 2) {
    const j = (i + 2) % outlineM.length
    sum += outlineM[i]! * outlineM[j + 1]! - outlineM[j]! * outlineM[i + 1]!
  }
  return Math.abs(sum / 2)
}

/** Followed closely enough that a bend is round at any scale that fits a page. */
const STRING_STEPS = 160

const runPoints = (site: SiteModel, fromM: number, toM: number): number[] =>
  Array.from({ length: STRING_STEPS + 1 }, (_, i) => site.atRunning(fromM + ((toM - fromM) * i) / STRING_STEPS)).flatMap(({ xM, yM }) => [xM, yM])

/** Area features without their fill and hatch: black on white, the symbols over them stay legible. */
const lineOnly = (primitive: Primitive): Primitive => ('hatch' in primitive || 'fill' in primitive ? (({ fill: _fill, hatch: _hatch, ...rest }) => rest as Primitive)(primitive as Primitive & Pen) : primitive)

const NUMBER_PT = 11

/**
 * Groups of the plan, back to front, all clipped to `box`.
 *
 * Every length of the site is `ptPerM` points to the metre; marks, lettering and lines keep their size. A pipe thinner than
 * 1.6 pt is drawn that wide. Words keep clear of one another; what finds no room is left out, the table has it.
 */
export const keyPlanGroups = (site: SiteModel, zones: readonly NumberedZone[], box: BoxPx, scale: DrawnScale, extent: KeyPlanExtent, reader: CrewReader, lettering: Lettering): readonly SheetGroup[] => {
  const matrix = planMatrix(site, extent, box, scale)
  const context: SymbolContext = { pipeOuterDiameterM: site.pipe.odM, stickLengthM: site.sticks.stickLengthM, pxPerM: scale.ptPerM, reader: { system: reader.system, language: reader.language } }
  const labels = createLabels(box, lettering)
  const placed = [...site.placed.values()].filter((item) => !('zoneClass' in item.record))
  const features = placed.filter(({ record }) => !('place' in record)).toSorted((a, b) => areaOf(b) - areaOf(a))
  const items = placed.filter(({ record }) => 'place' in record)
  const symbol = (item: PlacedItem): readonly Primitive[] => kindOf(item.kind)?.planSymbol(item.record, context) ?? []
  const words: { item: PlacedItem; text: Extract<Primitive, { t: 'text' }>; matrix: Matrix }[] = []
  const drawn = (item: PlacedItem, m: Matrix, isArea: boolean): SheetGroup => {
    const list = symbol(item)
    for (const one of list) if (one.t === 'text') words.push({ item, text: one, matrix: m })
    const shapes = list.filter(({ t }) => t !== 'text')
    return { name: `item ${item.kind}`, matrix: m, clipPt: box, list: isArea ? shapes.map(lineOnly) : shapes }
  }
  const groups: SheetGroup[] = features.map((item) => drawn(item, matrix, areaOf(item) >= 0 && item.kind !== 'building' && item.kind !== 'water'))
  groups.push({ name: 'zones', matrix, clipPt: box, list: zones.flatMap(({ zone, rings, isUnknown }) => rings.map((ring): Primitive => ({ t: 'path', points: ring.flatMap(({ xM, yM }) => [xM, yM]), closed: true, stroke: zonePens[zone.zoneClass].stroke ?? 'ink', weight: 'ticks', dash: isUnknown ? 'missing' : (zonePens[zone.zoneClass].dash ?? 'solid') }))) })
  const tailM = -(site.sticks.stickLengthM ?? 0)
  const tipM = site.sticks.stringLengthM(site.sticks.stickCount)
  if (site.setUp !== null) groups.push({ name: 'axis', matrix, clipPt: box, list: [{ t: 'path', points: runPoints(site, tailM - 6, tipM + 12), stroke: 'ink2', weight: 'axis', dash: 'axis' }] })
  groups.push(...items.map((item) => drawn(item, itemMatrix(matrix, item.xM, item.yM, item.headingRad), false)))
  if (site.setUp !== null && tipM > tailM) groups.push({ name: 'pipe', matrix, clipPt: box, list: [{ t: 'pipe', points: runPoints(site, tailM, tipM), outerDiameterM: site.pipe.odM ?? 0.3, leastPx: 1.6 }] })
  if (site.setUp !== null) groups.push({ name: 'datum', matrix, clipPt: box, list: [{ t: 'mark', xM: site.setUp.datum.xM, yM: site.setUp.datum.yM, parts: [{ t: 'circle', xM: 0, yM: 0, radiusM: 3.4, fill: 'sheet', stroke: 'ink', weight: 'ticks' }, { t: 'path', points: [-6, 0, 6, 0], stroke: 'ink', weight: 'ticks' }, { t: 'path', points: [0, -6, 0, 6], stroke: 'ink', weight: 'ticks' }] }] })

  if (site.setUp !== null) labels.keepClear(at(matrix, site.setUp.datum.xM, site.setUp.datum.yM), 7)
  // Nothing is written over the string.
  const string = runPoints(site, tailM, tipM)
  if (site.setUp !== null) for (let i = 0; i + 1 < string.length; i += 2) labels.keepClear(at(matrix, string[i]!, string[i + 1]!), 3)
  for (const support of site.supports) {
    const { xM, yM } = site.atRunning(support.runningM, support.offsetM)
    labels.beside(support.label, at(matrix, xM, yM), { sizePx: NUMBER_PT, bold: true }, 6)
  }
  for (const { number, rings, zone } of zones) labels.numbered(String(number), rings.map((ring) => ring.map(({ xM, yM }) => at(matrix, xM, yM))), zonePens[zone.zoneClass].stroke ?? 'ink')
  for (const item of items) if (item.label !== '' && kindOf(item.kind)?.supportsPipe !== true) labels.beside(item.label, at(matrix, item.xM, item.yM), { sizePx: NUMBER_PT, bold: true }, 7)
  for (const { text, matrix: m } of words) labels.beside(text.text, at(m, text.xM, text.yM), { sizePx: NUMBER_PT, ...(text.ink === undefined ? {} : { ink: text.ink }) }, 2)
  groups.push({ name: 'labels', matrix: inPoints, clipPt: box, list: labels.list() })
  return groups
}
