import type { YardDocument } from '../../scene/document.ts'
import { applyDiff, type DocumentDiff } from '../../scene/edit.ts'
import type { HistoryEntry } from '../../state/documentStore.ts'
import type { VersionStamp } from './versions.ts'

/** A layout as it was when the journal was last folded in. */
export interface Head {
  layoutId: string
  title: string
  changedAt: string
  exampleName: string | null
  /** Version of the records below; absent: 1. */
  stamp?: VersionStamp
  /** Journal entries up to this number are folded in. Order is by number, never by the clock. */
  seq: number
  document: YardDocument
  past: readonly HistoryEntry[]
  future: readonly HistoryEntry[]
}

/** How one list of steps became the next: dropped at the front (the cap), kept, added at the end. */
export interface ListChange {
  drop: number
  keep: number
  add: readonly HistoryEntry[]
}

export interface JournalEntry {
  layoutId: string
  seq: number
  diff: DocumentDiff
  past: ListChange
  future: ListChange
  title: string
  at: string
  checksum: string
}

/** FNV-1a over the text, twice with different seeds: tells a torn entry from a whole one. */
export const checksumOf = (value: unknown): string => {
  const text = JSON.stringify(value)
  let [a, b] = [0x811c9dc5, 0x9747b28c]
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i)
    a = Math.imul(a ^ code, 0x01000193) >>> 0
    b = Math.imul(b ^ (code + i), 0x01000193) >>> 0
  }
  return a.toString(16).padStart(8, '0') + b.toString(16).padStart(8, '0')
}

export const sealed = (entry: Omit<JournalEntry, 'checksum'>): JournalEntry => ({ ...entry, checksum: checksumOf(entry) })

const isWhole = (value: unknown): value is JournalEntry => {
  if (typeof value !== 'object' || value === null || !('checksum' in value)) return false
  const { checksum, ...rest } = value as JournalEntry
  return checksum === checksumOf(rest)
}

export interface History {
  document: YardDocument
  past: readonly HistoryEntry[]
  future: readonly HistoryEntry[]
}

/** The change between two lists of steps; entries are told apart by identity. */
export const changeOf = (before: readonly HistoryEntry[], after: readonly HistoryEntry[]): ListChange => {
  const first = after[0]
  const at = first === undefined ? -1 : before.indexOf(first)
  const drop = at < 0 ? before.length : at
  let keep = 0
  while (keep < after.length && drop + keep < before.length && before[drop + keep] === after[keep]) keep++
  return { drop: keep === 0 ? 0 : drop, keep, add: after.slice(keep) }
}

const changed = (list: readonly HistoryEntry[], { drop, keep, add }: ListChange): readonly HistoryEntry[] => [...list.slice(drop, drop + keep), ...add]

export interface Replayed extends History {
  seq: number
  title: string
  changedAt: string
  /** Edits at the end that could not be read back. */
  dropped: number
}

/** Head and journal together. The first torn, missing or foreign entry ends it; what follows is dropped and counted. */
export const replay = (head: Head, entries: readonly unknown[]): Replayed => {
  let state: Replayed = { document: head.document, past: head.past, future: head.future, seq: head.seq, title: head.title, changedAt: head.changedAt, dropped: 0 }
  const later = entries.filter((entry) => !(isWhole(entry) && entry.seq <= head.seq))
  for (const [index, entry] of later.entries()) {
    if (!isWhole(entry) || entry.seq !== state.seq + 1 || entry.layoutId !== head.layoutId) return { ...state, dropped: later.length - index }
    state = {
      ...state, document: applyDiff(state.document, entry.diff), past: changed(state.past, entry.past), future: changed(state.future, entry.future),
      seq: entry.seq, title: entry.title, changedAt: entry.at,
    }
  }
  return state
}

