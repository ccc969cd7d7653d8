/** Lines of text on a crew sheet: nothing under 11 pt, long words broken rather than cut. */
import type { Primitive } from '../../drawing/primitives.ts'
import type { Lettering, TextLook } from '../lettering.ts'
import { plainText } from './face.ts'

/** Smallest lettering: read in rain, through a sleeve. */
export const BODY_PT = 11
export const LINE_PT = 13
export const HEADING: TextLook = { sizePx: 14, bold: true }
export const BODY: TextLook = { sizePx: BODY_PT }
export const BOLD: TextLook = { sizePx: BODY_PT, bold: true }

/** A word wider than the room in pieces that fit; at least one letter each. */
const pieces = (word: string, roomPt: number, look: TextLook, lettering: Lettering): readonly string[] => {
  if (lettering.widthPx(word, look) <= roomPt) return [word]
  const parts: string[] = []
  let part = ''
  for (const letter of word) {
    if (part !== '' && lettering.widthPx(part + letter, look) > roomPt) {
      parts.push(part)
      part = ''
    }
    part += letter
  }
  return [...parts, part]
}

/** The whole text in lines no wider than the room; never cut. */
export const linesOf = (text: string, roomPt: number, look: TextLook, lettering: Lettering): readonly string[] => {
  const plain = plainText(text)
  if (plain !== '' && lettering.widthPx(plain, look) <= roomPt) return [plain]
  const lines: string[] = []
  let line = ''
  for (const word of wordsOf(plain, roomPt, look, lettering)) {
    const longer = line === '' ? word : `${line} ${word}`
    if (line !== '' && lettering.widthPx(longer, look) > roomPt) {
      lines.push(line)
      line = word
    } else line = longer
  }
  return line === '' ? lines : [...lines, line]
}

/** A figure stays with its unit, a sign with its figure, wherever the room is wide enough for both. */
export const wordsOf = (text: string, roomPt: number, look: TextLook, lettering: Lettering): readonly string[] => {
  const words: string[] = []
  for (const word of text.split(' ')) {
    if (word === '') continue
    const last = words.at(-1)
    const joins = last !== undefined && (/^±$/.test(last) || (/[\d¼½¾⅛⅜⅝⅞]$/.test(last) && unit.test(word)))
    if (joins && lettering.widthPx(`${last} ${word}`, look) <= roomPt) words[words.length - 1] = `${last} ${word}`
    else words.push(...pieces(word, roomPt, look, lettering))
  }
  return words
}
const unit = /^\(?(?:%|°|(?:ft|in|lb|psi|mph|mm|m|N|kN|kg|MPa|bar|kV|V|min|h|s|pies?|pulg)(?![\p{L}\p{N}]))/u

/** Lines set one under the other, the first with its top at `y0`. */
export const setLines = (lines: readonly string[], x: number, y0: number, look: TextLook, lettering: Lettering, linePt = LINE_PT): readonly Primitive[] =>
  lines.flatMap((line, i) => lettering.line(line, x, y0 + i * linePt + look.sizePx * 0.86, look))
