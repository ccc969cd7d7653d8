/**
 * The answer of an engine function that may lack an input. Unknown is never 0 and never passes
 * silently: the caller gets the names of the fields that are missing, or why a table has no value.
 */
import type { Localized } from '../units/language.ts'

export interface Known<T> {
  status: 'ok'
  value: T
}

/** Inputs that are null. Field names are those of the function's input. */
export interface Missing {
  status: 'missing'
  fields: string[]
}

/** The inputs are known but no table or formula covers them. */
export interface Uncovered {
  status: 'uncovered'
  field: string
  reason: Localized
}

export type Outcome<T> = Known<T> | Missing | Uncovered

export function known<T>(value: T): Known<T> {
  return { status: 'ok', value }
}

export function uncovered(field: string, en: string, es: string): Uncovered {
  return { status: 'uncovered', field, reason: { en, es } }
}

/** The missing answer for every null among the given inputs, or undefined when all are known. */
export function missingAmong(inputs: Readonly<Record<string, unknown>>): Missing | undefined {
  const fields = Object.entries(inputs).filter(([, value]) => value === null || value === undefined).map(([field]) => field)
  return fields.length > 0 ? { status: 'missing', fields } : undefined
}

/** The value, or null where there is none. */
export function valueOrNull<T>(outcome: Outcome<T>): T | null {
  return outcome.status === 'ok' ? outcome.value : null
}

/** Throws a RangeError naming the field where a number is not finite or not above (or at) the bound. */
export function requireNumber(name: string, value: number, bound: { above?: number; atLeast?: number; atMost?: number } = {}): void {
  if (!Number.isFinite(value)) throw new RangeError(`${name} is ${value}, not a finite number`)
  if (bound.above !== undefined && value <= bound.above) throw new RangeError(`${name} is ${value}, must be above ${bound.above}`)
  if (bound.atLeast !== undefined && value < bound.atLeast) throw new RangeError(`${name} is ${value}, must be at least ${bound.atLeast}`)
  if (bound.atMost !== undefined && value > bound.atMost) throw new RangeError(`${name} is ${value}, must be at most ${bound.atMost}`)
}
