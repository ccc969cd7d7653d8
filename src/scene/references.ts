import type { Localized } from '../messages/localized.ts'
import { JOB_ID, LAYOUT_ID, schemaOf, type YardDocument, type YardRecord } from './document.ts'
import { issuesOf, type Issue } from './issues.ts'
import { isItem } from './places.ts'

/** A reference that leads nowhere, with the record that holds it; `path` is inside the record. */
export interface ReferenceIssue extends Issue {
  recordId: string
  /** What it names that is not there or not of the kind needed; null for a loop. */
  targetId: string | null
}

type Records = Readonly<Record<string, YardRecord>>

const missing = (id: string, what: Localized): Localized => ({ en: `names ${id}, which is not ${what.en} in this file`, es: `nombra ${id}, que no es ${what.es} en este archivo` })
const aSetUp = { en: 'a set-up', es: 'un montaje' }
const aRun = { en: 'a pull path', es: 'un recorrido' }
const anItem = { en: 'an item with a place', es: 'un elemento con lugar' }
const aString = { en: 'a string', es: 'una sarta' }
const aRecord = { en: 'a record', es: 'un registro' }

/** References of one record that lead to nothing of the kind they need. */
function dangling(records: Records, record: YardRecord): ReferenceIssue[] {
  const found: ReferenceIssue[] = []
  const need = (path: string, id: string | null, fits: (target: YardRecord) => boolean, what: Localized): void => {
    const target = id === null ? undefined : records[id]
    if (id !== null && (target === undefined || !fits(target))) found.push({ recordId: record.id, targetId: id, path, message: missing(id, what) })
  }
  const ofKind = (kind: YardRecord['kind']) => (target: YardRecord): boolean => target.kind === kind
  if (record.kind === 'run') {
    need('setUpId', record.setUpId, ofKind('setUp'), aSetUp)
    need('targetId', record.targetId, () => true, aRecord)
  }
  if (record.kind === 'string') {
    need('setUpId', record.setUpId, ofKind('setUp'), aSetUp)
    need('runId', record.runId, ofKind('run'), aRun)
    need('joinedToId', record.joinedToId, ofKind('string'), aString)
  }
  if (record.kind === 'machine') need('setUpId', record.setUpId, ofKind('setUp'), aSetUp)
  if (record.kind === 'asSet') need('itemId', record.itemId, isItem, anItem)
  if (isItem(record) && record.place.at === 'onRun') need('place.runId', record.place.runId, ofKind('run'), aRun)
  if (isItem(record) && record.place.at === 'onItem') need('place.itemId', record.place.itemId, isItem, anItem)
  return found
}

/** Id and path of the record this one hangs on, for the kinds whose references must form a tree. */
function carrierOf(record: YardRecord): { id: string; path: string } | null {
  if (isItem(record)) return record.place.at === 'onItem' ? { id: record.place.itemId, path: 'place.itemId' } : null
  return record.kind === 'string' && record.joinedToId !== null ? { id: record.joinedToId, path: 'joinedToId' } : null
}

/** Every record that is itself part of a loop, with the loop by name. */
function loops(records: Records): ReferenceIssue[] {
  const found: ReferenceIssue[] = []
  const cleared = new Set<string>()
  for (const start of Object.values(records)) {
    const chain: string[] = []
    for (let at: YardRecord | undefined = start; at !== undefined && !cleared.has(at.id); ) {
      if (chain.includes(at.id)) {
        const loop = chain.slice(chain.indexOf(at.id))
        const names = [...loop, at.id].join(' → ')
        for (const id of loop) found.push({ recordId: id, targetId: null, path: carrierOf(records[id]!)?.path ?? '', message: { en: `goes round in a loop: ${names}`, es: `forma un círculo: ${names}` } })
        break
      }
      chain.push(at.id)
      const next = carrierOf(at)
      at = next === null ? undefined : records[next.id]
    }
    for (const id of chain) cleared.add(id)
  }
  return found
}

/** References that lead nowhere or go round in a loop, each by the record that holds it. */
export const referenceIssues = (records: Records): ReferenceIssue[] => [...Object.values(records).flatMap((record) => dangling(records, record)), ...loops(records)]

/**
 * Everything that makes a document unfit to be written and read again: a record that does not fit its schema or is filed
 * under another id, a missing layout or job, a reference that leads nowhere. Path: `id.field`. Empty for a sound document.
 */
export function documentIssues(document: YardDocument): Issue[] {
  const { records } = document
  const frame = ([[LAYOUT_ID, 'layout'], [JOB_ID, 'job']] as const).flatMap(([id, kind]) => (records[id]?.kind === kind ? [] : [{ path: id, message: { en: 'is missing', es: 'falta' } }]))
  const own = Object.entries(records).flatMap(([id, record]): Issue[] => {
    if (record.id !== id) return [{ path: id, message: { en: `holds the record ${record.id}`, es: `contiene el registro ${record.id}` } }]
    const parsed = schemaOf(record.kind)?.safeParse(record)
    if (parsed === undefined) return [{ path: `${id}.kind`, message: { en: `${record.kind} is not known here`, es: `${record.kind} no se conoce aquí` } }]
    return parsed.success ? [] : issuesOf(parsed.error, record, [id])
  })
  return [...frame, ...own, ...referenceIssues(records).map(({ recordId, path, message }) => ({ path: `${recordId}.${path}`, message }))]
}
