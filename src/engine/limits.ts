/**
 * The starting limits of the checks (shared/tables/limits.json). A layout stores only what was
 * changed, with who and why; `limitWith` lays such a change over the start.
 */
import limitsJson from '../../shared/tables/limits.json' with { type: 'json' }
import type { Localized } from '../units/language.ts'
import type { QuantityKind } from '../units/quantity.ts'

export type SourceClass = 'published' | 'mechanics' | 'plate' | 'jobRule' | 'houseRule'
export type LimitBound = 'check' | 'fix'

export interface Limit {
  id: string
  title: Localized
  quantity: QuantityKind
  /** above: value > bound breaks it; atLeast: value ≥ bound; below: value < bound. */
  when: 'above' | 'atLeast' | 'below'
  /** SI; null where CHECK does not follow from this number. */
  check: number | null
  /** SI; null where FIX does not follow from this number. */
  fix: number | null
  sourceClass: SourceClass
  cite: string
  note?: Localized
  /** Further figures the check uses, by name with unit suffix. */
  params?: Readonly<Record<string, number>>
  /** True once a layout has replaced a bound. */
  isEdited?: boolean
}

export const startingLimits = limitsJson.limits as readonly Limit[]

/** A limit by its id. Fails: RangeError naming an id that is not in the table. */
export function limitOf(id: string): Limit {
  const limit = startingLimits.find((candidate) => candidate.id === id)
  if (!limit) throw new RangeError(`there is no limit ${id}`)
  return limit
}

/** A further figure of a limit. Fails: RangeError naming limit and figure where there is none. */
export function limitParam(limit: Limit, name: string): number {
  const value = limit.params?.[name]
  if (value === undefined) throw new RangeError(`limit ${limit.id} has no figure ${name}`)
  return value
}

/** The limit with the bounds of a layout laid over it. */
export function limitWith(id: string, changes: readonly { limitId: string; bound: LimitBound; value: number }[]): Limit {
  const mine = changes.filter((change) => change.limitId === id)
  return mine.reduce<Limit>((limit, { bound, value }) => ({ ...limit, [bound]: value, isEdited: true }), limitOf(id))
}

/** Which bound a value breaks: 'fix', 'check', or null for none. */
export function brokenBound(limit: Limit, value: number): LimitBound | null {
  const breaks = (bound: number | null): boolean => {
    if (bound === null) return false
    if (limit.when === 'below') return value < bound
    return limit.when === 'atLeast' ? value >= bound : value > bound
  }
  if (breaks(limit.fix)) return 'fix'
  return breaks(limit.check) ? 'check' : null
}
