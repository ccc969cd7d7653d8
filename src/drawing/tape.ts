import type { UnitSystem } from '../units/format.ts'
import { guessedWidthPx } from './fractionText.ts'
import type { Primitive } from './primitives.ts'
import { tickSteps, ticksBetween } from './tapeTicks.ts'

export interface TapeLook {
  fromM: number
  toM: number
  pxPerM: number
  system: UnitSystem
  /** Thickness of the band, px. */
  thicknessPx: number
  /** The band stands upright (phone): figures are centred and stand over their mark. */
  isUpright: boolean
  /** Words at the datum. */
  infeed: string
  exit: string
  figurePx: number
  /** True when running distances grow to the left on screen: words at the nail change sides. */
  isMirrored: boolean
}

/** Words at the nail start this far from it. */
const WORD_AT_PX = 12
/** Words at the nail of an upright tape end this far from it. */
const UPRIGHT_WORDS_PX = 34

/**
 * The tape itself: pale on the infeed side, yellow on the exit side, marks from both edges, figures, the datum nail with its words.
 * Frame: x = running distance in m, y = px across the band, 0 at one edge, up to `thicknessPx`.
 */
export const tapeBody = (look: TapeLook): Primitive[] => {
  const { fromM, toM, thicknessPx: t, pxPerM } = look
  const list: Primitive[] = []
  const band = (a: number, b: number, fill: 'tape' | 'tapePale'): void => {
    if (b > a) list.push({ t: 'rect', xM: a, yM: 0, widthM: b - a, heightM: t, fill })
  }
  band(fromM, Math.min(0, toM), 'tapePale')
  band(Math.max(0, fromM), toM, 'tape')
  // Half a figure's width beyond the word keeps the two apart.
  const wordRoomM = (text: string): number => (WORD_AT_PX + guessedWidthPx(text, look.figurePx - 1.5) * 1.1 + 4) / pxPerM
  const [exitRoomM, infeedRoomM] = [wordRoomM(look.exit), wordRoomM(look.infeed)]
  const figureM = (look.figurePx * 1.6) / pxPerM
  const steps = tickSteps(look.system, pxPerM)
  const depth = { major: t, mid: t * 0.34, minor: t * 0.18 }
  for (const { atM, rank, figure } of ticksBetween(fromM, toM, steps)) {
    // A figure stands to the right of its mark on screen, so it reaches towards the nail on one side only.
    const reachM = (atM < 0) !== look.isMirrored ? figureM : 0
    const isUnderWords = !look.isUpright && Math.abs(atM) - (rank === 'major' ? reachM : 0) < (atM < 0 ? infeedRoomM : exitRoomM)
    if (rank === 'major') list.push({ t: 'path', points: [atM, 0, atM, t], stroke: 'tapeInk', weight: 'ticks' })
    // On an upright tape the words stand across it: the short marks beside them are left out.
    else if (look.isUpright && Math.abs(atM) * pxPerM < UPRIGHT_WORDS_PX) continue
    else {
      const weight = rank === 'mid' ? 'context' : 'hair'
      list.push({ t: 'path', points: [atM, 0, atM, depth[rank]], stroke: 'tapeInk', weight })
      if (!isUnderWords || rank === 'minor') list.push({ t: 'path', points: [atM, t, atM, t - depth[rank]], stroke: 'tapeInk', weight })
    }
    // The figure stands over its mark in both directions of the tape; beside the nail the words take its place.
    if (figure === '' || isUnderWords) continue
    list.push(
      look.isUpright
        ? { t: 'text', xM: atM, yM: t / 2, text: figure, sizePx: look.figurePx, ink: 'tapeInk', bold: true, align: 'center', dyPx: 5 }
        : { t: 'text', xM: atM, yM: t / 2, text: figure, sizePx: look.figurePx, ink: 'tapeInk', bold: true, dxPx: 3.5, dyPx: -look.figurePx * 0.35 },
    )
  }
  for (const y of [0, t]) list.push({ t: 'path', points: [fromM, y, toM, y], stroke: 'tapeInk', weight: 'boundary' })
  return [...list, ...nail(look)]
}

/** A black disc with a hole, a line across the tape, and which way is which. */
const nail = ({ thicknessPx: t, isUpright, infeed, exit, figurePx, isMirrored }: TapeLook): Primitive[] => {
  const sizePx = figurePx - 1.5
  const word = (text: string, ahead: boolean): Primitive => {
    const isRight = ahead !== isMirrored
    return isUpright
      ? { t: 'text', xM: 0, yM: t / 2, text, sizePx, ink: 'tapeInk', bold: true, align: 'center', dyPx: isRight ? 16 : -16 - sizePx * 0.7 }
      : { t: 'text', xM: 0, yM: t / 2, text, sizePx, ink: 'tapeInk', bold: true, align: isRight ? 'left' : 'right', dxPx: isRight ? WORD_AT_PX : -WORD_AT_PX, dyPx: -sizePx * 0.35 }
  }
  return [
    { t: 'path', points: [0, -2, 0, t + 3], stroke: 'tapeInk', weight: 'building' },
    { t: 'mark', xM: 0, yM: t / 2, parts: [{ t: 'circle', xM: 0, yM: 0, radiusM: t > 34 ? 8 : 6.5, fill: 'tapeInk' }, { t: 'circle', xM: 0, yM: 0, radiusM: 2.2, fill: 'tape' }] },
    word(exit, true),
    word(infeed, false),
  ]
}

/** Knuckle of a bend: the tape unrolls it; a bent mark with the angle stands in its middle. */
export const tapeKnuckle = (atM: number, thicknessPx: number, text: string): Primitive => ({
  t: 'mark', xM: atM, yM: thicknessPx / 2,
  parts: [
    { t: 'circle', xM: 0, yM: 0, radiusM: thicknessPx * 0.4, fill: 'tape', stroke: 'tapeInk', weight: 'context' },
    { t: 'path', points: [-7, -4, 0, -4, 5, 4], stroke: 'tapeInk', weight: 'rope' },
    { t: 'text', xM: thicknessPx * 0.4 + 3, yM: -4, text, sizePx: 12, ink: 'tapeInk', bold: true },
  ],
})
