/** The face of printed sheets, measured without any font at hand: widths come from the table made of its files. */
import { createLettering, type Lettering } from '../lettering.ts'
import { latinExtWidths, latinWidths, type FaceWidths } from './faceWidths.ts'

export type FaceWeight = 400 | 600

const byLetter = (widths: FaceWidths): Readonly<Record<FaceWeight, ReadonlyMap<string, number>>> => {
  const of = (weight: FaceWeight): Map<string, number> => new Map(Object.entries(widths[weight]).flatMap(([width, letters]) => [...letters].map((letter) => [letter, Number(width) / 1000] as const)))
  return { 400: of(400), 600: of(600) }
}
const latin = byLetter(latinWidths)
const latinExt = byLetter(latinExtWidths)

/** Spaces the face lacks; they are stepped over, not drawn. */
const spaces: Readonly<Record<string, number>> = { '\u2009': 0.16, '\u202f': 0.16 }
/** Stands for a letter of a script that the face does not have. */
export const UNKNOWN_LETTER = '¤'
const insteadOf: Readonly<Record<string, string>> = { '≥': '>=', '≤': '<=', '→': '->', '←': '<-', '✓': 'x', '↔': '<->' }
/** What has no shape, and what turns the direction of writing round. */
// oxlint-disable-next-line no-control-regex -- controls are what it takes out
const unseen = /[\u0000-\u001f\u007f-\u009f\u00ad\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff0-\uffff\ud800-\udfff]/gu

/** Text as text: line ends as spaces, without controls, unseen marks and marks that reorder what follows. */
export const plainText = (text: string): string => (/^[\x20-\x7e]*$/.test(text) ? text : text.replace(/[\t\n\v\f\r\u2028\u2029]+/g, ' ').replace(unseen, ''))

const isKnown = (letter: string): boolean => latin[400].has(letter) || latinExt[400].has(letter) || letter in spaces

/** Plain text in letters the face has: others without their marks, else as `UNKNOWN_LETTER`. */
export const faceText = (text: string): string => {
  if (/^[\x20-\x7e]*$/.test(text)) return text
  const letters = [...plainText(text.normalize('NFC'))].map((letter) => {
    if (isKnown(letter)) return letter
    if (insteadOf[letter] !== undefined) return insteadOf[letter]
    const base = [...letter.normalize('NFKD')].filter((part) => !/\p{M}/u.test(part))
    return base.length > 0 && base.every(isKnown) ? base.join('') : /\p{M}|\p{Variation_Selector}/u.test(letter) ? '' : UNKNOWN_LETTER
  })
  return letters.join('')
}

/** Pieces of a text by the file of the face that has them; `space` is stepped over. */
export const faceRuns = (text: string): readonly { part: 'latin' | 'latin-ext' | 'space'; text: string }[] => {
  const runs: { part: 'latin' | 'latin-ext' | 'space'; text: string }[] = []
  for (const letter of faceText(text)) {
    const part = letter in spaces ? 'space' : latin[400].has(letter) ? 'latin' : 'latin-ext'
    const last = runs.at(-1)
    if (last?.part === part) last.text += letter
    else runs.push({ part, text: letter })
  }
  return runs
}

/** Advance of a text, in the unit of its size; kerning, which mostly tightens, is left out. */
export const faceWidth = (text: string, size: number, weight: FaceWeight): number => {
  let em = 0
  for (const letter of faceText(text)) em += spaces[letter] ?? latin[weight].get(letter) ?? latinExt[weight].get(letter) ?? 0.6
  return em * size
}

/** Digits of a fraction on a crew sheet are never smaller. */
const LEAST_FRACTION_PT = 8.8

const fontOf = (font: string): { weight: FaceWeight; size: number } => {
  const match = /^(\d+) ([\d.]+)px/.exec(font)
  return { weight: match?.[1] === '600' ? 600 : 400, size: Number(match?.[2] ?? 11) }
}

export const faceContext = (): { font: string; measureText: (text: string) => { width: number } } => {
  const context = { font: '400 11px', measureText: (text: string) => { const { weight, size } = fontOf(context.font); return { width: faceWidth(text, size, weight) } } }
  return context
}

/** Lettering in points of the page. */
export const crewLettering = (): Lettering => createLettering(faceContext(), LEAST_FRACTION_PT)
