import type { FieldDefinition } from '../../scene/kindDefinition.ts'
import { kindOf, type PlacedRecord } from '../../scene/kinds/index.ts'
import type { Basis } from '../../scene/parts.ts'

/** Value at a dotted path of a record; undefined where the path leads nowhere. */
export const valueAt = (record: unknown, path: string): unknown =>
  path.split('.').reduce<unknown>((found, key) => (typeof found === 'object' && found !== null ? (found as Record<string, unknown>)[key] : undefined), record)

/** Basis of the figure a path ends in (`figures.massKg.value` → that of `figures.massKg`); null for plain fields. */
export const basisAt = (record: unknown, path: string): Basis | null => {
  if (!path.endsWith('.value')) return null
  const basis = valueAt(record, path.slice(0, -'.value'.length) + '.basis')
  return basis === 'typical' || basis === 'plate' || basis === 'measured' || basis === 'jobRule' ? basis : null
}

/** Equal as written; sets of phases are lists and never the same object. */
const isSame = (a: unknown, b: unknown): boolean => a === b || (Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((one, i) => one === b[i]))

export interface SharedField {
  field: FieldDefinition
  /** The common value; `isMixed` where they differ. */
  value: unknown
  isMixed: boolean
}

/** Fields every one of the records has, with their common value, in the order of the first one's kind. */
export const sharedFields = (records: readonly PlacedRecord[]): readonly SharedField[] => {
  const [first, ...others] = records
  if (first === undefined) return []
  const inputOf = (field: FieldDefinition): string => JSON.stringify(field.input)
  return (kindOf(first.kind)?.fields ?? [])
    .filter((field) => others.every((other) => kindOf(other.kind)?.fields.some((candidate) => candidate.path === field.path && inputOf(candidate) === inputOf(field))))
    .map((field) => {
      const value = valueAt(first, field.path)
      return { field, value, isMixed: others.some((other) => !isSame(valueAt(other, field.path), value)) }
    })
}
