import type { Matrix } from '../../drawing/matrix.ts'
import { alongToPx, pxToAlong, tapeDirection, tapeLengthPx, type FrameView } from '../../state/frames.ts'
import type { ViewState } from '../../state/viewStore.ts'

/** Where the tape lies inside its band, and the band's own frame of the shared view. */
export interface TapeFrame {
  frame: FrameView
  isUpright: boolean
  /** Upright at the left edge, for the left hand. */
  isMirrored: boolean
  /** +1 where running distances grow with px along the tape. */
  alongSign: 1 | -1
  lengthPx: number
  thicknessPx: number
  fromM: number
  toM: number
  /** Running distance, px across (0 at the outer edge, thickness at the edge the flags stand on) → px of the band. */
  matrix: Matrix
}

export const tapeFrame = (view: ViewState, widthPx: number, heightPx: number, touch: boolean): TapeFrame => {
  const isUpright = view.tapeVertical
  const { plan, section } = view.bandSizePx
  const frame: FrameView = { ...view, bandSizePx: { plan: isUpright ? { ...plan, heightPx } : { ...plan, widthPx }, section } }
  const direction = tapeDirection(frame)
  const alongSign = direction === 'right' || direction === 'down' ? 1 : -1
  const thicknessPx = isUpright ? Math.min(widthPx, 58) : Math.min(heightPx, touch ? 40 : 29)
  const lengthPx = tapeLengthPx(frame)
  const [one, other] = [pxToAlong(frame, 0), pxToAlong(frame, lengthPx)]
  const zeroPx = alongToPx(frame, 0)
  const step = alongSign * frame.pxPerM
  const isMirrored = isUpright && view.leftHanded
  const matrix: Matrix = isUpright
    ? { a: 0, b: step, c: isMirrored ? 1 : -1, d: 0, e: isMirrored ? 0 : widthPx, f: zeroPx }
    : { a: step, b: 0, c: 0, d: -1, e: zeroPx, f: heightPx }
  return { frame, isUpright, isMirrored, alongSign, lengthPx, thicknessPx, fromM: Math.min(one, other), toM: Math.max(one, other), matrix }
}
