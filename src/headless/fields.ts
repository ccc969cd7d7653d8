/** Strict reading of a parsed JSON value: every field is named, unknown ones are refused, numbers are finite. */

/** What is wrong with an input, with the path of the field. */
export class InputRefused extends Error {}

/** Reads one value; `path` is where it stands, as 'path[1].radius'. */
export type Reader<T> = (value: unknown, path: string) => T

/** Coordinates, loads and the like beyond this are a mistake of units or of typing. */
const LARGEST_NUMBER = 1e15

export interface NumberBounds {
  readonly above?: number
  readonly atLeast?: number
  readonly atMost?: number
}

export function numberField(bounds: NumberBounds = {}): Reader<number> {
  return (value, path) => {
    if (typeof value !== 'number') throw new InputRefused(`${path} is ${describe(value)}, must be a number`)
    if (!Number.isFinite(value)) throw new InputRefused(`${path} is not a finite number`)
    if (Math.abs(value) > LARGEST_NUMBER) throw new InputRefused(`${path} is ${value}, larger than ${LARGEST_NUMBER}`)
    if (bounds.above !== undefined && value <= bounds.above) throw new InputRefused(`${path} is ${value}, must be above ${bounds.above}`)
    if (bounds.atLeast !== undefined && value < bounds.atLeast) throw new InputRefused(`${path} is ${value}, must be at least ${bounds.atLeast}`)
    if (bounds.atMost !== undefined && value > bounds.atMost) throw new InputRefused(`${path} is ${value}, must be at most ${bounds.atMost}`)
    return value
  }
}

export const textField: Reader<string> = (value, path) => {
  if (typeof value !== 'string') throw new InputRefused(`${path} is ${describe(value)}, must be text`)
  if (value.length > 1000) throw new InputRefused(`${path} is longer than 1000 characters`)
  return value
}

/** What a case calls itself: text, or a number that is given back as it came. */
export const nameField: Reader<string | number> = (value, path) => (typeof value === 'number' ? numberField()(value, path) : textField(value, path))

/** Exactly one of the given texts. */
export function oneOf<T extends string>(...choices: readonly T[]): Reader<T> {
  return (value, path) => {
    const found = choices.find((choice) => choice === value)
    if (found === undefined) throw new InputRefused(`${path} is ${describe(value)}, must be ${choices.map((c) => `"${c}"`).join(' or ')}`)
    return found
  }
}

export function listField<T>(item: Reader<T>, size: { readonly atLeast: number; readonly atMost: number }): Reader<T[]> {
  return (value, path) => {
    if (!Array.isArray(value)) throw new InputRefused(`${path} is ${describe(value)}, must be a list`)
    if (value.length < size.atLeast) throw new InputRefused(`${path} has ${value.length} entries, needs at least ${size.atLeast}`)
    if (value.length > size.atMost) throw new InputRefused(`${path} has ${value.length} entries, at most ${size.atMost} are read`)
    return value.map((entry, i) => item(entry, `${path}[${i}]`))
  }
}

type Readers = Readonly<Record<string, Reader<unknown>>>
type Values<R extends Readers> = { [K in keyof R]: ReturnType<R[K]> }

/** An object with all `required` fields, any of the `optional` ones, and no other. A null is refused like any wrong value. */
export function objectField<R extends Readers, O extends Readers>(required: R, optional: O): Reader<Values<R> & Partial<Values<O>>> {
  return (value, path) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) {
      throw new InputRefused(`${path || 'the case'} is ${describe(value)}, must be an object`)
    }
    const at = (key: string): string => (path === '' ? key : `${path}.${key}`)
    const given = new Map(Object.entries(value))
    for (const key of given.keys()) {
      if (!Object.hasOwn(required, key) && !Object.hasOwn(optional, key)) throw new InputRefused(`${at(key).slice(0, 200)} is not a known field`)
    }
    const read: Record<string, unknown> = {}
    for (const [key, reader] of Object.entries(required)) {
      if (!given.has(key)) throw new InputRefused(`${at(key)} is missing`)
      read[key] = reader(given.get(key), at(key))
    }
    for (const [key, reader] of Object.entries(optional)) {
      if (given.has(key)) read[key] = reader(given.get(key), at(key))
    }
    return read as Values<R> & Partial<Values<O>>
  }
}

function describe(value: unknown): string {
  if (value === null) return 'null'
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'object') return 'an object'
  if (value === undefined) return 'missing'
  const text = JSON.stringify(value)
  return text.length > 40 ? `${text.slice(0, 40)}…` : text
}
