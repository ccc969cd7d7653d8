/** Quantities of any kind as a crew types them; lengths go to parseLength. */
import { formatQuantity } from './format.ts'
import type { UnitSystem } from './format.ts'
import type { Language, Localized } from './language.ts'
import { parseLength } from './parseLength.ts'
import type { LengthFieldUnit } from './parseLength.ts'
import type { QuantityKind } from './quantity.ts'
import { cleanSi, longestText, normalizeTyped, numberPattern, readNumber } from './scan.ts'
import { kindUnits } from './unitNames.ts'
import type { KindUnits } from './unitNames.ts'

export interface ParseQuantityOptions {
  /** Overrides whether the kind may be negative. */
  allowNegative?: boolean
  /** Of the labels and the echo; English unless said. */
  language?: Language
}

export type QuantityReading =
  | { ok: true; value: number; echo: { feetInches: string; metric: string } }
  | { ok: false; reason: 'ask'; choices: { label: string; value: number }[] }
  | { ok: false; reason: 'unreadable'; example: string; detail: Localized }

const lengthFieldUnit: Record<'length' | 'shortLength' | 'height', Record<UnitSystem, LengthFieldUnit>> = {
  length: { feetInches: 'feetInches', metric: 'm' },
  shortLength: { feetInches: 'in', metric: 'mm' },
  height: { feetInches: 'in', metric: 'mm' },
}

const absoluteZeroC = -273.15
const signedNumber = new RegExp(`^([+-]?) ?(${numberPattern}) ?(.*)$`)
/** 1:50, 1 in 50, 1 en 50: rise on run. */
const riseOnRun = new RegExp(`^([+-]?) ?(${numberPattern}) ?(?::|in|en) ?(${numberPattern})$`)

function unitKey(text: string): string {
  return text.replace(/\b(?:per|por)\b/g, '/').replace(/²|\^2/g, '2').replace(/[ .·*⋅-]/g, '')
}

/**
 * Reads a typed quantity of a kind.
 *
 * Input:  the unit may be any of the kind's, also of the other system; a bare number takes the field's unit, or asks where two are
 *         usual (V or kV; N, kN or kg). Slope and ratio also take 1/50, 1:50 and 1 in 50.
 * Output: value in the unit of `siUnitOf[kind]` with its echo in both systems; or choices; or an example and the reason.
 * Fails:  never throws.
 */
export function parseQuantity(text: string, kind: QuantityKind, system: UnitSystem, options: ParseQuantityOptions = {}): QuantityReading {
  const { language = 'en' } = options
  if (kind === 'length' || kind === 'shortLength' || kind === 'height') {
    const reading = parseLength(text, { fieldUnit: lengthFieldUnit[kind][system], allowNegative: options.allowNegative ?? false, language })
    if (reading.ok) return { ok: true, value: reading.valueM, echo: reading.echo }
    return reading.reason === 'ask' ? { ...reading, choices: reading.choices.map(({ label, valueM }) => ({ label, value: valueM })) } : reading
  }
  const rules = kindUnits[kind]
  const unreadable = (en: string, es: string): QuantityReading => ({ ok: false, reason: 'unreadable', example: rules.example[system], detail: { en, es } })
  const typed = normalizeTyped(text)
  if (typed === '') return unreadable('nothing was typed', 'no se escribió nada')
  if (typed.length > longestText) return unreadable('too long for a number', 'demasiado largo para un número')
  const read = readSigned(typed, kind, rules, system)
  if ('detail' in read) return { ok: false, reason: 'unreadable', example: rules.example[system], detail: read.detail }
  if (read.values.some(({ value }) => value < 0) && read.isMinus && !(options.allowNegative ?? rules.allowNegative)) return unreadable('this cannot be below zero', 'esto no puede ser menor que cero')
  if (kind === 'temperature' && read.values[0]!.value < absoluteZeroC) return unreadable('colder than anything can be', 'más frío de lo posible')
  if (kind === 'count' && !Number.isInteger(read.values[0]!.value)) return unreadable('a count is a whole number', 'una cantidad es un número entero')
  const [first] = read.values
  if (read.values.length > 1 && first!.value !== 0) return { ok: false, reason: 'ask', choices: read.values }
  const quantity = { kind, value: first!.value }
  return { ok: true, value: first!.value, echo: { feetInches: formatQuantity(quantity, { system: 'feetInches', language }), metric: formatQuantity(quantity, { system: 'metric', language }) } }
}

type Read = { values: { label: string; value: number }[]; isMinus: boolean } | { detail: Localized }

/** All values the text may stand for: one where the unit is clear. */
function readSigned(typed: string, kind: QuantityKind, rules: KindUnits, system: UnitSystem): Read {
  const isSlope = kind === 'slope' || kind === 'ratio'
  const onRun = isSlope ? riseOnRun.exec(typed) : null
  if (onRun) {
    const rise = readNumber(onRun[2]!)
    const run = readNumber(onRun[3]!)
    if (!rise.ok) return rise
    if (!run.ok) return run
    if (run.value === 0) return { detail: { en: 'nothing can be divided by 0', es: 'no se puede dividir entre 0' } }
    const sign = onRun[1] === '-' ? -1 : 1
    return { values: [{ label: typed, value: cleanSi((sign * rise.value) / run.value) }], isMinus: sign < 0 }
  }
  const match = signedNumber.exec(typed)
  if (!match) return { detail: { en: `"${typed}" is not a number with a unit`, es: `"${typed}" no es un número con unidad` } }
  const number = readNumber(match[2]!)
  if (!number.ok) return number
  const isMinus = match[1] === '-'
  const value = isMinus ? -number.value : number.value
  const key = unitKey(match[3]!)
  // A lone fraction without a unit is the slope itself: 1/50, not 1/50 of a percent.
  if (isSlope && key === '' && /^\d+\/\d+$/.test(match[2]!)) return { values: [{ label: typed, value: cleanSi(value) }], isMinus }
  // '73°' names no scale, so the field's own is meant.
  const isBare = key === '' || ((kind === 'temperature' || kind === 'temperatureChange') && (key === '°' || key === 'deg'))
  const meant = isBare ? rules.bare[system].map((label) => rules.units.find((unit) => unit.label === label)!) : rules.units.filter(({ names }) => names.includes(key))
  if (meant.length === 0) {
    const shown = match[3]!.trim()
    return { detail: { en: `"${shown}" is not a unit for this field`, es: `"${shown}" no es una unidad de este campo` } }
  }
  return { values: meant.map(({ label, toSi }) => ({ label: `${isMinus ? '−' : ''}${match[2]} ${label}`.trim(), value: cleanSi(toSi(value)) })), isMinus }
}
