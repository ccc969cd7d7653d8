import { createStore, type StoreApi } from 'zustand/vanilla'
import type { YardDocument } from '../scene/document.ts'
import type { ReleaseRecord } from '../scene/records/beside.ts'
import { withRevision } from '../scene/revision.ts'
import { applyDiff, applyEdit, diffDocuments, isEmptyDiff, type DocumentDiff, type Edit, type StepLabel } from '../scene/edit.ts'

export interface HistoryEntry {
  label: StepLabel
  diff: DocumentDiff
  /** Steps with the same key and no other step between become one (typing in one field within one focus). */
  mergeKey?: string
}

export const HISTORY_STEPS = 200
export const HISTORY_BYTES = 8_000_000

export interface DocumentState {
  /** The saved truth. */
  document: YardDocument
  /** While a gesture runs: the document as it would become. Never in history, never saved. */
  preview: YardDocument | null
  /** Goes up with every commit, undo, redo and load; results carry it. */
  revision: number
  /** Goes up with every preview frame. `stamp` = both, names what is on screen. */
  previewSeq: number
  past: readonly HistoryEntry[]
  future: readonly HistoryEntry[]
  /** Label of the gesture under way. */
  pending: StepLabel | null
  /** False in a window that only reads. */
  writable: boolean

  commit: (label: StepLabel, edit: Edit, mergeKey?: string) => boolean
  /**
   * Adds entries of the release log: kept with the document, never undone and never a step. Returns false in a window
   * that only reads, or where the id is already there (the log is only added to).
   */
  append: (records: readonly ReleaseRecord[]) => boolean
  begin: (label: StepLabel) => void
  /** Shows the edit, made against the committed document, without committing. */
  showPreview: (edit: Edit) => void
  /** Makes the preview one step. Returns false where nothing changed. */
  commitPreview: (label?: StepLabel) => boolean
  cancelPreview: () => void
  undo: () => HistoryEntry | null
  redo: () => HistoryEntry | null
  load: (document: YardDocument, history?: { past: readonly HistoryEntry[]; future: readonly HistoryEntry[] }) => void
  setWritable: (writable: boolean) => void
}

export type DocumentStore = StoreApi<DocumentState>

const trimmed = (past: readonly HistoryEntry[]): readonly HistoryEntry[] => {
  let kept = past.length > HISTORY_STEPS ? past.slice(-HISTORY_STEPS) : past
  let bytes = kept.reduce((sum, entry) => sum + entrySize(entry), 0)
  while (bytes > HISTORY_BYTES && kept.length > 1) {
    bytes -= entrySize(kept[0]!)
    kept = kept.slice(1)
  }
  return kept
}

const sizes = new WeakMap<HistoryEntry, number>()
const entrySize = (entry: HistoryEntry): number => {
  const known = sizes.get(entry)
  if (known !== undefined) return known
  const size = JSON.stringify(entry).length
  sizes.set(entry, size)
  return size
}

const merged = (document: YardDocument, past: readonly HistoryEntry[], entry: HistoryEntry): readonly HistoryEntry[] => {
  const last = past.at(-1)
  if (entry.mergeKey === undefined || last?.mergeKey !== entry.mergeKey) return [...past, entry]
  const start = applyDiff(applyDiff(document, entry.diff, true), last.diff, true)
  const diff = diffDocuments(start, document)
  return isEmptyDiff(diff) ? past.slice(0, -1) : [...past.slice(0, -1), { label: entry.label, diff, mergeKey: entry.mergeKey }]
}

/** The one document store. Every edit of the app goes through it; a test makes its own. */
export const createDocumentStore = (document: YardDocument): DocumentStore =>
  createStore<DocumentState>()((set, get) => {
    const accept = (label: StepLabel, edited: YardDocument, mergeKey?: string): boolean => {
      const state = get()
      if (!state.writable) return false
      const next = withRevision(state.document, edited)
      const diff = diffDocuments(state.document, next)
      if (isEmptyDiff(diff)) {
        set({ preview: null, pending: null, previewSeq: state.previewSeq + 1 })
        return false
      }
      const entry: HistoryEntry = mergeKey === undefined ? { label, diff } : { label, diff, mergeKey }
      set({ document: next, preview: null, pending: null, revision: state.revision + 1, previewSeq: 0, past: trimmed(merged(next, state.past, entry)), future: [] })
      return true
    }
    const step = (direction: 'undo' | 'redo'): HistoryEntry | null => {
      const { document: current, past, future, revision, writable } = get()
      const entry = direction === 'undo' ? past.at(-1) : future.at(-1)
      if (entry === undefined || !writable) return null
      set({
        document: applyDiff(current, entry.diff, direction === 'undo'),
        preview: null,
        pending: null,
        revision: revision + 1,
        previewSeq: 0,
        past: direction === 'undo' ? past.slice(0, -1) : [...past, entry],
        future: direction === 'undo' ? [...future, entry] : future.slice(0, -1),
      })
      return entry
    }
    return {
      document, preview: null, revision: 1, previewSeq: 0, past: [], future: [], pending: null, writable: true,
      commit: (label, edit, mergeKey) => accept(label, applyEdit(get().document, edit), mergeKey),
      append: (records) => {
        const state = get()
        if (!state.writable || records.length === 0 || records.some(({ id }) => state.document.records[id] !== undefined)) return false
        const entries = { put: records, remove: [] }
        const preview = state.preview === null ? null : applyEdit(state.preview, entries)
        set({ document: applyEdit(state.document, entries), preview, revision: state.revision + 1, previewSeq: preview === null ? 0 : state.previewSeq })
        return true
      },
      begin: (label) => set({ pending: label }),
      showPreview: (edit) => {
        const state = get()
        if (!state.writable) return
        set({ preview: applyEdit(state.document, edit), previewSeq: state.previewSeq + 1 })
      },
      commitPreview: (label) => {
        const { preview, pending } = get()
        if (preview === null) {
          set({ pending: null })
          return false
        }
        return accept(label ?? pending ?? { text: { en: 'edit', es: 'cambio' } }, preview)
      },
      cancelPreview: () => {
        const state = get()
        if (state.preview !== null || state.pending !== null) set({ preview: null, pending: null, previewSeq: state.previewSeq + 1 })
      },
      undo: () => step('undo'),
      redo: () => step('redo'),
      load: (next, history) => set({ document: next, preview: null, pending: null, revision: get().revision + 1, previewSeq: 0, past: history?.past ?? [], future: history?.future ?? [] }),
      setWritable: (writable) => set({ writable }),
    }
  })

/** What the screen shows: the preview of a running gesture, else the document. */
export const shownDocument = (state: DocumentState): YardDocument => state.preview ?? state.document
/** Names exactly what is shown; results with another stamp are old. */
export const stampOf = (state: Pick<DocumentState, 'revision' | 'previewSeq'>): string => `${state.revision}.${state.previewSeq}`
