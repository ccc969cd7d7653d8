import type { SetUpRecord } from '../scene/records/frame.ts'
import type { ViewState } from './viewStore.ts'

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

export type FrameView = Pick<ViewState, 'pxPerM' | 'leftRunningM' | 'midOffsetM' | 'orientation' | 'turned' | 'bandSizePx' | 'tapeVertical'>

export const tapeDirection = (view: Pick<ViewState, 'turned' | 'tapeVertical'>): TapeDirection =>
  view.tapeVertical ? (view.turned ? 'down' : 'up') : view.turned ? 'left' : 'right'

/** Length of the tape on screen: width of the band, or its height when the tape stands upright (phone). */
export const tapeLengthPx = (view: FrameView): number => (view.tapeVertical ? view.bandSizePx.plan.heightPx : view.bandSizePx.plan.widthPx)

/** Distance along the tape's own axis on screen: from the left edge, or from the top of an upright tape. */
export const alongToPx = (view: FrameView, alongM: number): number => {
  const fromStartPx = (alongM - view.leftRunningM) * view.pxPerM
  const direction = tapeDirection(view)
  return direction === 'right' || direction === 'down' ? fromStartPx : tapeLengthPx(view) - fromStartPx
}

export const pxToAlong = (view: FrameView, px: number): number => {
  const direction = tapeDirection(view)
  const fromStartPx = direction === 'right' || direction === 'down' ? px : tapeLengthPx(view) - px
  return view.leftRunningM + fromStartPx / view.pxPerM
}

/** Site metres → px of the plan band: xPx = a·x + c·y + e, yPx = b·x + d·y + f. Used as a canvas transform. */
export const planMatrix = (view: FrameView, setUp: Pick<SetUpRecord, 'datum' | 'headingRad'> | null): Matrix => {
  const { widthPx, heightPx } = view.bandSizePx.plan
  const s = view.pxPerM
  const datum = setUp?.datum ?? { xM: 0, yM: 0 }
  const headingRad = setUp?.headingRad ?? 0
  const middleAlongM = view.leftRunningM + tapeLengthPx(view) / 2 / s
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
  return { pxPerM, leftRunningM: alongM - fromStartPx / pxPerM, midOffsetM: acrossM - (sign * acrossPx) / pxPerM }
}

/** View moved by a drag of the sheet, in px. */
export const panned = (view: FrameView, dxPx: number, dyPx: number): Pick<ViewState, 'leftRunningM' | 'midOffsetM'> => {
  const direction = tapeDirection(view)
  const [alongPx, acrossPx] = view.tapeVertical ? [dyPx, dxPx] : [dxPx, dyPx]
  const alongSign = direction === 'right' || direction === 'down' ? -1 : 1
  const acrossSign = direction === 'right' || direction === 'up' ? -1 : 1
  return { leftRunningM: view.leftRunningM + (alongSign * alongPx) / view.pxPerM, midOffsetM: view.midOffsetM + (acrossSign * acrossPx) / view.pxPerM }
}
