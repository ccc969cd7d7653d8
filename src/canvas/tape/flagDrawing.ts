import { guessedWidthPx } from '../../drawing/fractionText.ts'
import { levelShape } from '../../drawing/levelShapes.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import type { FlagPlace } from './flagLayout.ts'
import type { TapeFlag } from './flags.ts'

/** Sizes of flags, px; larger on touch screens. */
export interface FlagLook {
  isUpright: boolean
  /** Size along the tape on an upright tape, height over the tape on a level one. */
  heightPx: number
  /** Clear space between tape and flag. */
  standPx: number
  textPx: number
  /** Width on an upright tape. */
  widthPx: number
  rowPx: number
}

export const flagLook = (isUpright: boolean, touch: boolean): FlagLook =>
  isUpright
    ? { isUpright, heightPx: 50, standPx: 6, textPx: 16, widthPx: 76, rowPx: 82 }
    : touch
      ? { isUpright, heightPx: 40, standPx: 8, textPx: 15, widthPx: 0, rowPx: 43 }
      : { isUpright, heightPx: 31, standPx: 7, textPx: 12.5, widthPx: 0, rowPx: 34 }

/** Room a flag takes along the tape. */
export const flagSizePx = (flag: Pick<TapeFlag, 'label' | 'distance' | 'level'>, look: FlagLook): number => {
  if (look.isUpright) return look.heightPx
  const first = guessedWidthPx(flag.label, look.textPx) * 1.06 + (flag.level === null ? 0 : 17)
  return Math.round(Math.max(look.textPx * 2.9, Math.max(first, guessedWidthPx(flag.distance, look.textPx)) + 12))
}

export interface DrawnFlag {
  flag: TapeFlag
  place: FlagPlace
  /** px along the tape: its pole on the tape, its size. */
  alongPx: number
  sizePx: number
  isChosen: boolean
  /** Results shown belong to an older document. */
  isStale: boolean
  /** Upright tape at the left edge (left hand): flags hang to its right. */
  isMirrored?: boolean
}

/**
 * A flag as parts in a px frame with the origin where its pole meets the tape: x along the screen's x, y UP, for a level
 * tape; for an upright one x to the left of the tape's edge is negative.
 */
export const flagParts = (drawn: DrawnFlag, look: FlagLook): Primitive[] => (look.isUpright ? uprightParts(drawn, look) : levelParts(drawn, look))

const pens = ({ isChosen, flag }: DrawnFlag): { edge: 'chosen' | 'ink'; fill: 'chosen' | 'sheet'; ink: 'chosenInk' | 'chosen' | 'ink' } =>
  flag.isProposal === true ? { edge: 'chosen', fill: 'sheet', ink: 'chosen' } : isChosen ? { edge: 'chosen', fill: 'chosen', ink: 'chosenInk' } : { edge: 'ink', fill: 'sheet', ink: 'ink' }

const levelParts = (drawn: DrawnFlag, look: FlagLook): Primitive[] => {
  const { place, alongPx, sizePx, flag } = drawn
  const { edge, fill, ink } = pens(drawn)
  const [x0, foot] = [place.startPx - alongPx, place.footPx - alongPx]
  const bottom = look.standPx + place.row * look.rowPx
  const top = bottom + look.heightPx
  // A folded flag shows the foot of its pole in front of the flags it stands behind.
  const poleTop = place.isFolded ? look.standPx - 1 : top
  const pole: Primitive = { t: 'path', points: foot === 0 ? [0, -1, 0, poleTop] : [0, -1, 0, 3, foot, bottom, foot, poleTop], stroke: edge, weight: drawn.isChosen ? 'rope' : 'boundary' }
  if (place.isFolded) return [pole, { t: 'circle', xM: 0, yM: poleTop, radiusM: 2, fill: edge }]
  const notch = place.hang === 1 ? [x0 + sizePx, top, x0 + sizePx - 4, (top + bottom) / 2, x0 + sizePx, bottom, x0, bottom, x0, top] : [x0, top, x0 + 4, (top + bottom) / 2, x0, bottom, x0 + sizePx, bottom, x0 + sizePx, top]
  const textX = place.hang === 1 ? x0 + 4.5 : x0 + 7.5
  return [
    pole,
    { t: 'path', points: notch, closed: true, fill, stroke: edge, weight: 'ticks', ...(flag.itemId === null ? { dash: 'proposal' as const } : {}) },
    { t: 'text', xM: textX, yM: top - look.textPx * 1.02, text: flag.label, sizePx: look.textPx, ink, bold: true },
    { t: 'text', xM: textX, yM: bottom + look.heightPx * 0.15, text: flag.distance, sizePx: look.textPx, ink },
    ...levelMark(drawn, place.hang === 1 ? x0 + sizePx - 11 : x0 + sizePx - 9, top - 8),
  ]
}

const uprightParts = (drawn: DrawnFlag, look: FlagLook): Primitive[] => {
  const { place, alongPx, sizePx, flag, isMirrored } = drawn
  const { edge, fill, ink } = pens(drawn)
  const side = isMirrored === true ? 1 : -1
  const near = side * (look.standPx + place.row * look.rowPx)
  const far = near + side * look.widthPx
  const [left, right] = [Math.min(near, far), Math.max(near, far)]
  // Along the screen's y, which grows down: hang −1 stands above its line.
  const [y0, y1] = [alongPx - place.startPx - sizePx, alongPx - place.startPx]
  const foot = alongPx - place.footPx
  const stubPx = side * (look.standPx - 1)
  const line: Primitive = { t: 'path', points: foot === 0 ? [-side, 0, place.isFolded ? stubPx : far, 0] : [-side, 0, side * 3, 0, near, foot, far, foot], stroke: edge, weight: drawn.isChosen ? 'rope' : 'boundary' }
  if (place.isFolded) return [line, { t: 'circle', xM: stubPx, yM: 0, radiusM: 2, fill: edge }]
  const top = Math.max(y0, y1)
  const bottom = Math.min(y0, y1)
  const middle = (left + right) / 2
  return [
    line,
    { t: 'path', points: [left, bottom, right, bottom, right, top, middle, top - 6, left, top], closed: true, fill, stroke: edge, weight: 'ticks', ...(flag.itemId === null ? { dash: 'proposal' as const } : {}) },
    { t: 'text', xM: left + 8, yM: top - 8 - look.textPx * 0.9, text: flag.label, sizePx: look.textPx, ink, bold: true },
    { t: 'text', xM: left + 8, yM: bottom + 7, text: flag.distance, sizePx: look.textPx, ink },
    // A word as long as 'mordazas' takes the whole first row: the mark stands on the second.
    ...levelMark(drawn, right - 15, flag.label.length > 5 ? bottom + 14 : top - 18, 15),
  ]
}

/** Level by shape; pale while it belongs to an older document. */
const levelMark = ({ flag, isStale }: DrawnFlag, x: number, y: number, sizePx = 11): Primitive[] => {
  if (flag.level === null) return []
  if (isStale) return [{ t: 'circle', xM: x, yM: y, radiusM: 3, stroke: 'ink2', weight: 'context', dash: 'tie' }]
  return [{ t: 'mark', xM: x, yM: y, parts: levelShape(flag.level, sizePx) }]
}
