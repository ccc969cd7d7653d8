import type { Primitive } from '../../drawing/primitives.ts'
import { itemMatrix } from '../../drawing/matrix.ts'
import { kindOf, type PlacedRecord } from '../../scene/kinds/index.ts'
import { laidOver } from '../../scene/commands/fields.ts'
import { foldPx } from '../../state/frames.ts'
import { formatQuantity } from '../../units/format.ts'
import type { ToolOverlay } from '../tools/types.ts'
import { patchOf } from '../tools/types.ts'
import { chosenSpotShapes } from './chosenSpot.ts'
import { framePx, turnHandleAt } from './pickables.ts'
import { inPart, paintShapes } from './paintItems.ts'
import { rollOffShapes } from './paintRollOff.ts'
import { ghostsOf, drawnItem, isInPart, partsOf, toPx, type Picture } from './picture.ts'
import { runningDimension, snapMarkShapes, spanDimension } from './guides.ts'
import { textWidthPx } from './textWidth.ts'
import { handlesShown, matrixAt, pickablesFor } from './toolContext.ts'

const identity = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }
export const HANDLE_PX = 5.5

const flatPx = (points: readonly { xPx: number; yPx: number }[]): number[] => points.flatMap(({ xPx, yPx }) => [xPx, yPx])

/** Frames round what is chosen, the tie of a single one to its flag, and its handles. Screen px. */
export const selectionShapes = (picture: Picture, isDragging: boolean): Primitive[] => {
  const { view, site, frame } = picture
  const chosenIds = new Set(view.selection)
  if (chosenIds.size === 0) return []
  const list: Primitive[] = []
  const chosen = pickablesFor(site, view.hiddenKinds).filter(({ id }) => chosenIds.has(id))
  for (const item of chosen) {
    if (item.isFeature) {
      const points = flatPx(Array.from({ length: item.outlineM.length >> 1 }, (_, i) => toPx(picture, item.outlineM[2 * i]!, item.outlineM[2 * i + 1]!)))
      list.push({ t: 'path', points, closed: item.isClosed, stroke: 'chosen', weight: 'building' })
    } else list.push({ t: 'path', points: flatPx(framePx(item, matrixAt(view, frame, item.runningM), 6)), closed: true, stroke: 'chosen', weight: 'building' })
  }
  const [only] = chosen
  if (chosen.length !== 1 || only === undefined) return list
  if (only.runningM !== null && !only.isFeature) list.push(...tieShapes(picture, only.xM, only.yM, only.runningM))
  if (isDragging || view.holdStill) return list
  for (const handle of handlesShown(view, frame, chosen)) {
    if (handle.kind === 'rotate') {
      const at = turnHandleAt(only, matrixAt(view, frame, only.runningM))
      list.push({ t: 'path', points: [at.xPx, at.fromYPx, at.xPx, at.yPx], stroke: 'chosen', weight: 'gear' }, { t: 'circle', xM: at.xPx, yM: at.yPx, radiusM: HANDLE_PX + 1, fill: 'sheet', stroke: 'chosen', weight: 'rope' })
    } else if (handle.kind === 'vertex') {
      list.push({ t: 'rect', xM: handle.xPx - HANDLE_PX, yM: handle.yPx - HANDLE_PX, widthM: 2 * HANDLE_PX, heightM: 2 * HANDLE_PX, fill: 'sheet', stroke: 'chosen', weight: 'rope' })
    } else list.push({ t: 'circle', xM: handle.xPx, yM: handle.yPx, radiusM: HANDLE_PX - 1.5, fill: 'sheet', stroke: 'chosen', weight: 'ticks' })
  }
  return list
}

/** Thin line from the chosen item to its flag: straight to the tape's edge, or, north up, slanting to where the flag hangs. */
const tieShapes = (picture: Picture, xM: number, yM: number, runningM: number): Primitive[] => {
  const { view, band } = picture
  const { xPx, yPx } = toPx(picture, xM, yM)
  const isNorthUp = view.orientation === 'northUp' && !view.tapeVertical
  if (view.tapeVertical) return [{ t: 'path', points: [xPx + (view.leftHanded ? -14 : 14), yPx, view.leftHanded ? 0 : band.widthPx, yPx], stroke: 'chosen', weight: 'ticks', dash: 'tie' }]
  const flagXPx = isNorthUp ? (view.turned ? band.widthPx - (runningM - view.leftRunningM) * view.pxPerM : (runningM - view.leftRunningM) * view.pxPerM) : xPx
  return [{ t: 'path', points: [xPx, yPx + 14, flagXPx, band.heightPx], stroke: 'chosen', weight: 'ticks', dash: isNorthUp ? 'proposal' : 'tie' }]
}

/** What a proposal would add or move, dashed teal, with an arrow from where it stands. */
export const paintGhosts = (context: CanvasRenderingContext2D, picture: Picture): void => {
  for (const { item, from } of ghostsOf(picture)) {
    if (!isInPart(item, picture)) continue
    const drawn = drawnItem(item, picture)
    if (from !== null && drawn.isFeature === false && Math.hypot(from.xM - item.xM, from.yM - item.yM) * picture.view.pxPerM > 14) paintShapes(context, arrowShapes(toPx(picture, from.xM, from.yM), toPx(picture, item.xM, item.yM)), picture, identity)
    paintShapes(context, drawn.shapes, picture, drawn.matrix, 'proposal')
  }
}

const arrowShapes = (from: { xPx: number; yPx: number }, to: { xPx: number; yPx: number }): Primitive[] => {
  const far = Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx)
  const [ux, uy] = [(to.xPx - from.xPx) / far, (to.yPx - from.yPx) / far]
  const [tipX, tipY] = [to.xPx - ux * 8, to.yPx - uy * 8]
  return [
    { t: 'path', points: [from.xPx + ux * 6, from.yPx + uy * 6, tipX, tipY], stroke: 'chosen', weight: 'boundary', dash: 'proposal' },
    { t: 'path', points: [tipX - ux * 8 - uy * 4, tipY - uy * 8 + ux * 4, tipX, tipY, tipX - ux * 8 + uy * 4, tipY - uy * 8 - ux * 4], stroke: 'chosen', weight: 'boundary' },
  ]
}

let ghostRecord: { tool: unknown; kind: string; record: PlacedRecord } | null = null

/** Record a place tool would put down, for its ghost; kept while the tool stays in hand. */
const recordOfTool = (picture: Picture, kind: string): PlacedRecord | null => {
  const { tool } = picture.view
  if (ghostRecord !== null && ghostRecord.tool === tool && ghostRecord.kind === kind) return ghostRecord.record
  const definition = kindOf(kind)
  if (definition === undefined) return null
  const plain = definition.create(`${definition.idPrefix}:ghost`, { place: { at: 'free', xM: 0, yM: 0, headingRad: 0 }, setUpId: '', runId: '' })
  const { patch } = patchOf(tool)
  const record = (patch === undefined ? plain : laidOver(plain, patch)) as PlacedRecord
  ghostRecord = { tool, kind, record }
  return record
}

const paintToolGhosts = (context: CanvasRenderingContext2D, overlay: ToolOverlay, picture: Picture): void => {
  for (const { kind, xM, yM, headingRad } of overlay.ghosts) {
    const record = recordOfTool(picture, kind)
    const list = record === null ? [] : (kindOf(kind)?.planSymbol(record, picture.symbol) ?? [])
    paintShapes(context, list.filter(({ t }) => t !== 'text'), picture, itemMatrix(picture.matrix, xM, yM, headingRad), 'proposal')
  }
}

const sketchShapes = (overlay: ToolOverlay, picture: Picture): Primitive[] => {
  const { sketch, box } = overlay
  const list: Primitive[] = []
  const px = (xM: number, yM: number): { xPx: number; yPx: number } => toPx(picture, xM, yM)
  if (sketch !== null) {
    const points = sketch.points.map(({ xM, yM }) => px(xM, yM))
    list.push({ t: 'path', points: flatPx(points), closed: sketch.isClosed && points.length > 2, stroke: 'chosen', weight: 'boundary', dash: 'proposal' })
    for (const { xPx, yPx } of points.slice(0, -1)) list.push({ t: 'rect', xM: xPx - 4, yM: yPx - 4, widthM: 8, heightM: 8, fill: 'sheet', stroke: 'chosen', weight: 'gear' })
    const [a, b] = sketch.points
    if (sketch.halfWidthM > 0 && a !== undefined && b !== undefined) {
      const far = Math.hypot(b.xM - a.xM, b.yM - a.yM) || 1
      const [ox, oy] = [((b.yM - a.yM) / far) * sketch.halfWidthM, (-(b.xM - a.xM) / far) * sketch.halfWidthM]
      list.push({ t: 'path', points: flatPx([px(a.xM + ox, a.yM + oy), px(b.xM + ox, b.yM + oy), px(b.xM - ox, b.yM - oy), px(a.xM - ox, a.yM - oy)]), closed: true, stroke: 'chosen', weight: 'boundary', dash: 'proposal' })
    }
  }
  if (box !== null) {
    const [a, b] = [px(box.fromXM, box.fromYM), px(box.toXM, box.toYM)]
    list.push({ t: 'rect', xM: Math.min(a.xPx, b.xPx), yM: Math.min(a.yPx, b.yPx), widthM: Math.abs(a.xPx - b.xPx), heightM: Math.abs(a.yPx - b.yPx), fill: 'chosen', fillOpacity: 0.1, stroke: 'chosen', weight: 'boundary', dash: 'proposal' })
  }
  return list
}

const measureShapes = (picture: Picture): Primitive[] => {
  const { measure } = picture.view
  if (measure === null) return []
  const lengthM = Math.hypot(measure.toXM - measure.fromXM, measure.toYM - measure.fromYM)
  const [a, b] = [toPx(picture, measure.fromXM, measure.fromYM), toPx(picture, measure.toXM, measure.toYM)]
  return spanDimension(a, b, formatQuantity({ kind: 'length', value: lengthM }, { ...readerOf(picture), both: true }), foldPx(picture.view))
}

const readerOf = ({ symbol }: Picture): { system: 'feetInches' | 'metric'; language: 'en' | 'es' } => symbol.reader ?? { system: 'feetInches', language: 'en' }

/** Large figures beside a mouse, with what is typed and how it is read. */
const echoShapes = (context: CanvasRenderingContext2D, overlay: ToolOverlay, picture: Picture): Primitive[] => {
  const { pointer, figures, echo } = overlay
  if (pointer === null || (pointer.isTouch && echo === null)) return []
  const lines: { text: string; sizePx: number; bold: boolean; ink: 'ink' | 'ink2' | 'chosen' }[] = []
  if (figures !== null && !pointer.isTouch) lines.push({ text: figures, sizePx: 16, bold: true, ink: 'ink' })
  if (echo !== null) {
    const read = echo.read === null ? (picture.view.language === 'es' ? 'aún no se lee' : 'not read yet') : `${picture.view.language === 'es' ? 'leído como' : 'read as'} ${echo.read}`
    lines.push({ text: `${echo.typed}▏`, sizePx: 16, bold: true, ink: 'chosen' }, { text: read, sizePx: 12.5, bold: false, ink: 'ink2' })
  }
  if (lines.length === 0) return []
  const widthPx = Math.max(...lines.map(({ text, sizePx, bold }) => textWidthPx(context, text, sizePx, bold, picture.isTouch))) + 16
  const heights = lines.map(({ sizePx }) => (picture.isTouch ? sizePx + 2.5 : sizePx) * 1.25)
  const heightPx = heights.reduce((sum, h) => sum + h, 0) + 8
  const x = Math.min(Math.max(4, pointer.xPx + 18), picture.band.widthPx - widthPx - 4)
  // Above the pointer: tags hang below the line, and a hand lies below the pointer.
  const y = pointer.yPx - heightPx - 22 >= 4 ? pointer.yPx - heightPx - 22 : Math.min(pointer.yPx + 20, picture.band.heightPx - heightPx - 4)
  const list: Primitive[] = [{ t: 'rect', xM: x, yM: y, widthM: widthPx, heightM: heightPx, radiusM: 3, fill: 'sheet', stroke: 'ink', weight: 'context' }]
  let at = y + 4
  lines.forEach(({ text, sizePx, bold, ink }, i) => {
    at += heights[i]!
    list.push({ t: 'text', xM: x + 8, yM: at - sizePx * 0.3, text, sizePx, bold, ink })
  })
  return list
}

/** Everything that moves while a gesture runs, over all the rest; the loupe is drawn after it. */
export const paintOverlay = (context: CanvasRenderingContext2D, overlay: ToolOverlay, picture: Picture, isDragging: boolean): void => {
  for (const part of partsOf(picture)) {
    inPart(context, part, () => {
      paintGhosts(context, part)
      paintToolGhosts(context, overlay, part)
    })
  }
  const dimension = runningDimension(overlay, picture)
  paintShapes(context, [
    ...snapMarkShapes(overlay.marks, picture), ...chosenSpotShapes(picture, isDragging), ...selectionShapes(picture, isDragging), ...dimension, ...measureShapes(picture), ...rollOffShapes(picture), ...sketchShapes(overlay, picture),
  ], picture, identity)
  paintShapes(context, echoShapes(context, overlay, picture), picture, identity)
}
