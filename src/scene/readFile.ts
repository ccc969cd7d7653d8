import type { z } from 'zod'
import type { Localized } from '../messages/localized.ts'
import { FILE_VERSION, JOB_ID, LAYOUT_ID, layoutOf, schemaOf, type YardDocument, type YardRecord } from './document.ts'
import { FILE_FORMAT, sections } from './fileForm.ts'
import { issuesOf, type Issue } from './issues.ts'
import { migrate, migrations as released, type Json, type Migration } from './migrations/index.ts'
import { referenceIssues } from './references.ts'

/** How large a file may be before it is looked at. */
export interface ReadLimits {
  chars: number
  depth: number
  records: number
}

export const readLimits: ReadLimits = { chars: 20_000_000, depth: 32, records: 20_000 }

export interface ReadOptions {
  limits?: Partial<ReadLimits>
  /** For tests of the framework; the app reads with the released ones. */
  migrations?: readonly Migration[]
  currentVersion?: number
}

/** What can be opened of a file with bad records: only as a new copy, so that the file's own layout is never overwritten with less. */
export interface Salvage {
  dropped: readonly { path: string; why: Localized }[]
  openAs: (layoutId: string) => YardDocument
}

export type ReadResult =
  | { ok: true; document: YardDocument; notes: readonly Localized[] }
  | { ok: false; issues: readonly Issue[]; newerVersion?: number; salvage?: Salvage }

const refused = (path: string, en: string, es: string): ReadResult => ({ ok: false, issues: [{ path, message: { en, es } }] })

/**
 * Reads the text of a file. Never throws; what is refused is refused by path and reason, in this order: size and depth,
 * JSON, envelope, version, migration, strict validation of every record, references.
 */
export function readFile(text: string, options: ReadOptions = {}): ReadResult {
  const limits = { ...readLimits, ...options.limits }
  if (text.length > limits.chars) return refused('', `the file has ${text.length} characters; more than ${limits.chars} are not read`, `el archivo tiene ${text.length} caracteres; no se leen más de ${limits.chars}`)
  if (depthOf(text, limits.depth) > limits.depth) return refused('', `groups in groups go deeper than ${limits.depth}`, `hay grupos dentro de grupos a más de ${limits.depth} niveles`)
  let json: unknown
  try {
    json = JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text)
  } catch (error) {
    const where = /line (\d+) column (\d+)/.exec(error instanceof Error ? error.message : '')
    return where === null
      ? refused('', 'is not JSON text: it ends too early or is something else', 'no es texto JSON: está cortado o es otra cosa')
      : refused('', `is not JSON text: line ${where[1]}, column ${where[2]}`, `no es texto JSON: línea ${where[1]}, columna ${where[2]}`)
  }
  return readForm(json, options)
}

/** Deepest nesting of brackets outside strings; stops counting beyond `most`. */
function depthOf(text: string, most: number): number {
  let [depth, deepest, inString] = [0, 0, false]
  for (let i = 0; i < text.length && deepest <= most; i++) {
    const c = text.charCodeAt(i)
    if (inString) {
      if (c === 0x5c) i++
      else if (c === 0x22) inString = false
    } else if (c === 0x22) inString = true
    else if (c === 0x7b || c === 0x5b) deepest = Math.max(deepest, ++depth)
    else if (c === 0x7d || c === 0x5d) depth--
  }
  return deepest
}

type Group = Record<string, unknown>
const isGroup = (value: unknown): value is Group => typeof value === 'object' && value !== null && !Array.isArray(value)

/** The same from parsed JSON, for what storage keeps in the form of the file. */
export function readForm(json: unknown, options: ReadOptions = {}): ReadResult {
  const current = options.currentVersion ?? FILE_VERSION
  if (!isGroup(json)) return refused('', 'is not a Stringyard file', 'no es un archivo de Stringyard')
  if (json['format'] !== FILE_FORMAT) return refused('format', `must be "${FILE_FORMAT}": this is not a Stringyard file`, `debe ser "${FILE_FORMAT}": no es un archivo de Stringyard`)
  const version = json['fileVersion']
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) return refused('fileVersion', 'must be a whole number from 1', 'debe ser un número entero desde 1')
  if (version > current) {
    const message = {
      en: `was written by a newer Stringyard (file version ${version}; this one reads up to ${current}); update the app to open it`,
      es: `fue escrito por un Stringyard más nuevo (versión de archivo ${version}; este lee hasta ${current}); actualice la aplicación para abrirlo`,
    }
    return { ok: false, newerVersion: version, issues: [{ path: 'fileVersion', message }] }
  }
  let file: Group = json
  try {
    file = migrate(json as { [key: string]: Json }, current, options.migrations ?? released)
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    return refused('fileVersion', `version ${version} could not be brought up to ${current}: ${reason}`, `la versión ${version} no se pudo actualizar a ${current}: ${reason}`)
  }
  const notes = version === current ? [] : [{ en: `Brought up from file version ${version} to ${current}.`, es: `Actualizado de la versión de archivo ${version} a la ${current}.` }]
  return validated(file, { ...readLimits, ...options.limits }, notes)
}

interface Entry {
  path: string
  /** Id as the file says it, also where the record was refused. */
  id: unknown
  record: YardRecord | null
  issues: readonly Issue[]
}

function parsedAs(kind: string, raw: unknown, path: string, added: Group): Entry {
  if (!isGroup(raw)) return { path, id: null, record: null, issues: [{ path, message: { en: 'must be a group of fields { … }', es: 'debe ser un grupo de campos { … }' } }] }
  const own = Object.keys(added).filter((key) => Object.hasOwn(raw, key))
  const twice = own.map((key) => ({ path: `${path}.${key}`, message: { en: 'is not a field known here', es: 'no es un campo conocido aquí' } }))
  const whole: Group & { id?: unknown } = { ...raw, ...added }
  const parsed = (schemaOf(kind) as z.ZodType).safeParse(whole)
  const issues = parsed.success ? twice : [...twice, ...issuesOf(parsed.error, whole).map((issue) => ({ ...issue, path: issue.path === '' ? path : `${path}.${issue.path}` }))]
  return { path, id: whole.id, record: issues.length === 0 ? (parsed.data as YardRecord) : null, issues }
}

function validated(file: Group, limits: ReadLimits, notes: readonly Localized[]): ReadResult {
  const known = new Set(['format', 'fileVersion', 'layout', 'job', ...sections.map(({ name }) => name)])
  const envelope: Issue[] = Object.keys(file).filter((key) => !known.has(key)).map((path) => ({ path, message: { en: 'is not a field known here', es: 'no es un campo conocido aquí' } }))
  const frame = ([['layout', LAYOUT_ID], ['job', JOB_ID]] as const).map(([kind, id]) => (file[kind] === undefined ? { path: kind, id, record: null, issues: [{ path: kind, message: { en: 'is missing', es: 'falta' } }] } : parsedAs(kind, file[kind], kind, { id, kind })))
  const entries: Entry[] = []
  for (const { name, kinds } of sections) {
    const list = file[name] ?? []
    if (!Array.isArray(list)) {
      envelope.push({ path: name, message: { en: 'must be a list [ … ]', es: 'debe ser una lista [ … ]' } })
      continue
    }
    if (entries.length + list.length > limits.records) return refused(name, `brings the file above ${limits.records} records`, `lleva el archivo a más de ${limits.records} registros`)
    list.forEach((raw: unknown, i) => entries.push(listed(raw, `${name}[${i}]`, kinds)))
  }
  const seen = new Set<string>([LAYOUT_ID, JOB_ID])
  const unique = entries.map((entry) => {
    if (entry.record === null) return entry
    const { id } = entry.record
    if (!seen.has(id)) {
      seen.add(id)
      return entry
    }
    return { path: entry.path, id: null, record: null, issues: [{ path: `${entry.path}.id`, message: { en: `${id} is there twice`, es: `${id} está dos veces` } }] }
  })
  return concluded(envelope, frame, unique, notes)
}

function listed(raw: unknown, path: string, kinds: readonly string[]): Entry {
  const [only, ...others] = kinds
  if (only !== undefined && others.length === 0) return parsedAs(only, raw, path, { kind: only })
  const kind = isGroup(raw) ? raw['kind'] : undefined
  if (isGroup(raw) && (typeof kind !== 'string' || !kinds.includes(kind))) {
    const shown = kind === undefined ? 'nothing' : JSON.stringify(kind).slice(0, 40)
    return { path, id: raw['id'], record: null, issues: [{ path: `${path}.kind`, message: { en: `${shown} is not known here; must be one of: ${kinds.join(', ')}`, es: `${kind === undefined ? 'nada' : shown} no se conoce aquí; debe ser uno de: ${kinds.join(', ')}` } }] }
  }
  return parsedAs(typeof kind === 'string' ? kind : '', raw, path, {})
}

function concluded(envelope: readonly Issue[], frame: readonly Entry[], entries: readonly Entry[], notes: readonly Localized[]): ReadResult {
  const good = new Map<string, Entry>([...frame, ...entries].flatMap((entry) => (entry.record === null ? [] : [[entry.record.id, entry] as const])))
  const recordsOf = (): Record<string, YardRecord> => Object.fromEntries([...good].flatMap(([id, { record }]) => (record === null ? [] : [[id, record]])))
  const issues: Issue[] = [...envelope, ...frame.flatMap((entry) => entry.issues), ...entries.flatMap((entry) => entry.issues)]
  const isFrameSound = envelope.length === 0 && frame.every(({ record }) => record !== null)
  const dropped = entries.flatMap((entry) => (entry.issues[0] === undefined ? [] : [{ path: entry.path, why: whyOf(entry.path, entry.issues[0]) }]))
  // A record that names one that is dropped goes too, until what is left holds together. It is no issue of its own.
  const refusedIds = new Set(entries.flatMap(({ record, id }) => (record === null ? [id] : [])))
  for (let isFirst = true; ; isFirst = false) {
    const bad = referenceIssues(recordsOf())
    if (bad.length === 0) break
    for (const { recordId, targetId, path, message } of bad) {
      const entry = good.get(recordId)
      if (entry === undefined) continue
      const issue = { path: `${entry.path}.${path}`, message }
      if (isFirst && !refusedIds.has(targetId)) issues.push(issue)
      dropped.push({ path: entry.path, why: whyOf(entry.path, issue) })
    }
    for (const { recordId } of bad) good.delete(recordId)
  }
  if (issues.length === 0) return { ok: true, document: { records: recordsOf() }, notes }
  if (!isFrameSound) return { ok: false, issues }
  const inOrder = entries.flatMap(({ path }) => dropped.find((one) => one.path === path) ?? [])
  return { ok: false, issues, salvage: { dropped: inOrder, openAs: (layoutId) => asCopy({ records: recordsOf() }, layoutId) } }
}

const whyOf = (entryPath: string, issue: Issue): Localized => {
  const field = issue.path.slice(entryPath.length).replace(/^\./, '')
  return field === '' ? issue.message : { en: `${field} ${issue.message.en}`, es: `${field} ${issue.message.es}` }
}

/** The same document under another layoutId: a copy of its own, that never writes over the one it came from. */
export const asCopy = (document: YardDocument, layoutId: string, title?: string): YardDocument => {
  const layout = layoutOf(document)
  return { records: { ...document.records, [LAYOUT_ID]: { ...layout, layoutId, title: title ?? layout.title } } }
}
