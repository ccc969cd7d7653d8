/** Lengths as a crew types them. What can be read in two ways is asked or refused, never guessed. */
import { footM, inchM } from './factors.ts'
import { formatQuantity } from './format.ts'
import type { Language, Localized } from './language.ts'
import { cleanSi, longestText, normalizeTyped, numberPattern, readNumber } from './scan.ts'

export type LengthFieldUnit = 'feetInches' | 'ft' | 'in' | 'm' | 'mm' | null

export interface ParseLengthOptions {
  /** What a bare number means in this field; null: the field has no unit. */
  fieldUnit: LengthFieldUnit
  /** Allows a minus sign and the side words exit, infeed, R, L. */
  allowNegative?: boolean
  /** Of the labels of choices and of the echo; English unless said. */
  language?: Language
}

/** The reading in both systems, shown back beside the field. */
export interface LengthEcho {
  feetInches: string
  metric: string
}

export interface LengthChoice {
  label: string
  valueM: number
}

export type LengthReading =
  | { ok: true; valueM: number; echo: LengthEcho }
  | { ok: false; reason: 'ask'; choices: LengthChoice[] }
  | { ok: false; reason: 'unreadable'; example: string; detail: Localized }

type SingleUnit = 'ft' | 'in' | 'm' | 'cm' | 'mm'

const metresPer: Record<SingleUnit, number> = { ft: footM, in: inchM, m: 1, cm: 0.01, mm: 0.001 }
const feetNames = String.raw`'|ft\.?|feet|foot|pies?`
const inchNames = String.raw`"|in\.?|inch(?:es)?|pulg\.?|pulgadas?`
const unitNames: readonly (readonly [SingleUnit, RegExp])[] = [
  ['ft', new RegExp(`^(?:${feetNames})$`)],
  ['in', new RegExp(`^(?:${inchNames})$`)],
  ['m', /^(?:m|metres?|meters?|metros?)$/],
  ['cm', /^(?:cm|cent[ií]met(?:re|er|ro)s?)$/],
  ['mm', /^(?:mm|mil+[ií]met(?:re|er|ro)s?)$/],
]
const exampleOf: Record<string, string> = { feetInches: '12 ft 6 in', ft: '12.5 ft', in: '28 1/2 in', m: '3.81 m', mm: '724 mm', null: '12 ft 6 in' }
/** Longer than any string; a number like that is a slip of the unit. */
const longestM = 100_000

const feetAndInches = new RegExp(`^(${numberPattern}) ?(?:${feetNames}) ?(?:-|,|and|y)? ?(${numberPattern}) ?(?:${inchNames})?$`)
// One number only: 6-1/2 " is 6 ½ in, so what follows the dash must not be a lone fraction.
const dashed = new RegExp(`^(\\d+) ?- ?(\\d[\\d.,]*(?:[ -]\\d+/\\d+)?) ?(?:${inchNames})?$`)
const single = new RegExp(`^(${numberPattern}) ?(\\D.*)?$`)
const wholeDashFraction = /^(\d+) ?- ?(\d+\/\d+)$/

const plusSide = String.raw`exit|salida|right|derecha|der\.?|r`
const minusSide = String.raw`infeed|entrada|left|izquierda|izq\.?|l`
// The one-letter Spanish sides only in front: '6 i' behind a number is too near to inches.
const sideBefore = new RegExp(`^(?:(${plusSide}|d)|(${minusSide}|i))(?: |(?=[\\d.,+-]))`)
const sideAfter = new RegExp(` ?\\b(?:(${plusSide})|(${minusSide}))$`)
const onTheSpot = /^(?:at the datum|on the line|en el origen|en la línea)$/

interface Failure {
  detail: Localized
}

type Step = { valueM: number } | { choices: LengthChoice[] } | Failure

const fail = (en: string, es: string): Failure => ({ detail: { en, es } })

/** Both readings of a length, for the echo. Very small lengths in decimals, so that little is not shown as nothing. */
export function lengthEcho(valueM: number, language: Language = 'en'): LengthEcho {
  const kind = Math.abs(valueM) < inchM / 4 ? 'shortLength' : 'length'
  return {
    feetInches: formatQuantity({ kind, value: valueM }, { system: 'feetInches', language }),
    metric: formatQuantity({ kind: Math.abs(valueM) < 0.9995 ? 'shortLength' : 'length', value: valueM }, { system: 'metric', language }),
  }
}

function feetInches(feetText: string, inchText: string): Step {
  const feet = readNumber(feetText)
  const inches = readNumber(inchText)
  if (!feet.ok) return feet
  if (!inches.ok) return inches
  if (!feet.isWhole) return fail('feet before inches are whole', 'los pies antes de pulgadas son enteros')
  if (inches.value >= 12) return fail('inches after feet stay under 12', 'las pulgadas después de pies son menos de 12')
  return { valueM: (feet.value * 12 + inches.value) * inchM }
}

function choice(numberText: string, unit: SingleUnit, value: number, language: Language): LengthChoice {
  const spanish: Partial<Record<SingleUnit, string>> = { ft: 'pies', in: 'pulg' }
  return { label: `${numberText} ${(language === 'es' ? spanish[unit] : undefined) ?? unit}`, valueM: value * metresPer[unit] }
}

function bareNumber(text: string, fieldUnit: LengthFieldUnit, language: Language): Step {
  const split = wholeDashFraction.exec(text)
  if (split && fieldUnit !== 'in') {
    if (fieldUnit === 'm' || fieldUnit === 'mm') return fail('a dash is for feet and inches; this field is metric', 'el guion es para pies y pulgadas; este campo es métrico')
    const feet = feetInches(split[1]!, split[2]!)
    const inches = readNumber(text)
    if (!('valueM' in feet)) return feet
    if (!inches.ok) return inches
    const [foot, inch] = language === 'es' ? ['pies', 'pulg'] : ['ft', 'in']
    return { choices: [{ label: `${split[1]} ${foot} ${split[2]} ${inch}`, valueM: feet.valueM }, { label: `${split[1]} ${split[2]} ${inch}`, valueM: inches.value * inchM }] }
  }
  const number = readNumber(text)
  if (!number.ok) return number
  if (number.value === 0) return { valueM: 0 }
  if (fieldUnit !== null && fieldUnit !== 'feetInches') return { valueM: number.value * metresPer[fieldUnit] }
  const units: SingleUnit[] = fieldUnit === 'feetInches' ? ['ft', 'in'] : ['ft', 'in', 'm', 'mm']
  return { choices: units.map((unit) => choice(text, unit, number.value, language)) }
}

function unsigned(text: string, fieldUnit: LengthFieldUnit, language: Language): Step {
  const isMetric = fieldUnit === 'm' || fieldUnit === 'mm'
  const compound = feetAndInches.exec(text)
  if (compound) return feetInches(compound[1]!, compound[2]!)
  const dash = dashed.exec(text)
  if (dash) return isMetric ? fail('a dash is for feet and inches; this field is metric', 'el guion es para pies y pulgadas; este campo es métrico') : feetInches(dash[1]!, dash[2]!)
  const one = single.exec(text)
  if (!one) {
    return /^\d[\d.,]* \d/.test(text) ? fail('two numbers without units', 'dos números sin unidades') : fail(`"${text}" is not a length`, `"${text}" no es una longitud`)
  }
  if (one[2] === undefined) return bareNumber(one[1]!, fieldUnit, language)
  const unitText = one[2].trim()
  if (/^\d/.test(unitText)) return fail('two numbers without units', 'dos números sin unidades')
  const unit = unitNames.find(([, names]) => names.test(unitText))?.[0]
  if (!unit) return fail(`"${unitText}" is not a unit of length here`, `"${unitText}" no es aquí una unidad de longitud`)
  const number = readNumber(one[1]!)
  return number.ok ? { valueM: number.value * metresPer[unit] } : number
}

interface Side {
  rest: string
  sign: 1 | -1
  isNamed: boolean
}

/** Takes a leading sign or a side word off; undefined where both are given or two sides. */
function takeSide(text: string): Side | undefined {
  const before = sideBefore.exec(text)
  const after = before ? null : sideAfter.exec(text)
  const found = before ?? after
  const rest = before ? text.slice(before[0].length).trim() : after ? text.slice(0, after.index).trim() : text
  const signed = /^([+-]) ?/.exec(rest)
  if (found && signed) return undefined
  if (found) return { rest, sign: found[2] === undefined ? 1 : -1, isNamed: true }
  return { rest: signed ? rest.slice(signed[0].length) : rest, sign: signed?.[1] === '-' ? -1 : 1, isNamed: signed?.[1] === '-' }
}

/**
 * Reads a typed length.
 *
 * Input:  12' 6" · 12-6 · 12 ft 6 1/2 in · 12.5 ft · 3.81 m · 3,81 m · 3810 mm · 6-1/2 in · ½ in; curly primes; exit 12-6, infeed
 *         8 ft 4, R 6 in, L 6 in (exit and R positive) where negative lengths are allowed. A bare number takes the field's unit;
 *         in a feet-and-inches field it asks, 0 apart.
 * Output: the length in m with its echo; or choices to ask; or an example of what can be read and the reason.
 * Fails:  never throws.
 */
export function parseLength(text: string, options: ParseLengthOptions): LengthReading {
  const { fieldUnit, allowNegative = false, language = 'en' } = options
  const unreadable = (detail: Localized): LengthReading => ({ ok: false, reason: 'unreadable', example: exampleOf[String(fieldUnit)]!, detail })
  const typed = normalizeTyped(text)
  if (typed === '') return unreadable({ en: 'nothing was typed', es: 'no se escribió nada' })
  if (typed.length > longestText) return unreadable({ en: 'too long for a length', es: 'demasiado largo para una longitud' })
  if (allowNegative && onTheSpot.test(typed)) return { ok: true, valueM: 0, echo: lengthEcho(0, language) }
  const side = takeSide(typed)
  if (!side) return unreadable({ en: 'a side and a sign do not go together', es: 'un lado y un signo no van juntos' })
  if (side.isNamed && !allowNegative) return unreadable({ en: 'no sign and no side here', es: 'aquí no va signo ni lado' })
  const step = unsigned(side.rest, fieldUnit, language)
  if ('detail' in step) return unreadable(step.detail)
  const signed = (valueM: number): number => cleanSi(side.sign * valueM)
  if ('choices' in step) return { ok: false, reason: 'ask', choices: step.choices.map(({ label, valueM }) => ({ label: side.sign < 0 ? `−${label}` : label, valueM: signed(valueM) })) }
  if (step.valueM > longestM) return unreadable({ en: 'more than 100 km; look at the unit', es: 'más de 100 km; revise la unidad' })
  const valueM = signed(step.valueM)
  return { ok: true, valueM, echo: lengthEcho(valueM, language) }
}
