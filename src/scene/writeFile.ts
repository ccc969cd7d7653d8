import { FILE_VERSION, schemaOf, type YardDocument, type YardRecord } from './document.ts'
import { formOfRecords, type FileForm } from './fileForm.ts'
import { rounded } from './rounding.ts'
import { sha256Hex } from './sha256.ts'

/**
 * The document in the form of the file: format, version, layout, job, then the lists of `sections` (empty ones too, so
 * that a reader of the file sees what there is). Keys follow the schema of each record, free keys the alphabet.
 * `exact` keeps every digit; a file rounds to 1e-9.
 */
export function fileFormOf(document: YardDocument, { exact = false }: { exact?: boolean } = {}): FileForm {
  const ordered = Object.fromEntries(Object.entries(document.records).map(([id, record]) => [id, inOrder(record)]))
  return plain(formOfRecords(ordered, FILE_VERSION), exact) as FileForm
}

/** Id and kind, then the keys in the order of the schema. A record that does not fit its schema is written as it is: saving loses nothing. */
const inOrder = (record: YardRecord): YardRecord => {
  const parsed = schemaOf(record.kind)?.safeParse(record)
  return { id: record.id, kind: record.kind, ...((parsed?.success === true ? parsed.data : record) as object) } as YardRecord
}

/** Keys that a person may have made up: their order must not depend on which came first. */
const freeKeyed = new Set(['extras', 'unitOverrides'])

function plain(value: unknown, exact: boolean, key = ''): unknown {
  if (typeof value === 'number') return exact ? value : rounded(value)
  if (Array.isArray(value)) return value.map((one: unknown) => plain(one, exact))
  if (typeof value !== 'object' || value === null) return value
  const entries = Object.entries(value).filter(([, one]) => one !== undefined)
  if (freeKeyed.has(key)) entries.sort(([a], [b]) => (a < b ? -1 : 1))
  return Object.fromEntries(entries.map(([name, one]) => [name, plain(one, exact, name)]))
}

/** Longest line a group of fields or a list is kept on. */
const LINE_CHARS = 116

/** JSON with 2 spaces, where short groups and lists stay on one line: a figure, a point, a place. */
function layOut(value: unknown, indent: string, used: number): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  const one = oneLine(value)
  if (indent.length + used + one.length <= LINE_CHARS && indent !== '') return one
  const inner = `${indent}  `
  if (Array.isArray(value)) return value.length === 0 ? '[]' : `[\n${value.map((entry: unknown) => inner + layOut(entry, inner, 0)).join(',\n')}\n${indent}]`
  const entries = Object.entries(value)
  return `{\n${entries.map(([key, entry]) => `${inner}${JSON.stringify(key)}: ${layOut(entry, inner, key.length + 4)}`).join(',\n')}\n${indent}}`
}

function oneLine(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  if (Array.isArray(value)) return `[${value.map(oneLine).join(', ')}]`
  const entries = Object.entries(value)
  return entries.length === 0 ? '{}' : `{ ${entries.map(([key, entry]) => `${JSON.stringify(key)}: ${oneLine(entry)}`).join(', ')} }`
}

/** Text of a `.yard.json` file: stable key order, numbers to 1e-9, laid out for a person to read and for a diff. */
export const writeFile = (document: YardDocument): string => `${layOut(fileFormOf(document), '', 0)}\n`

/**
 * Hash of what the file would hold: SHA-256 of its text, hex. Equal for documents that differ only in the order their
 * kinds were added, in digits below 1e-9, or in the layoutId of a copy.
 */
export function documentHash(document: YardDocument): string {
  const form = fileFormOf(document)
  return sha256Hex(JSON.stringify({ ...form, layout: { ...(form['layout'] as object), layoutId: null } }))
}
