import { touchSizePx } from '../../drawing/paint.ts'
import { levelShape } from '../../drawing/levelShapes.ts'
import { rankShape } from '../../drawing/rankShape.ts'
import type { InkName, Primitive } from '../../drawing/primitives.ts'
import { textIn } from '../../messages/localized.ts'
import { crewRoles } from '../../scene/kinds/crew.ts'
import { kindOf } from '../../scene/kinds/index.ts'
import { applyMatrix } from '../../state/frames.ts'
import { RANK_PX, type RankMark } from '../rankMarks.ts'
import { detailAt, labelRanks, placeLabels, type BoxPx, type LabelRequest } from './labels.ts'
import type { MarkedFinding } from './findings.ts'
import { nailPlace, paintShapes } from './paintItems.ts'
import { zoneBoxPx } from './paintGround.ts'
import { runPoints } from './pipeShapes.ts'
import { toPx, type DrawnItem, type Picture } from './picture.ts'
import type { ShownZone } from './shownZones.ts'
import { textWidthPx } from './textWidth.ts'
import type { Effect } from '../tools/types.ts'

/** A word waiting for its place, with how it is lettered. */
interface Word {
  request: LabelRequest
  text: string
  sizePx: number
  ink: InkName
  bold: boolean
  /** Level shape instead of a word. */
  mark?: MarkedFinding
  /** Zone whose page a tap on the word opens. */
  zoneKey?: string
}

/** Place of a tap-able mark in the notes. */
export type Spot = { xPx: number; yPx: number; radiusPx: number; effect: Effect }

export interface NotesInput {
  features: readonly DrawnItem[]
  items: readonly DrawnItem[]
  zones: readonly ShownZone[]
  /** Numbers of findings; empty where the margin draws them. */
  marks: readonly MarkedFinding[]
  /** Places of the supports in the ranking of what the joint bears. */
  ranks: readonly RankMark[]
}

/** Share of the size that lettering stands above its baseline, and the height of a line. */
const ASCENT_RATIO = 0.8
const LINE_RATIO = 1.08
const identity = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }

const clippedTo = (box: BoxPx, { boundsPx }: Picture): BoxPx => ({ x0: Math.max(boundsPx.x0 + 6, box.x0), y0: Math.max(boundsPx.y0 + 6, box.y0), x1: Math.min(boundsPx.x1 - 6, box.x1), y1: Math.min(boundsPx.y1 - 6, box.y1) })

/** Text never crosses the fold: it starts 8 px beyond it or ends 4 px before it. */
const wordBounds = ({ boundsPx, band }: Picture): BoxPx => ({ ...boundsPx, x0: boundsPx.x0 + (boundsPx.x0 > 0 ? 6 : 0), x1: boundsPx.x1 - (boundsPx.x1 < band.widthPx ? 2 : 0) })

const rankOf = ({ item }: DrawnItem, picture: Picture): number => {
  if (picture.chosen.has(item.id)) return labelRanks.chosen
  const kind = kindOf(item.kind)
  if (kind?.gear === 'people') return labelRanks.crew
  if (kind?.gear === 'site') return kind.placing === 'item' ? labelRanks.level : labelRanks.site
  return labelRanks.gear
}

const wordsOfItem = (drawn: DrawnItem, picture: Picture, context: CanvasRenderingContext2D): Word[] => {
  const { matrix: m, texts, item } = drawn
  return texts.map((text, index) => {
    const bold = text.bold === true
    const widthPx = textWidthPx(context, text.text, text.sizePx, bold, picture.isTouch)
    const sizePx = picture.isTouch ? touchSizePx(text.sizePx) : text.sizePx
    const x = m.a * text.xM + m.c * text.yM + m.e + (text.dxPx ?? 0)
    const y = m.b * text.xM + m.d * text.yM + m.f - (text.dyPx ?? 0)
    const left = x - (text.align === 'center' ? widthPx / 2 : text.align === 'right' ? widthPx : 0)
    return {
      request: {
        id: `${item.id}/${index}`, box: drawn.isFeature ? clippedTo(drawn.boxPx, picture) : drawn.boxPx, widthPx, heightPx: sizePx * LINE_RATIO,
        rank: rankOf(drawn, picture), wished: { xPx: left, yPx: y - sizePx * ASCENT_RATIO }, mayStandInside: drawn.isFeature,
      },
      text: text.text, sizePx: text.sizePx, ink: text.ink ?? 'ink', bold,
    }
  })
}

/** What a zone is called on the plan: its name, and for RED and BLUE who stays out. AMBER lets named tasks in. */
export const zoneWord = ({ zoneClass, name, mayEnter }: Pick<ShownZone, 'zoneClass' | 'name' | 'mayEnter'>, language: 'en' | 'es'): string => {
  const title = textIn(name, language)
  if (zoneClass === 'AMBER') return title
  if (zoneClass === 'BLUE') return `${title}: ${language === 'es' ? 'público fuera' : 'public kept out'}`
  const roles = mayEnter.flatMap((role) => crewRoles.find(({ value }) => value === role)?.label ?? []).map((label) => textIn(label, language))
  if (roles.length === 0) return `${title}: ${language === 'es' ? 'nadie' : 'nobody'}`
  return `${title}: ${language === 'es' ? 'solo' : 'only'} ${roles.join(', ')}`
}

const wordOfZone = (zone: ShownZone, picture: Picture, context: CanvasRenderingContext2D): Word[] => {
  const isRed = zone.zoneClass === 'RED'
  if (!isRed && !['scale', 'full'].includes(detailAt(picture.view.pxPerM))) return []
  const box = zoneBoxPx(zone, picture.matrix)
  const { boundsPx } = picture
  if (box === null || box.x1 < boundsPx.x0 || box.y1 < boundsPx.y0 || box.x0 > boundsPx.x1 || box.y0 > boundsPx.y1) return []
  const text = `${zone.isUnknown ? '? ' : ''}${zoneWord(zone, picture.view.language)}`
  const widthPx = textWidthPx(context, text, 12, isRed, picture.isTouch)
  const heightPx = (picture.isTouch ? touchSizePx(12) : 12) * LINE_RATIO
  return [{
    request: { id: `zone/${zone.key}`, box: clippedTo(box, picture), widthPx, heightPx, rank: isRed ? labelRanks.redZone : labelRanks.zone, sides: ['below', 'above'], mayStandInside: true },
    zoneKey: zone.key, text, sizePx: 12, ink: zone.zoneClass === 'RED' ? 'red' : zone.zoneClass === 'AMBER' ? 'amber' : 'blue', bold: isRed,
  }]
}

/** Labels of supports, where the sheet lies north up and their flags are elsewhere. */
const supportWords = (items: readonly DrawnItem[], picture: Picture, context: CanvasRenderingContext2D): Word[] => {
  if (picture.view.orientation !== 'northUp' || detailAt(picture.view.pxPerM) === 'ticks') return []
  return items.filter(({ item }) => kindOf(item.kind)?.supportsPipe === true && item.label !== '').map((drawn) => ({
    request: { id: `${drawn.item.id}/label`, box: drawn.boxPx, widthPx: textWidthPx(context, drawn.item.label, 12, true, picture.isTouch), heightPx: 13, rank: labelRanks.gear },
    text: drawn.item.label, sizePx: 12, ink: 'ink', bold: true,
  }))
}

const nailBox = (picture: Picture): BoxPx | null => {
  const at = nailPlace(picture)
  if (at === null) return null
  const { xPx, yPx } = applyMatrix(picture.matrix, at.xM, at.yM)
  return { x0: xPx - 11, y0: yPx - 11, x1: xPx + 11, y1: yPx + 11 }
}

const nailWords = (picture: Picture, box: BoxPx | null, context: CanvasRenderingContext2D): Word[] => {
  const at = nailPlace(picture)
  if (at === null || box === null || detailAt(picture.view.pxPerM) === 'ticks') return []
  const text = picture.view.language === 'es' ? (at.isBeside ? 'clavo de origen, bajo las mordazas' : 'clavo de origen') : at.isBeside ? 'datum nail, under the jaws' : 'datum nail'
  return [{ request: { id: 'nail', box, widthPx: textWidthPx(context, text, 12, false, picture.isTouch), heightPx: 13, rank: labelRanks.gear + 0.5 }, text, sizePx: 12, ink: 'ink', bold: false }]
}

const MARK_PX = 23
/** Least height of a word that can be tapped. */
const WORD_TAP_PX = 24
const markWords = (marks: readonly MarkedFinding[], picture: Picture): Word[] =>
  marks.map((mark) => {
    const { xPx, yPx } = toPx(picture, mark.xM, mark.yM)
    const box = { x0: xPx - 3, y0: yPx - 3, x1: xPx + 3, y1: yPx + 3 }
    return {
      request: { id: `mark/${mark.key}`, box, widthPx: MARK_PX + 2, heightPx: MARK_PX + 2, rank: labelRanks.mark, wished: { xPx: xPx - MARK_PX / 2, yPx: yPx - 20 - MARK_PX }, sides: ['above', 'below'] },
      text: '', sizePx: 0, ink: 'ink', bold: false, mark,
    }
  })

/** Distance of a rank mark from the middle of its support, px; where one stands already, the next goes farther out by its size. */
const RANK_OFF_PX = 27
const RANK_ROOM_PX = RANK_PX * 1.3

interface RankPlace {
  rank: RankMark
  from: { xPx: number; yPx: number }
  at: { xPx: number; yPx: number }
}

/** Every rank mark on its stem to the right of the line, in this part of the sheet; none is ever left out. */
const rankPlaces = (ranks: readonly RankMark[], picture: Picture): RankPlace[] => {
  const { site, boundsPx } = picture
  const places: RankPlace[] = []
  for (const rank of ranks) {
    const [on, beside] = [site.atRunning(rank.runningM, rank.offsetM), site.atRunning(rank.runningM, rank.offsetM + 1)]
    const [from, to] = [toPx(picture, on.xM, on.yM), toPx(picture, beside.xM, beside.yM)]
    if (from.xPx < boundsPx.x0 || from.xPx > boundsPx.x1) continue
    const length = Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx) || 1
    const at = (offPx: number): RankPlace['at'] => ({ xPx: from.xPx + ((to.xPx - from.xPx) / length) * offPx, yPx: from.yPx + ((to.yPx - from.yPx) / length) * offPx })
    let offPx = RANK_OFF_PX
    const isTaken = (): boolean => places.some((other) => Math.hypot(other.at.xPx - at(offPx).xPx, other.at.yPx - at(offPx).yPx) < RANK_ROOM_PX)
    while (isTaken()) offPx += RANK_ROOM_PX
    places.push({ rank, from, at: at(offPx) })
  }
  return places
}

/** Boxes along the pipe as it lies, so that no word covers it. */
const pipeBoxes = ({ site, profile, matrix, band }: Picture): BoxPx[] => {
  if (site.run === null) return []
  const boxes: BoxPx[] = []
  for (const { startM, endM } of profile.bodies) {
    const points = runPoints(site, startM, endM)
    for (let i = 0; i + 3 < points.length; i += 2) {
      const [a, b] = [applyMatrix(matrix, points[i]!, points[i + 1]!), applyMatrix(matrix, points[i + 2]!, points[i + 3]!)]
      const count = Math.min(200, Math.max(1, Math.ceil(Math.hypot(b.xPx - a.xPx, b.yPx - a.yPx) / 32)))
      for (let k = 0; k < count; k++) {
        const [x, y] = [a.xPx + ((b.xPx - a.xPx) * (k + 0.5)) / count, a.yPx + ((b.yPx - a.yPx) * (k + 0.5)) / count]
        if (x > -40 && y > -40 && x < band.widthPx + 40 && y < band.heightPx + 40) boxes.push({ x0: x - Math.abs(b.xPx - a.xPx) / count / 2 - 2, y0: y - Math.abs(b.yPx - a.yPx) / count / 2 - 3, x1: x + Math.abs(b.xPx - a.xPx) / count / 2 + 2, y1: y + Math.abs(b.yPx - a.yPx) / count / 2 + 3 })
      }
    }
  }
  return boxes
}

/** Room the frame of a chosen item takes beyond its box, px. */
const FRAME_ROOM_PX = 8

/** Boxes words keep clear of: symbols, frames of what is chosen, sticks that lie beside their rack. */
const itemBoxes = ({ shapes, matrix: m, boxPx, item }: DrawnItem, picture: Picture): BoxPx[] => {
  const boxes = [boxPx]
  let sticks: BoxPx | null = null
  for (const shape of shapes) {
    if (shape.t !== 'pipe') continue
    for (let i = 0; i + 1 < shape.points.length; i += 2) {
      const [x, y] = [m.a * shape.points[i]! + m.c * shape.points[i + 1]! + m.e, m.b * shape.points[i]! + m.d * shape.points[i + 1]! + m.f]
      sticks = sticks === null ? { x0: x - 3, y0: y - 3, x1: x + 3, y1: y + 3 } : { x0: Math.min(sticks.x0, x - 3), y0: Math.min(sticks.y0, y - 3), x1: Math.max(sticks.x1, x + 3), y1: Math.max(sticks.y1, y + 3) }
    }
  }
  if (sticks !== null) boxes.push(sticks)
  if (picture.chosen.has(item.id)) boxes.push({ x0: boxPx.x0 - FRAME_ROOM_PX, y0: boxPx.y0 - FRAME_ROOM_PX, x1: boxPx.x1 + FRAME_ROOM_PX, y1: boxPx.y1 + FRAME_ROOM_PX })
  return boxes
}

/** Discs in a row over a word, so that it can be tapped wherever it is touched. */
function spotsAlong({ widthPx, heightPx }: LabelRequest, xPx: number, yPx: number, effect: Effect): Spot[] {
  const radiusPx = Math.max(heightPx, WORD_TAP_PX / 2)
  const count = Math.max(1, Math.ceil(widthPx / (2 * radiusPx)))
  return Array.from({ length: count }, (_, i) => ({ xPx: xPx + ((i + 0.5) * widthPx) / count, yPx: yPx + heightPx / 2, radiusPx, effect }))
}

/**
 * Words and numbers of findings of one part of the sheet. Answers where marks can be tapped. `placed`: labels that stand
 * already on another part; those of this part are added. `boxes`: where words come to stand is added to it.
 */
export const paintNotes = (context: CanvasRenderingContext2D, input: NotesInput, picture: Picture, placed: Set<string> = new Set(), boxes: BoxPx[] = []): Spot[] => {
  const { band } = picture
  const furniture = furnitureBoxes(picture)
  const nail = nailBox(picture)
  const ranks = rankPlaces(input.ranks, picture)
  const words = [
    ...input.zones.flatMap((zone) => wordOfZone(zone, picture, context)),
    ...markWords(input.marks, picture),
    ...input.items.flatMap((drawn) => wordsOfItem(drawn, picture, context)),
    ...input.features.flatMap((drawn) => wordsOfItem(drawn, picture, context)),
    ...supportWords(input.items, picture, context),
    ...nailWords(picture, nail, context),
  ].filter(({ request }) => !placed.has(request.id))
  const byId = new Map(words.map((word) => [word.request.id, word]))
  const places = placeLabels(words.map(({ request }) => request), [...furniture, ...(nail === null ? [] : [nail]), ...ranks.map(({ at }) => ({ x0: at.xPx - RANK_ROOM_PX / 2, y0: at.yPx - RANK_ROOM_PX / 2, x1: at.xPx + RANK_ROOM_PX / 2, y1: at.yPx + RANK_ROOM_PX / 2 })), ...input.items.flatMap((drawn) => itemBoxes(drawn, picture)), ...pipeBoxes(picture)], band, wordBounds(picture))
  const spots: Spot[] = []
  const list: Primitive[] = []
  for (const { id, xPx, yPx, stem } of places) {
    const word = byId.get(id)!
    placed.add(id)
    if (word.mark !== undefined) {
      const middle = { xPx: xPx + (MARK_PX + 2) / 2, yPx: yPx + (MARK_PX + 2) / 2 }
      const at = toPx(picture, word.mark.xM, word.mark.yM)
      list.push({ t: 'path', points: [at.xPx, at.yPx, middle.xPx, middle.yPx], stroke: 'lot', weight: 'pipe' }, { t: 'path', points: [at.xPx, at.yPx, middle.xPx, middle.yPx], stroke: 'ink', weight: 'context' }, { t: 'circle', xM: at.xPx, yM: at.yPx, radiusM: 3.2, fill: 'ink' })
      list.push({ t: 'mark', xM: middle.xPx, yM: middle.yPx, parts: levelShape(word.mark.level, MARK_PX, String(word.mark.number)) })
      spots.push({ ...middle, radiusPx: MARK_PX / 2 + 3, effect: { do: 'openFinding', key: word.mark.key } })
      continue
    }
    boxes.push({ x0: xPx, y0: yPx, x1: xPx + word.request.widthPx, y1: yPx + word.request.heightPx })
    if (stem !== null) list.push({ t: 'path', points: [stem.x0, stem.y0, stem.x1, stem.y1], stroke: 'ink2', weight: 'context' })
    if (word.zoneKey !== undefined) spots.push(...spotsAlong(word.request, xPx, yPx, { do: 'openZone', key: word.zoneKey }))
    const sizePx = picture.isTouch ? touchSizePx(word.sizePx) : word.sizePx
    list.push({ t: 'text', xM: xPx, yM: yPx + sizePx * ASCENT_RATIO, text: word.text, sizePx: word.sizePx, ink: word.ink, bold: word.bold, lotEdge: true })
  }
  // The worst last, so that nothing lies over it.
  for (const { rank, from, at } of ranks.toReversed()) {
    list.push({ t: 'path', points: [from.xPx, from.yPx, at.xPx, at.yPx], stroke: 'lot', weight: 'pipe' }, { t: 'path', points: [from.xPx, from.yPx, at.xPx, at.yPx], stroke: 'ink', weight: 'context' })
    list.push({ t: 'mark', xM: at.xPx, yM: at.yPx, parts: rankShape(rank.rank, rank.level, RANK_PX, rank.isOld) })
    spots.push({ ...at, radiusPx: RANK_PX / 2 + 3, effect: { do: 'select', ids: [rank.itemId] } })
  }
  paintShapes(context, list, picture, identity)
  return spots
}

/** North and scale of the whole sheet. */
export const paintFurniture = (context: CanvasRenderingContext2D, picture: Picture): void => paintShapes(context, furnitureShapes(picture, context), picture, identity)

/** Right lower corner of the sheet, left by a thumb's tag on a phone. */
const northPlace = ({ band }: Picture): { xPx: number; yPx: number } => ({ xPx: band.widthPx - 40, yPx: band.heightPx - 66 })
const barLengths: readonly number[] = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000]

/** The round length whose bar is 60 to 150 px long, in the reader's unit. */
export const barScale = (pxPerM: number, isFeet: boolean): { count: number; lengthPx: number } => {
  const unitPx = pxPerM * (isFeet ? 0.3048 : 1)
  const count = barLengths.find((length) => length * unitPx >= 60) ?? barLengths.at(-1)!
  return { count, lengthPx: count * unitPx }
}

const furnitureBoxes = (picture: Picture): BoxPx[] => {
  const north = northPlace(picture)
  const { lengthPx } = barScale(picture.view.pxPerM, picture.symbol.reader?.system !== 'metric')
  const boxes: BoxPx[] = [{ x0: north.xPx - lengthPx - 40, y0: picture.band.heightPx - 34, x1: picture.band.widthPx - 8, y1: picture.band.heightPx - 6 }]
  if (picture.site.layout.northRad !== null) boxes.push({ x0: north.xPx - 26, y0: north.yPx - 34, x1: north.xPx + 26, y1: north.yPx + 26 })
  return boxes
}

/** North arrow where north is known, and a bar for the scale. Identity frame: px, y DOWN. */
const furnitureShapes = (picture: Picture, context: CanvasRenderingContext2D): Primitive[] => {
  const { band, view, site, matrix } = picture
  const list: Primitive[] = []
  const isFeet = picture.symbol.reader?.system !== 'metric'
  const { count, lengthPx } = barScale(view.pxPerM, isFeet)
  const [x1, y] = [band.widthPx - 16, band.heightPx - 14]
  const x0 = x1 - lengthPx
  list.push({ t: 'path', points: [x0, y - 6, x0, y, x1, y, x1, y - 6], stroke: 'ink', weight: 'context' }, { t: 'path', points: [(x0 + x1) / 2, y - 4, (x0 + x1) / 2, y], stroke: 'ink', weight: 'context' })
  const text = `${count} ${isFeet ? (view.language === 'es' ? 'pies' : 'ft') : 'm'}`
  list.push({ t: 'text', xM: x0 - textWidthPx(context, text, 12, false, picture.isTouch) - 6, yM: y + 1, text, sizePx: 12, ink: 'ink2', lotEdge: true })
  const { northRad } = site.layout
  if (northRad === null) return list
  const at = northPlace(picture)
  // Direction of north on screen, y DOWN, as a unit vector; the arrow is drawn in its own frame and turned by hand.
  const pxPerM = Math.hypot(matrix.a, matrix.b)
  const [nx, ny] = [(matrix.a * Math.cos(northRad) + matrix.c * Math.sin(northRad)) / pxPerM, (matrix.b * Math.cos(northRad) + matrix.d * Math.sin(northRad)) / pxPerM]
  const turned = (points: readonly number[]): number[] => {
    const out: number[] = []
    for (let i = 0; i + 1 < points.length; i += 2) out.push(at.xPx + nx * points[i]! - ny * points[i + 1]!, at.yPx + ny * points[i]! + nx * points[i + 1]!)
    return out
  }
  list.push(
    { t: 'path', points: turned([24, 0, -8, 6, -4, 0, -8, -6]), closed: true, fill: 'paper', stroke: 'ink', weight: 'ticks' },
    { t: 'path', points: turned([24, 0, -8, 6, -4, 0]), closed: true, fill: 'ink' },
  )
  const [tipX, tipY] = [at.xPx + nx * 33, at.yPx + ny * 33]
  list.push({ t: 'text', xM: tipX, yM: tipY + 4.5, text: 'N', sizePx: 13, bold: true, align: 'center', lotEdge: true })
  return list
}
