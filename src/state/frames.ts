import type { SetUpRecord } from '../scene/records/frame.ts'
import type { Fold, ViewState } from './viewStore.ts'

/**
 * The one map between the site and the screen. Names: *along* = metres along the axis from the datum (exit +),
 * *across* = metres to the right of the axis looking down-string; *px* = pixels in the plan band, x right, y DOWN.
 * Plan, tape and section share the map of `along`, so a stand, its flag and its saddle stand in one line.
 */
export type TapeDirection = 'right' | 'left' | 'up' | 'down'

export interface Matrix {
  a: number
  b: number
  c: number
  d: number
  e: number
  f: number
}

export type FrameView = Pick<ViewState, 'pxPerM' | 'leftRunningM' | 'midOffsetM' | 'orientation' | 'turned' | 'bandSizePx' | 'tapeVertical'> & Partial<Pick<ViewState, 'fold'>>

/** Width of the fold on screen, whatever it hides, px. */
export const FOLD_PX = 30

/** Parts of the sheet in order along the run; without a fold all of it is `before`. */
export type PlanPart = 'before' | 'after'

/** The fold, where it counts: north up and on an upright tape the whole run is drawn. */
export const foldOf = (view: FrameView): Fold | null => (view.orientation === 'alongTape' && !view.tapeVertical ? (view.fold ?? null) : null)

/** How much further left than true everything beyond the fold is drawn, m; 0 without a fold. */
export const foldLossM = (view: FrameView): number => {
  const fold = foldOf(view)
  return fold === null ? 0 : fold.toM - fold.fromM - FOLD_PX / view.pxPerM
}

/** Running distance → the distance it is drawn at, on a tape that runs on from the part before the fold. Strictly rising. */
export const drawnAlongM = (view: FrameView, alongM: number): number => {
  const fold = foldOf(view)
  if (fold === null || alongM <= fold.fromM) return alongM
  if (alongM >= fold.toM) return alongM - foldLossM(view)
  return fold.fromM + ((alongM - fold.fromM) / (fold.toM - fold.fromM)) * (FOLD_PX / view.pxPerM)
}

/** Inverse of `drawnAlongM`. */
const alongDrawnAtM = (view: FrameView, drawnM: number): number => {
  const fold = foldOf(view)
  if (fold === null || drawnM <= fold.fromM) return drawnM
  const insideM = FOLD_PX / view.pxPerM
  if (drawnM >= fold.fromM + insideM) return drawnM + foldLossM(view)
  return fold.fromM + ((drawnM - fold.fromM) / insideM) * (fold.toM - fold.fromM)
}

/** Where a running distance lies: in a part of the sheet, or folded away. */
export const partOfAlong = (view: FrameView, alongM: number): PlanPart | 'folded' => {
  const fold = foldOf(view)
  return fold === null || alongM <= fold.fromM ? 'before' : alongM >= fold.toM ? 'after' : 'folded'
}

export const tapeDirection = (view: Pick<ViewState, 'turned' | 'tapeVertical'>): TapeDirection =>
  view.tapeVertical ? (view.turned ? 'down' : 'up') : view.turned ? 'left' : 'right'

/** Length of the tape on screen: width of the band, or its height when the tape stands upright (phone). */
export const tapeLengthPx = (view: FrameView): number => (view.tapeVertical ? view.bandSizePx.plan.heightPx : view.bandSizePx.plan.widthPx)

/** Distance along the tape's own axis on screen: from the left edge, or from the top of an upright tape. */
export const alongToPx = (view: FrameView, alongM: number): number => {
  const fromStartPx = (drawnAlongM(view, alongM) - view.leftRunningM) * view.pxPerM
  const direction = tapeDirection(view)
  return direction === 'right' || direction === 'down' ? fromStartPx : tapeLengthPx(view) - fromStartPx
}

export const pxToAlong = (view: FrameView, px: number): number => {
  const direction = tapeDirection(view)
  const fromStartPx = direction === 'right' || direction === 'down' ? px : tapeLengthPx(view) - px
  return alongDrawnAtM(view, view.leftRunningM + fromStartPx / view.pxPerM)
}

type SetUpFrame = Pick<SetUpRecord, 'datum' | 'headingRad'> | null

/** Left and right edge of the fold on screen, px of the band; null without one. It may lie off the band. */
export const foldPx = (view: FrameView): { x0: number; x1: number } | null => {
  const fold = foldOf(view)
  if (fold === null) return null
  const [a, b] = [alongToPx(view, fold.fromM), alongToPx(view, fold.toM)]
  return { x0: Math.min(a, b), x1: Math.max(a, b) }
}

/** Left and right edge of a part of the sheet, px of the band: up to the fold. Empty (x1 ≤ x0) where the fold has left no room for it. */
export const partPx = (view: FrameView, part: PlanPart): { x0: number; x1: number } => {
  const { widthPx } = view.bandSizePx.plan
  const fold = foldPx(view)
  if (fold === null) return part === 'before' ? { x0: 0, x1: widthPx } : { x0: 0, x1: 0 }
  const isLeft = (part === 'before') !== view.turned
  return isLeft ? { x0: 0, x1: Math.min(widthPx, fold.x0) } : { x0: Math.max(0, fold.x1), x1: widthPx }
}

/** The part a place of the band belongs to; on the fold, the nearer one. */
export const planPart = (view: FrameView, xPx: number): PlanPart => {
  const fold = foldPx(view)
  return fold === null || (xPx < (fold.x0 + fold.x1) / 2) !== view.turned ? 'before' : 'after'
}

/**
 * Site metres → px of the plan band: xPx = a·x + c·y + e, yPx = b·x + d·y + f. Used as a canvas transform.
 * With a fold there are two: each part of the sheet has its own, and is drawn inside `partPx` only.
 */
export const planMatrix = (view: FrameView, setUp: SetUpFrame, part: PlanPart = 'before'): Matrix => {
  const { widthPx, heightPx } = view.bandSizePx.plan
  const s = view.pxPerM
  const datum = setUp?.datum ?? { xM: 0, yM: 0 }
  const headingRad = setUp?.headingRad ?? 0
  const middleAlongM = view.leftRunningM + (part === 'after' ? foldLossM(view) : 0) + tapeLengthPx(view) / 2 / s
  // Angle on screen (counter-clockwise, as read with y up) that the axis is drawn at.
  const axisOnScreenRad = { right: 0, left: Math.PI, up: Math.PI / 2, down: -Math.PI / 2 }[tapeDirection(view)]
  const turnRad = view.orientation === 'northUp' && !view.tapeVertical ? 0 : axisOnScreenRad - headingRad
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)]
  // The site point at the middle of the band: middleAlong along the axis, midOffset to its right.
  const centreX = datum.xM + middleAlongM * Math.cos(headingRad) + view.midOffsetM * Math.sin(headingRad)
  const centreY = datum.yM + middleAlongM * Math.sin(headingRad) - view.midOffsetM * Math.cos(headingRad)
  const [a, b, c, d] = [s * cos, -s * sin, -s * sin, -s * cos]
  return { a, b, c, d, e: widthPx / 2 - a * centreX - c * centreY, f: heightPx / 2 - b * centreX - d * centreY }
}

export const applyMatrix = (m: Matrix, xM: number, yM: number): { xPx: number; yPx: number } => ({ xPx: m.a * xM + m.c * yM + m.e, yPx: m.b * xM + m.d * yM + m.f })

export const invertMatrix = (m: Matrix, xPx: number, yPx: number): { xM: number; yM: number } => {
  const det = m.a * m.d - m.b * m.c
  const [x, y] = [xPx - m.e, yPx - m.f]
  return { xM: (m.d * x - m.c * y) / det, yM: (m.a * y - m.b * x) / det }
}

/** Running distance of a site point on the axis of the set-up, m. */
const alongAxisM = (setUp: SetUpFrame, xM: number, yM: number): number =>
  setUp === null ? xM : (xM - setUp.datum.xM) * Math.cos(setUp.headingRad) + (yM - setUp.datum.yM) * Math.sin(setUp.headingRad)

/** Site point → px of the plan band, in whichever part it lies, for many points of one view; what is folded away comes inside the fold. */
export const planProjection = (view: FrameView, setUp: SetUpFrame): ((xM: number, yM: number) => { xPx: number; yPx: number }) => {
  const matrix = planMatrix(view, setUp)
  if (foldOf(view) === null) return (xM, yM) => applyMatrix(matrix, xM, yM)
  return (xM, yM) => ({ xPx: alongToPx(view, alongAxisM(setUp, xM, yM)), yPx: applyMatrix(matrix, xM, yM).yPx })
}

/** The same for one point. */
export const planToPx = (view: FrameView, setUp: SetUpFrame, xM: number, yM: number): { xPx: number; yPx: number } => planProjection(view, setUp)(xM, yM)

/**
 * Px of the plan band → site point, by the part given or the one the place belongs to. On the fold and beyond a given part
 * it answers the part's edge, so nothing can be dragged into the fold.
 */
export const pxToPlan = (view: FrameView, setUp: SetUpFrame, xPx: number, yPx: number, part = planPart(view, xPx)): { xM: number; yM: number } => {
  if (foldOf(view) === null) return invertMatrix(planMatrix(view, setUp), xPx, yPx)
  const { x0, x1 } = partPx(view, part)
  return invertMatrix(planMatrix(view, setUp, part), Math.min(x1, Math.max(x0, xPx)), yPx)
}

/** Side view: levels are drawn `exaggeration` times their size, the most of 5, 4, 3, 2, 1 that fits. */
export interface SectionFrame {
  exaggeration: number
  topLevelM: number
  pxPerLevelM: number
}

export const sectionFrame = (view: FrameView, lowestM: number, highestM: number, headPx = 44, footPx = 88): SectionFrame => {
  // On an upright tape (phone) the side view has its own leaf and the tape lies level there.
  const roomPx = Math.max(60, view.bandSizePx.section.heightPx - headPx - footPx)
  const spanM = Math.max(0.5, highestM - lowestM)
  const exaggeration = [5, 4, 3, 2, 1].find((factor) => factor * view.pxPerM * spanM <= roomPx) ?? Math.min(1, roomPx / (spanM * view.pxPerM))
  const pxPerLevelM = exaggeration * view.pxPerM
  const sparePx = Math.max(0, roomPx - spanM * pxPerLevelM)
  return { exaggeration, pxPerLevelM, topLevelM: highestM + (headPx + sparePx * 0.35) / pxPerLevelM }
}

export const levelToPx = (frame: SectionFrame, levelM: number): number => (frame.topLevelM - levelM) * frame.pxPerLevelM
export const pxToLevel = (frame: SectionFrame, px: number): number => frame.topLevelM - px / frame.pxPerLevelM

/** View with the scale changed about a point of the tape axis (and, for the plan, across it), so that point stays put. */
export const zoomedAbout = (view: FrameView, factor: number, xPx: number, yPx: number, limits = { least: 0.5, most: 400 }): Pick<ViewState, 'pxPerM' | 'leftRunningM' | 'midOffsetM'> => {
  const pxPerM = Math.min(limits.most, Math.max(limits.least, view.pxPerM * factor))
  const alongPx = view.tapeVertical ? yPx : xPx
  const alongM = pxToAlong(view, alongPx)
  const direction = tapeDirection(view)
  const fromStartPx = direction === 'right' || direction === 'down' ? alongPx : tapeLengthPx(view) - alongPx
  const acrossPx = view.tapeVertical ? xPx - view.bandSizePx.plan.widthPx / 2 : yPx - view.bandSizePx.plan.heightPx / 2
  // Right of the axis: down for 'right', up for 'left', right for 'up', left for 'down'.
  const sign = direction === 'right' || direction === 'up' ? 1 : -1
  const acrossM = view.midOffsetM + (sign * acrossPx) / view.pxPerM
  return { pxPerM, leftRunningM: drawnAlongM({ ...view, pxPerM }, alongM) - fromStartPx / pxPerM, midOffsetM: acrossM - (sign * acrossPx) / pxPerM }
}

/** View moved by a drag of the sheet, in px. */
export const panned = (view: FrameView, dxPx: number, dyPx: number): Pick<ViewState, 'leftRunningM' | 'midOffsetM'> => {
  const direction = tapeDirection(view)
  const [alongPx, acrossPx] = view.tapeVertical ? [dyPx, dxPx] : [dxPx, dyPx]
  const alongSign = direction === 'right' || direction === 'down' ? -1 : 1
  const acrossSign = direction === 'right' || direction === 'up' ? -1 : 1
  return { leftRunningM: view.leftRunningM + (alongSign * alongPx) / view.pxPerM, midOffsetM: view.midOffsetM + (acrossSign * acrossPx) / view.pxPerM }
}
