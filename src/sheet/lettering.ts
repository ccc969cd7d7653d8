/** Lettering of the page: measured, wrapped, cut to fit, and true fractions whose digits are never under 7 pt. */
import { FRACTION_SLASH, textRuns, type TextRun } from '../drawing/fractionText.ts'
import type { Paint2D } from '../drawing/paint.ts'
import type { InkName, Primitive } from '../drawing/primitives.ts'
import { fontStack } from '../drawing/theme.ts'
import { LEAST_LETTERING_PX } from './page.ts'

export interface TextLook {
  sizePx: number
  bold?: boolean
  ink?: InkName
  align?: 'left' | 'center' | 'right'
}

export interface WrapLook extends TextLook {
  /** Room kept free at the start of the first line. */
  firstIndentPx?: number
  /** Most lines; what is beyond ends in an ellipsis. */
  most?: number
}

export interface Lettering {
  widthPx: (text: string, look: TextLook) => number
  /** The text, or as much of it as fits with an ellipsis; '' where not even that fits. */
  clipped: (text: string, roomPx: number, look: TextLook) => string
  /** Lines broken at spaces, never between a figure and its unit; a word wider than the room is cut. */
  wrapped: (text: string, roomPx: number, look: WrapLook) => readonly string[]
  /** One line by its baseline; px, y DOWN. */
  line: (text: string, xPx: number, yPx: number, look: TextLook) => readonly Primitive[]
}

/** Digits of a fraction beside their text, and how far the upper ones are raised; larger than on screen, to be read off paper. */
const FRACTION_SHARE = 0.8
const FRACTION_RISE_SHARE = 0.2
const ELLIPSIS = '…'

/** A figure is never parted from its unit at the end of a line. */
const NO_BREAK = '\u00a0'
const beforeUnit = /(?<=[\d¼½¾⅛⅜⅝⅞]) (?=(?:%|°|(?:ft|in|lb|psi|mph|mm|m|N|kN|kg|MPa|bar|kV|V|min|h|s|pies?|pulg)(?![\p{L}\p{N}])))/gu

const wholeQuarters: Readonly<Record<string, string>> = { '¼': '1/4', '½': '1/2', '¾': '3/4' }

/** Plain pieces and fractions. The face has ¼, ½ and ¾ as one glyph, but with digits of half the size: they are set here too. */
const runsOf = (text: string): readonly TextRun[] =>
  textRuns(text.replace(/(\d)\s?([¼½¾])|([¼½¾])/gu, (_match, before?: string, after?: string, alone?: string) => (before === undefined ? '' : `${before}\u2009`) + wholeQuarters[after ?? alone ?? '']))

/** Measures with the context it will be drawn with, so that a stand-in face that runs wider is cut, not overflowed. */
export const createLettering = (context: Pick<Paint2D, 'font' | 'measureText'>, leastPx = LEAST_LETTERING_PX): Lettering => {
  const known = new Map<string, number>()
  const pieceWidthPx = (text: string, sizePx: number, bold: boolean): number => {
    const key = `${bold ? 'b' : ''}${sizePx}|${text}`
    let width = known.get(key)
    if (width === undefined) {
      context.font = `${bold ? 600 : 400} ${sizePx}px ${fontStack}`
      known.set(key, (width = context.measureText(text).width))
    }
    return width
  }
  const smallPx = (sizePx: number): number => Math.max(leastPx, sizePx * FRACTION_SHARE)
  const runWidthPx = (run: TextRun, sizePx: number, bold: boolean): number =>
    run.as === 'plain' ? pieceWidthPx(run.text, sizePx, bold) : pieceWidthPx(run.above, smallPx(sizePx), bold) + pieceWidthPx(FRACTION_SLASH, sizePx, bold) + pieceWidthPx(run.below, smallPx(sizePx), bold)
  const widthPx: Lettering['widthPx'] = (text, { sizePx, bold = false }) => runsOf(text).reduce((sum, run) => sum + runWidthPx(run, sizePx, bold), 0)

  const clipped: Lettering['clipped'] = (text, roomPx, look) => {
    if (widthPx(text, look) <= roomPx) return text
    const letters = [...text]
    let [fits, tooMany] = [0, letters.length]
    while (tooMany - fits > 1) {
      const middle = (fits + tooMany) >> 1
      if (widthPx(letters.slice(0, middle).join('').trimEnd() + ELLIPSIS, look) <= roomPx) fits = middle
      else tooMany = middle
    }
    if (fits > 0) return letters.slice(0, fits).join('').trimEnd() + ELLIPSIS
    return widthPx(ELLIPSIS, look) <= roomPx ? ELLIPSIS : ''
  }

  const wrapped: Lettering['wrapped'] = (text, roomPx, look) => {
    const { firstIndentPx = 0, most = Infinity } = look
    const lines: string[] = []
    let words = text.replace(beforeUnit, NO_BREAK).split(' ').filter((word) => word !== '')
    while (words.length > 0 && lines.length < most) {
      const room = roomPx - (lines.length === 0 ? firstIndentPx : 0)
      if (lines.length === most - 1) {
        lines.push(clipped(words.join(' '), room, look))
        return lines
      }
      let count = 1
      while (count < words.length && widthPx(words.slice(0, count + 1).join(' '), look) <= room) count++
      lines.push(clipped(words.slice(0, count).join(' '), room, look))
      words = words.slice(count)
    }
    return lines
  }

  const line: Lettering['line'] = (text, xPx, yPx, look) => {
    const { sizePx, bold = false, ink = 'ink', align = 'left' } = look
    const pen = { ink, ...(bold ? { bold: true } : {}) }
    const runs = runsOf(text)
    const [only] = runs
    if (runs.length === 1 && only?.as === 'plain') return only.text === '' ? [] : [{ t: 'text', xM: xPx, yM: yPx, text: only.text, sizePx, align, ...pen }]
    const list: Primitive[] = []
    let x = xPx - (align === 'left' ? 0 : widthPx(text, look) / (align === 'center' ? 2 : 1))
    const put = (piece: string, size: number, risePx: number): void => {
      list.push({ t: 'text', xM: x, yM: yPx - risePx, text: piece, sizePx: size, ...pen })
      x += pieceWidthPx(piece, size, bold)
    }
    for (const run of runs) {
      if (run.as === 'plain') put(run.text, sizePx, 0)
      else {
        put(run.above, smallPx(sizePx), FRACTION_RISE_SHARE * sizePx)
        put(FRACTION_SLASH, sizePx, 0)
        put(run.below, smallPx(sizePx), 0)
      }
    }
    return list
  }
  return { widthPx, clipped, wrapped, line }
}
