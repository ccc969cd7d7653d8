/** Fields of one record before and after, in words. */
import type { Localized } from '../messages/localized.ts'
import type { TextValue } from '../messages/render.ts'
import type { ChangeField } from './changeFields.ts'
import type { ChangeGroup, ChangeLine } from './changeLine.ts'
import { pathParts } from './commands/fields.ts'
import type { YardRecord } from './document.ts'

const notKnown: Localized = { en: 'not known', es: 'sin saber' }
const nothing: Localized = { en: 'nothing', es: 'nada' }
const yes: Localized = { en: 'yes', es: 'sí' }
const no: Localized = { en: 'no', es: 'no' }

const basisNames: Readonly<Record<string, Localized>> = {
  typical: { en: 'typical', es: 'típico' }, plate: { en: 'from the plate', es: 'de la placa' }, measured: { en: 'measured', es: 'medido' }, jobRule: { en: 'rule of the job', es: 'regla del trabajo' },
}

/** Value at a dotted path of a record; undefined where it has none. */
export function valueAt(record: YardRecord, path: string): unknown {
  let value: unknown = record
  for (const part of pathParts(path)) value = typeof value === 'object' && value !== null ? (value as Record<string | number, unknown>)[part] : undefined
  return value
}

const isSame = (one: unknown, other: unknown): boolean => JSON.stringify(one ?? null) === JSON.stringify(other ?? null)

function inWords(value: unknown, { input }: ChangeField): TextValue {
  if (value === null || value === undefined) return input.as === 'choice' ? (input.choices.find((choice) => choice.value === null)?.label ?? notKnown) : input.as === 'text' ? nothing : notKnown
  if (input.as === 'quantity' && typeof value === 'number') return { kind: input.kind, value }
  if (input.as === 'choice') return input.choices.find((choice) => choice.value === value)?.label ?? String(value)
  if (input.as === 'yesNo') return value === true ? yes : no
  return value === '' ? nothing : String(value)
}

/** Left or right: what changes it changes sides. */
const isSide = ({ input }: ChangeField): boolean => input.as === 'choice' && input.choices.filter(({ value }) => value === 'L' || value === 'R').length === 2

/** One line a field that differs, with its old and new value; a figure that only comes from elsewhere now says from where. */
export function fieldChanges(before: YardRecord, after: YardRecord, fields: readonly ChangeField[], group: ChangeGroup): ChangeLine[] {
  return fields.flatMap((field): ChangeLine[] => {
    const [was, is] = [valueAt(before, field.path), valueAt(after, field.path)]
    if (isSame(was, is)) return basisChange(before, after, field, group)
    if (field.input.as === 'any') return [{ group, text: { en: '{field} changed', es: 'cambió: {field}' }, values: { field: field.label } }]
    const values = { field: field.label, from: inWords(was, field), to: inWords(is, field) }
    // The job and the layout are one each: their fields need no name before them.
    const about = group === 'field' ? { en: '{what}, ', es: '{what}, ' } : { en: '', es: '' }
    if (isSide(field)) return [{ group, text: { en: `{what} swapped side: {field} {from} → {to}`, es: `{what} cambió de lado: {field} {from} → {to}` }, values }]
    return [{ group, text: { en: `${about.en}{field}: {from} → {to}`, es: `${about.es}{field}: {from} → {to}` }, values }]
  })
}

function basisChange(before: YardRecord, after: YardRecord, field: ChangeField, group: ChangeGroup): ChangeLine[] {
  if (!field.path.endsWith('.value')) return []
  const path = field.path.replace(/value$/, 'basis')
  const [was, is] = [valueAt(before, path), valueAt(after, path)]
  if (isSame(was, is)) return []
  return [{ group, text: { en: '{what}, {field}: {to}, now {basis}', es: '{what}, {field}: {to}, ahora {basis}' }, values: { field: field.label, to: inWords(valueAt(after, field.path), field), basis: basisNames[String(is)] ?? String(is) } }]
}

/** Parts told by the other lines. */
const toldElsewhere = ['id', 'kind', 'place', 'points', 'height', 'locked']

/** Whether anything differs that no line tells: what is left once the fields and places told are set alike. */
export function restChanged(before: YardRecord, after: YardRecord, fields: readonly ChangeField[]): boolean {
  return JSON.stringify(rest(before, fields)) !== JSON.stringify(rest(after, fields))
}

function rest(record: YardRecord, fields: readonly ChangeField[]): unknown {
  // Records are plain JSON.
  const copy = JSON.parse(JSON.stringify(record)) as Record<string, unknown>
  const drop = (parts: readonly (string | number)[]): void => {
    let holder: unknown = copy
    for (const part of parts.slice(0, -1)) holder = typeof holder === 'object' && holder !== null ? (holder as Record<string | number, unknown>)[part] : undefined
    if (typeof holder === 'object' && holder !== null) delete (holder as Record<string | number, unknown>)[parts.at(-1)!]
  }
  for (const path of [...toldElsewhere, ...fields.flatMap(({ path: one }) => (one.endsWith('.value') ? [one, one.replace(/value$/, 'basis')] : [one]))]) drop(pathParts(path))
  return withoutEmpty(copy)
}

/** A group emptied by the fields told is as good as none: null and {} are alike. */
const withoutEmpty = (value: unknown): unknown => {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value ?? undefined
  const entries = Object.entries(value).flatMap(([key, one]) => {
    const kept = withoutEmpty(one)
    return kept === undefined ? [] : [[key, kept] as const]
  })
  return entries.length === 0 ? undefined : Object.fromEntries(entries)
}
