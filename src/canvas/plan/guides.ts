import type { Primitive } from '../../drawing/primitives.ts'
import { foldPx } from '../../state/frames.ts'
import { guessedWidthPx } from '../../drawing/fractionText.ts'
import { formatQuantity, formatRunning } from '../../units/format.ts'
import type { SnapMark, ToolOverlay } from '../tools/types.ts'
import { toPx, type Picture } from './picture.ts'

type Point = { xPx: number; yPx: number }

const FIGURES_PX = 13.5

/** Middle of the figures between two points: of the line, or, where the fold would cover them, of its longer side. */
const figuresAt = (a: Point, b: Point, text: string, fold: { x0: number; x1: number } | null): Point => {
  const middle = { xPx: (a.xPx + b.xPx) / 2, yPx: (a.yPx + b.yPx) / 2 }
  const halfPx = guessedWidthPx(text, FIGURES_PX) / 2 + 8
  if (fold === null || middle.xPx + halfPx < fold.x0 || middle.xPx - halfPx > fold.x1) return middle
  const [left, right] = a.xPx < b.xPx ? [a, b] : [b, a]
  const xPx = fold.x0 - left.xPx > right.xPx - fold.x1 ? Math.min(fold.x0 - halfPx, (left.xPx + fold.x0) / 2) : Math.max(fold.x1 + halfPx, (right.xPx + fold.x1) / 2)
  return { xPx, yPx: middle.yPx }
}

/** Distance between two screen points: line, ticks across its ends, figures over its middle, clear of a fold. Screen px. */
export const spanDimension = (a: Point, b: Point, text: string, fold: { x0: number; x1: number } | null = null): Primitive[] => {
  const far = Math.hypot(b.xPx - a.xPx, b.yPx - a.yPx)
  if (far < 1) return []
  const [nx, ny] = [(-(b.yPx - a.yPx) / far) * 5, ((b.xPx - a.xPx) / far) * 5]
  const line = [a.xPx, a.yPx, b.xPx, b.yPx]
  const at = figuresAt(a, b, text, fold)
  return [
    { t: 'path', points: line, stroke: 'lot', weight: 'pipe' },
    { t: 'path', points: line, stroke: 'ink', weight: 'context' },
    { t: 'path', points: [a.xPx - nx, a.yPx - ny, a.xPx + nx, a.yPx + ny], stroke: 'ink', weight: 'gear' },
    { t: 'path', points: [b.xPx - nx, b.yPx - ny, b.xPx + nx, b.yPx + ny], stroke: 'ink', weight: 'gear' },
    { t: 'text', xM: at.xPx, yM: at.yPx, text, sizePx: FIGURES_PX, bold: true, align: 'center', dyPx: 6, lotEdge: true },
  ]
}

/** How far beside the axis the running dimension stands, px. */
const besidePx = 34

const readerOf = ({ symbol }: Picture): { system: 'feetInches' | 'metric'; language: 'en' | 'es' } => symbol.reader ?? { system: 'feetInches', language: 'en' }

/** Running distances of the nearest supports before and after, another than the one moved. */
const neighboursOf = ({ site }: Picture, runningM: number, without: ReadonlySet<string>): { beforeM: number | null; afterM: number | null } => {
  let [beforeM, afterM]: [number | null, number | null] = [null, null]
  for (const support of site.supports) {
    if (without.has(support.itemId) || Math.abs(support.runningM - runningM) < 0.02) continue
    if (support.runningM < runningM) beforeM = beforeM === null ? support.runningM : Math.max(beforeM, support.runningM)
    else afterM = afterM === null ? support.runningM : Math.min(afterM, support.runningM)
  }
  return { beforeM, afterM }
}

/** Live running dimension from the datum to what is dragged or placed, and the free distances to its neighbours. */
export const runningDimension = (overlay: ToolOverlay, picture: Picture): Primitive[] => {
  const { site } = picture
  const fold = foldPx(picture.view)
  // A machine carries the datum along: it is always at 0 of its own tape.
  if (overlay.dimensionId !== null && overlay.dimensionId === site.jaws.machineId) return []
  const item = overlay.dimensionId === null ? undefined : site.placed.get(overlay.dimensionId)
  const at = item !== undefined && item.runningM !== null && item.offsetM !== null ? { runningM: item.runningM, offsetM: item.offsetM } : overlay.dimensionAt
  if (at === null || site.run === null) return []
  const besideM = besidePx / picture.view.pxPerM
  const px = (runningM: number, offsetM: number): Point => {
    const { xM, yM } = site.atRunning(runningM, offsetM)
    return toPx(picture, xM, yM)
  }
  const isStraight = site.bends.every(({ fromM }) => at.runningM <= fromM)
  const side = at.offsetM - besideM
  const list: Primitive[] = []
  if (isStraight) {
    const from = shownEnd(px(0, side), px(at.runningM, side), picture)
    list.push(...spanDimension(from, px(at.runningM, side), formatRunning(at.runningM, readerOf(picture)), fold))
  }
  const [place, foot] = [px(at.runningM, at.offsetM), px(at.runningM, side)]
  list.push({ t: 'path', points: [place.xPx, place.yPx, foot.xPx, foot.yPx], stroke: 'ink', weight: 'context', dash: 'tie' })
  const moved = new Set(overlay.draggedIds)
  const { beforeM, afterM } = Math.abs(at.offsetM) < 1 ? neighboursOf(picture, at.runningM, moved) : { beforeM: null, afterM: null }
  const under = at.offsetM + besideM * 0.8
  for (const otherM of [beforeM, afterM]) {
    if (otherM === null || !isStraight) continue
    const [a, b] = [px(otherM, under), px(at.runningM, under)]
    if (Math.hypot(a.xPx - b.xPx, a.yPx - b.yPx) < 44) continue
    list.push(...spanDimension(a, b, formatQuantity({ kind: 'length', value: Math.abs(at.runningM - otherM) }, { ...readerOf(picture), style: 'tape' }), fold))
  }
  return list
}

/** The far end of a dimension brought to within the sheet, so that its figures stay in view. */
const shownEnd = (far: Point, near: Point, { band }: Picture): Point => {
  const [dx, dy] = [far.xPx - near.xPx, far.yPx - near.yPx]
  let share = 1
  if (far.xPx < 0 && dx !== 0) share = Math.min(share, (0 - near.xPx) / dx)
  if (far.xPx > band.widthPx && dx !== 0) share = Math.min(share, (band.widthPx - near.xPx) / dx)
  if (far.yPx < 0 && dy !== 0) share = Math.min(share, (0 - near.yPx) / dy)
  if (far.yPx > band.heightPx && dy !== 0) share = Math.min(share, (band.heightPx - near.yPx) / dy)
  return share < 1 && share > 0 ? { xPx: near.xPx + dx * share, yPx: near.yPx + dy * share } : far
}

/** What the pointer snapped to, in the colour of what is chosen. Screen px. */
export const snapMarkShapes = (marks: readonly SnapMark[], picture: Picture): Primitive[] => {
  const { site, view } = picture
  const px = (xM: number, yM: number): Point => toPx(picture, xM, yM)
  const onRun = (runningM: number, offsetM: number): Point => {
    const { xM, yM } = site.atRunning(runningM, offsetM)
    return px(xM, yM)
  }
  const across = (runningM: number, halfPx: number): Primitive => {
    const [a, b] = [onRun(runningM, -halfPx / view.pxPerM), onRun(runningM, halfPx / view.pxPerM)]
    return { t: 'path', points: [a.xPx, a.yPx, b.xPx, b.yPx], stroke: 'chosen', weight: 'gear' }
  }
  return marks.flatMap((mark): Primitive[] => {
    switch (mark.kind) {
      case 'axis': return []
      case 'round': return [across(mark.runningM, 9)]
      case 'equal': {
        const [a, b, c] = mark.betweenM.map((at) => onRun(at, 14 / view.pxPerM)) as [Point, Point, Point]
        return [{ t: 'path', points: [a.xPx, a.yPx, b.xPx, b.yPx, c.xPx, c.yPx], stroke: 'chosen', weight: 'gear' }, ...mark.betweenM.map((at) => across(at, 18)), equalSign(a, b), equalSign(b, c)]
      }
      case 'across': case 'along': {
        const at = px(mark.xM, mark.yM)
        return [{ t: 'circle', xM: at.xPx, yM: at.yPx, radiusM: 9, stroke: 'chosen', weight: 'boundary', dash: 'proposal' }]
      }
      case 'corner': case 'square': {
        const at = px(mark.xM, mark.yM)
        const half = mark.kind === 'corner' ? 7 : 5
        return [{ t: 'rect', xM: at.xPx - half, yM: at.yPx - half, widthM: 2 * half, heightM: 2 * half, stroke: 'chosen', weight: 'gear' }]
      }
    }
  })
}

const equalSign = (a: Point, b: Point): Primitive => ({ t: 'text', xM: (a.xPx + b.xPx) / 2, yM: (a.yPx + b.yPx) / 2, text: '=', sizePx: 14, bold: true, ink: 'chosen', align: 'center', dyPx: -5, lotEdge: true })

/** The line the axis snap and neighbour snaps run along, drawn under the item. */
export const snapLineShapes = (overlay: ToolOverlay, picture: Picture): Primitive[] => {
  const { site, view } = picture
  const at = overlay.dimensionId === null ? overlay.dimensionAt : site.placed.get(overlay.dimensionId)
  if (at === null || at === undefined || at.runningM === null || at.offsetM === null || site.run === null) return []
  const { runningM, offsetM } = at
  const px = (alongM: number, acrossM: number): Point => {
    const { xM, yM } = site.atRunning(alongM, acrossM)
    return toPx(picture, xM, yM)
  }
  const list: Primitive[] = []
  for (const mark of overlay.marks) {
    if (mark.kind === 'axis') {
      const [a, b] = [px(runningM - 90 / view.pxPerM, 0), px(runningM + 90 / view.pxPerM, 0)]
      list.push({ t: 'path', points: [a.xPx, a.yPx, b.xPx, b.yPx], stroke: 'chosen', weight: 'gear' })
    }
    if (mark.kind === 'across' || mark.kind === 'along') {
      const [a, b] = [px(runningM, offsetM), toPx(picture, mark.xM, mark.yM)]
      list.push({ t: 'path', points: [a.xPx, a.yPx, b.xPx, b.yPx], stroke: 'chosen', weight: 'gear', dash: 'proposal' })
    }
  }
  return list
}
