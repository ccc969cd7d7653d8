/**
 * Reading typed numbers: one spelling for spaces, marks, dashes and fractions, then a number with a
 * decimal point or comma, groups of three, or a fraction. What may be read in two ways is not read.
 */
import type { Localized } from './language.ts'

/** Longer texts are no number of this trade; the bound also keeps the patterns below cheap. */
export const longestText = 60

const vulgar: Record<string, string> = { '¼': '1/4', '½': '1/2', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8', '⅓': '1/3', '⅔': '2/3' }
const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹'
const subscripts = '₀₁₂₃₄₅₆₇₈₉'
const plainDigits = (text: string, digits: string): string => [...text].map((digit) => digits.indexOf(digit)).join('')

/** Lower case, plain spaces, ' and " for every kind of prime and quote, - for every dash, fractions as ' n/d'. */
export function normalizeTyped(text: string): string {
  return text
    .replace(/([⁰¹²³⁴⁵⁶⁷⁸⁹]+)[⁄/]([₀₁₂₃₄₅₆₇₈₉]+)/g, (_match, over: string, under: string) => ` ${plainDigits(over, superscripts)}/${plainDigits(under, subscripts)}`)
    .replace(/[¼½¾⅛⅜⅝⅞⅓⅔]/g, (fraction) => ` ${vulgar[fraction]}`)
    .replace(/⁄/g, '/')
    .replace(/[‘’‛′ʹ´`]/g, "'")
    .replace(/[“”‟″ʺ˝]/g, '"')
    .replace(/''/g, '"')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/\s+/g, ' ') // \s holds the thin, narrow and no-break spaces too
    .toLowerCase()
    .trim()
}

/**
 * Source of a pattern for one number, without sign: 1 234 | 12.5 | 3,81 | .5 | 1/2 | 6 1/2 | 6-1/2.
 * It finds what looks like a number; `readNumber` decides whether it is one.
 */
export const numberPattern = String.raw`(?:\d+/\d+|\d{1,3}(?: \d{3})+(?:[.,]\d+)?|(?:\d[\d.,]*|[.,]\d+)(?:[ -]\d+/\d+)?)`

export type NumberReading = { ok: true; value: number; isWhole: boolean } | { ok: false; detail: Localized }

const wrong = (en: string, es: string): NumberReading => ({ ok: false, detail: { en, es } })

function fraction(over: string, under: string): NumberReading {
  const numerator = Number(over)
  const denominator = Number(under)
  if (denominator < 2 || numerator === 0 || numerator >= denominator || denominator > 1_000_000) {
    return wrong(`${over}/${under} is not a proper fraction`, `${over}/${under} no es una fracción propia`)
  }
  return { ok: true, value: numerator / denominator, isWhole: false }
}

/** A number that matches `numberPattern`, or why it is not one. A comma before exactly three digits is refused: it may be either. */
export function readNumber(text: string): NumberReading {
  const parts = /^(?:(.+?)[ -])?(\d+)\/(\d+)$/.exec(text)
  if (parts) {
    const rest = fraction(parts[2]!, parts[3]!)
    if (!rest.ok || parts[1] === undefined) return rest
    const whole = readNumber(parts[1])
    if (!whole.ok) return whole
    if (!whole.isWhole) return wrong(`${parts[1]} and a fraction do not go together`, `${parts[1]} y una fracción no van juntos`)
    return { ok: true, value: whole.value + rest.value, isWhole: false }
  }
  const plain = decimalText(text)
  if (typeof plain !== 'string') return plain
  return { ok: true, value: Number(plain), isWhole: !plain.includes('.') }
}

/** The digits with at most one point, commas and groups resolved. */
function decimalText(text: string): string | NumberReading {
  if (/^\d{1,3}(?: \d{3})+(?:[.,]\d+)?$/.test(text)) return text.replace(/ /g, '').replace(',', '.')
  if (/^\d*\.?\d+$/.test(text)) return text
  if (/^[1-9]\d{0,2},\d{3}$/.test(text)) {
    const joined = text.replace(',', '')
    const pointed = text.replace(',', '.')
    return wrong(`${text} may be ${pointed} or ${joined}; write it without the comma`, `${text} puede ser ${pointed} o ${joined}; escríbalo sin la coma`)
  }
  if (/^\d*,\d+$/.test(text)) return text.replace(',', '.')
  if (/^\d{1,3}(?:,\d{3})+\.\d+$/.test(text) || /^[1-9]\d{0,2}(?:,\d{3}){2,}$/.test(text)) return text.replace(/,/g, '')
  if (/^\d{1,3}(?:\.\d{3})+,\d+$/.test(text)) return text.replace(/\./g, '').replace(',', '.')
  if (/^[1-9]\d{0,2}(?:\.\d{3}){2,}$/.test(text)) return text.replace(/\./g, '')
  return wrong(`the points and commas of ${text} do not make one number`, `los puntos y comas de ${text} no forman un número`)
}

/** A converted value without the noise of binary arithmetic: 12 ft 6 in and 3.81 m are the same number. Never −0. */
export function cleanSi(value: number): number {
  return value === 0 ? 0 : Number(value.toPrecision(14))
}
