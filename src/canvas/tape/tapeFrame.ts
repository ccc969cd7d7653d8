import type { Matrix } from '../../drawing/matrix.ts'
import { alongToPx, drawnAlongM, foldLossM, foldOf, partPx, pxToAlong, tapeDirection, tapeLengthPx, type FrameView } from '../../state/frames.ts'
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
  /**
   * Running distance, px across (0 at the outer edge, thickness at the edge the flags stand on) → px of the band.
   * With a fold: of the part before it; give it `drawnM(runningM)` for what may stand beyond.
   */
  matrix: Matrix
  drawnM: (runningM: number) => number
  /** The tape in one piece, or what is seen of it on either side of the fold: stretch, matrix, and where on the band. */
  parts: readonly { fromM: number; toM: number; matrix: Matrix; x0: number; x1: number }[]
}

/** Matrix of a drawing along the tape moved to the part beyond the fold. */
export const beyondFold = (matrix: Matrix, frame: FrameView): Matrix => ({ ...matrix, e: matrix.e - matrix.a * foldLossM(frame) })

/** What is seen of the run on either side of the fold, within a stretch; in one piece without a fold. */
export const foldedParts = (frame: FrameView, matrix: Matrix, fromM: number, toM: number, lengthPx: number): TapeFrame['parts'] => {
  const fold = foldOf(frame)
  if (fold === null) return [{ fromM, toM, matrix, x0: 0, x1: lengthPx }]
  return [
    { fromM, toM: Math.min(toM, fold.fromM), matrix, ...partPx(frame, 'before') },
    { fromM: Math.max(fromM, fold.toM), toM, matrix: beyondFold(matrix, frame), ...partPx(frame, 'after') },
  ].filter((part) => part.toM > part.fromM && part.x1 > part.x0)
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
  const [fromM, toM] = [Math.min(one, other), Math.max(one, other)]
  return { frame, isUpright, isMirrored, alongSign, lengthPx, thicknessPx, fromM, toM, matrix, drawnM: (runningM) => drawnAlongM(frame, runningM), parts: foldedParts(frame, matrix, fromM, toM, lengthPx) }
}
