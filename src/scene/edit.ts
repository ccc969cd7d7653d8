import type { Localized } from '../messages/localized.ts'
import type { TextValue } from '../messages/render.ts'
import type { YardDocument, YardRecord } from './document.ts'

/**
 * What a command returns: records to write (whole) and ids to take away. Commands are pure:
 * `(document, args, env) → Edit`. Validity of the whole document is checked after it, not by each.
 */
export interface Edit {
  put: readonly YardRecord[]
  remove: readonly string[]
}

/** What only the edge knows: fresh ids and the time. */
export interface Env {
  newId: (prefix: string) => string
  /** ISO time of now. */
  now: () => string
}

/** The name of a step as undo and redo say it, e.g. 'move E3'. */
export interface StepLabel {
  text: Localized
  values?: Readonly<Record<string, TextValue>> | undefined
}

/** Difference between two documents, enough to go both ways. */
export interface DocumentDiff {
  added: Record<string, YardRecord>
  removed: Record<string, YardRecord>
  updated: Record<string, readonly [from: YardRecord, to: YardRecord]>
  /** Order of ids before and after, only where it changed in other ways than adding at the end. */
  order?: readonly [from: readonly string[], to: readonly string[]]
}

export const noEdit: Edit = { put: [], remove: [] }

export const mergeEdits = (...edits: readonly Edit[]): Edit => ({ put: edits.flatMap((e) => e.put), remove: edits.flatMap((e) => e.remove) })

/** New document with the edit applied; the old one is untouched, unchanged records are shared. */
export const applyEdit = (document: YardDocument, edit: Edit): YardDocument => {
  if (edit.put.length === 0 && edit.remove.length === 0) return document
  const records = { ...document.records }
  for (const id of edit.remove) delete records[id]
  for (const record of edit.put) records[record.id] = record
  return { records }
}

export const isEmptyDiff = (diff: DocumentDiff): boolean =>
  diff.order === undefined && [diff.added, diff.removed, diff.updated].every((part) => Object.keys(part).length === 0)

export const diffDocuments = (from: YardDocument, to: YardDocument): DocumentDiff => {
  const diff: DocumentDiff = { added: {}, removed: {}, updated: {} }
  for (const [id, record] of Object.entries(to.records)) {
    const before = from.records[id]
    if (before === undefined) diff.added[id] = record
    else if (before !== record) diff.updated[id] = [before, record]
  }
  for (const [id, record] of Object.entries(from.records)) if (to.records[id] === undefined) diff.removed[id] = record
  const fromOrder = Object.keys(from.records)
  const toOrder = Object.keys(to.records)
  const kept = fromOrder.filter((id) => to.records[id] !== undefined)
  const appendedInOrder = kept.every((id, i) => toOrder[i] === id)
  if (!appendedInOrder || Object.keys(diff.removed).length > 0) diff.order = [fromOrder, toOrder]
  return diff
}

/** Applies a diff forwards, or backwards with `reverse`. Diff and document must belong together. */
export const applyDiff = (document: YardDocument, diff: DocumentDiff, reverse = false): YardDocument => {
  const records: Record<string, YardRecord> = { ...document.records }
  const [gone, come] = reverse ? [diff.added, diff.removed] : [diff.removed, diff.added]
  for (const id of Object.keys(gone)) delete records[id]
  Object.assign(records, come)
  for (const [id, [from, to]] of Object.entries(diff.updated)) records[id] = reverse ? from : to
  const order = diff.order?.[reverse ? 0 : 1]
  if (order === undefined) return { records }
  // What came in beside the history (the release log) is in no order list and stays, at the end.
  const listed = new Set(order)
  const ids = [...order, ...Object.keys(records).filter((id) => !listed.has(id))]
  return { records: Object.fromEntries(ids.flatMap((id) => (records[id] === undefined ? [] : [[id, records[id]] as const]))) }
}
