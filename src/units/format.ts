/**
 * Quantities as text for a person: the unit always written, rounded to what the job can use,
 * '?' for unknown. The rounding rules are listed in docs/number-entry.md.
 */
import {
  barPa, celsiusToF, degreeRad, footPoundNm, hourS, kgPerMetreNPerM, minuteS, mphMPerS, poundForceN, poundMassKg, poundPerFootNPerM, psiPa, squareFootM2, squareInchM2,
} from './factors.ts'
import type { Language } from './language.ts'
import { feetInchesText, metresText, millimetresText, shortInchesText } from './lengthText.ts'
import type { LengthStyle } from './lengthText.ts'
import { numberText, roundToStep, significantStep, significantText } from './numberText.ts'
import type { Quantity, QuantityKind } from './quantity.ts'

export type UnitSystem = 'feetInches' | 'metric'

export interface FormatOptions {
  system: UnitSystem
  language: Language
  /** Adds the other system in brackets where the text differs. */
  both?: boolean
  /** 'tape' writes 12' 6"; 'long' (the default) 12 ft 6 in. */
  style?: LengthStyle
}

interface OneSystem {
  language: Language
  style: LengthStyle
}

type Writer = (value: number, options: OneSystem) => string

/** Loads in whole numbers, at most three significant digits; below 1 to the tenth, so that little is not nothing. */
function wholeText(value: number): string {
  return significantText(value, 3, Math.abs(value) < 1 ? 0.1 : 1)
}

function foot(language: Language): string {
  return language === 'es' ? 'pie' : 'ft'
}

const feetInchesWriters: Record<QuantityKind, Writer> = {
  length: (valueM, options) => feetInchesText(valueM, { ...options, shortInInches: false }),
  shortLength: (valueM, options) => shortInchesText(valueM, options),
  height: (valueM, options) => feetInchesText(valueM, { ...options, shortInInches: true }),
  force: (valueN) => `${wholeText(valueN / poundForceN)} lb`,
  mass: (valueKg) => `${wholeText(valueKg / poundMassKg)} lb`,
  moment: (valueNm, { language }) => `${wholeText(valueNm / footPoundNm)} ${foot(language)}-lb`,
  stress: (valuePa) => `${wholeText(valuePa / psiPa)} psi`,
  pressure: (valuePa) => `${wholeText(valuePa / psiPa)} psi`,
  lineLoad: (valueNPerM, { language }) => `${significantText(valueNPerM / poundPerFootNPerM, 3, 0.01)} lb/${foot(language)}`,
  temperature: (valueC) => `${numberText(roundToStep(celsiusToF(valueC), 1), 0)} °F`,
  temperatureChange: (valueC) => `${numberText(roundToStep(valueC * 1.8, 1), 0)} °F`,
  area: (valueM2, { language }) => `${significantText(valueM2 / squareFootM2, 3, 0.01)} ${foot(language)}²`,
  pistonArea: (valueM2, { language }) => `${significantText(valueM2 / squareInchM2, 3, 0.001)} ${language === 'es' ? 'pulg' : 'in'}²`,
  speed: (valueMPerS) => `${numberText(roundToStep(valueMPerS / mphMPerS, 0.1), 1)} mph`,
  ratio: ratioText,
  percent: percentText,
  angle: angleText,
  slope: percentText,
  count: countText,
  voltage: voltageText,
  duration: durationText,
}

const metricWriters: Record<QuantityKind, Writer> = {
  length: metresText,
  shortLength: millimetresText,
  height: millimetresText,
  force: newtonText,
  mass: (valueKg) => `${significantText(valueKg, 3, 0.1)} kg`,
  moment: (valueNm) => (Math.abs(valueNm) < 999.5 ? `${wholeText(valueNm)} N·m` : `${significantText(valueNm / 1000, 3, 0.001)} kN·m`),
  stress: (valuePa) => `${significantText(valuePa / 1e6, 3, 0.001)} MPa`,
  pressure: (valuePa) => `${significantText(valuePa / barPa, 3, 0.01)} bar`,
  lineLoad: (valueNPerM) => `${significantText(valueNPerM / kgPerMetreNPerM, 3, 0.01)} kg/m`,
  temperature: (valueC) => `${numberText(roundToStep(valueC, 1), 0)} °C`,
  temperatureChange: (valueC) => `${numberText(roundToStep(valueC, 1), 0)} °C`,
  area: (valueM2) => `${significantText(valueM2, 3, 0.001)} m²`,
  pistonArea: (valueM2) => `${significantText(valueM2 * 1e4, 3, 0.001)} cm²`,
  speed: (valueMPerS) => `${numberText(roundToStep(valueMPerS, 0.1), 1)} m/s`,
  ratio: ratioText,
  percent: percentText,
  angle: angleText,
  slope: percentText,
  count: countText,
  voltage: voltageText,
  duration: durationText,
}

/** N below 1 kN, kN from there; the change is made on the rounded value so that 999.6 N is 1 kN. */
function newtonText(valueN: number): string {
  return Math.abs(valueN) < 999.5 ? `${wholeText(valueN)} N` : `${significantText(valueN / 1000, 3, 0.001)} kN`
}

/** Two decimals; a ratio below 1/50 is written as 1/n, as sag limits are. */
function ratioText(valueRatio: number): string {
  const size = Math.abs(valueRatio)
  if (size < 1e-6) return '0'
  const under = roundToStep(1 / size, significantStep(1 / size, 3, 1))
  return size < 0.02 && under > 50 ? `${numberText(Math.sign(valueRatio), 0)}/${under}` : significantText(valueRatio, 3, 0.01)
}

function percentText(valueRatio: number): string {
  return `${significantText(valueRatio * 100, 3, 0.1)} %`
}

function angleText(valueRad: number): string {
  return `${numberText(roundToStep(valueRad / degreeRad, 0.1), 1)}°`
}

function countText(value: number): string {
  return numberText(roundToStep(value, 1), 0)
}

function voltageText(valueV: number): string {
  return Math.abs(valueV) < 999.5 ? `${significantText(valueV, 3, 1)} V` : `${significantText(valueV / 1000, 4, 0.001)} kV`
}

/** s below 2 min, min below 2 h, then h; the change is made on the rounded value, as for newtons. */
function durationText(valueS: number): string {
  const size = Math.abs(valueS)
  if (size < 2 * minuteS - 0.5) return `${significantText(valueS, 3, 1)} s`
  if (size < 2 * hourS - 0.5 * minuteS) return `${significantText(valueS / minuteS, 3, 0.1)} min`
  return `${significantText(valueS / hourS, 3, 0.1)} h`
}

/**
 * A quantity as text, unit always written; `null` gives '?'.
 *
 * Input:  value in the unit of `siUnitOf[kind]`; `both` adds the other system in brackets.
 * Output: '12 ft 6 in', '12' 6"' (tape), '28 ½ in', '3.81 m', '724 mm', '494 lb', '2.2 kN', '?'.
 * Fails:  RangeError for a value that is not finite: a number that means nothing must not reach a sheet.
 */
export function formatQuantity(q: Quantity, options: FormatOptions): string {
  const { value, kind } = q
  if (value === null) return '?'
  if (!Number.isFinite(value)) throw new RangeError(`formatQuantity: ${kind} is ${value}, not a finite number`)
  const one: OneSystem = { language: options.language, style: options.style ?? 'long' }
  const isFeet = options.system === 'feetInches'
  const main = (isFeet ? feetInchesWriters : metricWriters)[kind](value, one)
  if (!options.both) return main
  const other = (isFeet ? metricWriters : feetInchesWriters)[kind](value, one)
  return other === main ? main : `${main} (${other})`
}

const sideWords = {
  en: { exit: 'exit', infeed: 'infeed', datum: 'at the datum', right: 'R', left: 'L', onLine: 'on the line' },
  es: { exit: 'salida', infeed: 'entrada', datum: 'en el origen', right: 'D', left: 'I', onLine: 'en la línea' },
} as const

function signedText(valueM: number | null, options: FormatOptions, kind: QuantityKind, words: { plus: string; minus: string; zero: string }): string {
  if (valueM === null) return '?'
  const text = formatQuantity({ kind, value: Math.abs(valueM) }, options)
  const zero = formatQuantity({ kind, value: 0 }, options)
  if (text === zero) return words.zero
  return `${valueM > 0 ? words.plus : words.minus} ${text}`
}

/** A running distance with its side word: 'exit 12 ft 6 in' (> 0), 'infeed 8 ft 4 in' (< 0), 'at the datum'. */
export function formatRunning(runningM: number | null, options: FormatOptions): string {
  const words = sideWords[options.language]
  return signedText(runningM, options, 'length', { plus: words.exit, minus: words.infeed, zero: words.datum })
}

/** An offset with its side, looking down-string: 'R 6 in' (> 0), 'L 6 in' (< 0), 'on the line'. Spanish D and I. */
export function formatOffset(offsetM: number | null, options: FormatOptions): string {
  const words = sideWords[options.language]
  return signedText(offsetM, options, 'shortLength', { plus: words.right, minus: words.left, zero: words.onLine })
}
