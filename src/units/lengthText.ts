/**
 * Lengths as a tape shows them. Feet and inches carry a true fraction to the sixteenth, set apart
 * from the whole by a thin space; the rounding carries (11 31/32 in is 1 ft 0 in) and −0 never shows.
 */
import { footM, inchM } from './factors.ts'
import type { Language } from './language.ts'
import { minusSign, numberText, roundToStep, thinSpace } from './numberText.ts'

export type LengthStyle = 'long' | 'tape'

const sixteenths = ['', '1/16', '⅛', '3/16', '¼', '5/16', '⅜', '7/16', '½', '9/16', '⅝', '11/16', '¾', '13/16', '⅞', '15/16']

const unitWords = {
  en: { ft: 'ft', in: 'in' },
  es: { ft: 'pies', in: 'pulg' },
} as const satisfies Record<Language, { ft: string; in: string }>

/** Below this a short length that is no multiple of 1/16 in is shown in decimals: a gap of 0.019 in is not '0 in'. */
const decimalBelowM = 0.25 * inchM
const metricDecimalBelowM = 0.01

function inchesText(count16: number, zeroWhole: boolean): string {
  const whole = Math.floor(count16 / 16)
  const fraction = sixteenths[count16 % 16] ?? ''
  if (fraction === '') return numberText(whole, 0)
  if (whole === 0 && !zeroWhole) return fraction
  return `${numberText(whole, 0)}${thinSpace}${fraction}`
}

function inches(text: string, style: LengthStyle, language: Language): string {
  return style === 'tape' ? `${text}"` : `${text} ${unitWords[language].in}`
}

/** Feet and inches, or inches alone: below 1 ft always, below 10 ft where `shortInInches`. */
export function feetInchesText(lengthM: number, options: { style: LengthStyle; language: Language; shortInInches: boolean }): string {
  const { style, language, shortInInches } = options
  const total16 = Math.round(Math.abs(lengthM / inchM) * 16)
  const sign = lengthM < 0 && total16 !== 0 ? minusSign : ''
  const footCount16 = 12 * 16
  if (total16 < footCount16 || (shortInInches && total16 < 10 * footCount16)) {
    return sign + inches(inchesText(total16, false), style, language)
  }
  const feet = Math.floor(total16 / footCount16)
  const rest = inches(inchesText(total16 % footCount16, true), style, language)
  const footWord = language === 'es' && feet === 1 ? 'pie' : unitWords[language].ft
  return sign + (style === 'tape' ? `${numberText(feet, 0)}' ${rest}` : `${numberText(feet, 0)} ${footWord} ${rest}`)
}

/** Metres to the centimetre: 3.81 m. */
export function metresText(lengthM: number): string {
  return `${numberText(roundToStep(lengthM, 0.01), 2)} m`
}

/** Millimetres: whole; below 10 mm to the tenth, below 1 mm to the hundredth. From 10 m on, metres. */
export function millimetresText(lengthM: number): string {
  const size = Math.abs(lengthM)
  if (size >= 9.9995) return metresText(lengthM)
  const step = size >= metricDecimalBelowM ? 1 : size >= 0.001 ? 0.1 : 0.01
  return `${numberText(roundToStep(lengthM * 1000, step), 2)} mm`
}

/** Short lengths: inches with a true fraction; decimals where a small value is no multiple of 1/16 in. */
export function shortInchesText(lengthM: number, options: { style: LengthStyle; language: Language }): string {
  const isOnTape = (valueIn: number): boolean => Math.abs(valueIn * 16 - Math.round(valueIn * 16)) < 1e-6
  const valueIn = lengthM / inchM
  const roundedIn = roundToStep(valueIn, 0.001)
  if (Math.abs(lengthM) < decimalBelowM && !isOnTape(valueIn) && !isOnTape(roundedIn)) {
    return inches(numberText(roundedIn, 3), options.style, options.language)
  }
  return feetInchesText(lengthM, { ...options, shortInInches: true })
}

/** Tape step of feet-and-inches text, for tests and for 'nothing changed' comparisons. */
export const tapeStepM = inchM / 16
/** 1 ft in m, re-exported so that callers of tape text need one import. */
export const oneFootM = footM
