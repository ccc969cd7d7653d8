import { layoutOf } from '../../scene/document.ts'
import { diffDocuments, isEmptyDiff } from '../../scene/edit.ts'
import type { DocumentStore } from '../../state/documentStore.ts'
import type { Localized } from '../../messages/localized.ts'
import { changeOf, sealed, type Head, type History, type JournalEntry } from './journal.ts'
import type { Tables, Write } from './tables.ts'
import { stampOfToday } from './versions.ts'

/** Journal entries between two heads. */
const FOLD_EVERY = 50
/** After a failed write: the next try, and the longest wait the doubling of it comes to. */
const RETRY_FIRST_MS = 4000
const RETRY_MOST_MS = 60_000

export const seqKey = (layoutId: string, seq: number): string => `${layoutId}/${String(seq).padStart(10, '0')}`

export interface WriterEvents {
  saving: () => void
  /** `seq`: number of edits written for this layout so far, over all visits. */
  saved: (at: string, seq: number) => void
  failed: (reason: Localized) => void
  /** Something new lies in storage: other windows may read it. */
  written: () => void
  now: () => string
}

export interface Writer {
  /** Answers when everything made so far is written or has failed; what failed before is tried once more. */
  flush: () => Promise<void>
  stop: () => void
}

const reasonOf = (error: unknown): Localized => {
  const name = error instanceof Error ? error.name : ''
  if (name === 'QuotaExceededError') return { en: 'This device has no room left: the last edits are not saved. Save a copy as a file.', es: 'Este equipo no tiene espacio: los últimos cambios no se guardaron. Guarde una copia en archivo.' }
  const detail = error instanceof Error && error.message !== '' ? ` (${error.message})` : ''
  return { en: `The last edits could not be saved here${detail}. Save a copy as a file.`, es: `Los últimos cambios no se pudieron guardar aquí${detail}. Guarde una copia en archivo.` }
}

/**
 * Writes every edit of a document store: a head at once, then one journal entry an edit, in order. After a failed write
 * the next edit, or a try by the clock after 4 s and then twice as long each time up to a minute, writes a whole head, so
 * that nothing is lost once there is room again.
 */
export const startWriter = async (input: { documents: DocumentStore; tables: Tables; layoutId: string; exampleName: string | null; seq: number; events: WriterEvents }): Promise<Writer> => {
  const { documents, tables, layoutId, exampleName, events } = input
  let seq = input.seq
  let sinceHead = 0
  let needsHead = true
  let written: History = documents.getState()
  let queue: Promise<void> = Promise.resolve()
  let isStopped = false
  let retryMs = RETRY_FIRST_MS
  let timer: ReturnType<typeof setTimeout> | undefined

  const headOf = (history: History): Head => ({ layoutId, title: layoutOf(history.document).title, changedAt: events.now(), exampleName, stamp: stampOfToday, seq, document: history.document, past: history.past, future: history.future })

  const save = async (history: History): Promise<void> => {
    const at = events.now()
    const diff = diffDocuments(written.document, history.document)
    if (!needsHead && isEmptyDiff(diff) && written.past === history.past && written.future === history.future) return
    events.saving()
    const next = seq + 1
    const writes: Write[] = []
    if (needsHead || sinceHead >= FOLD_EVERY) {
      seq = next
      writes.push({ table: 'layouts', key: layoutId, value: headOf(history) }, { table: 'journal', prefix: `${layoutId}/`, remove: true })
    } else {
      const entry: JournalEntry = sealed({ layoutId, seq: next, diff, past: changeOf(written.past, history.past), future: changeOf(written.future, history.future), title: layoutOf(history.document).title, at })
      writes.push({ table: 'journal', key: seqKey(layoutId, next), value: entry })
      seq = next
    }
    const isHead = writes.length > 1
    try {
      await tables.write(writes)
      written = history
      sinceHead = isHead ? 0 : sinceHead + 1
      needsHead = false
      retryMs = RETRY_FIRST_MS
      clearTimeout(timer)
      events.saved(at, seq)
      events.written()
    } catch (error) {
      needsHead = true
      events.failed(reasonOf(error))
      clearTimeout(timer)
      if (!isStopped) timer = setTimeout(() => void flush(), retryMs)
      retryMs = Math.min(2 * retryMs, RETRY_MOST_MS)
    }
  }

  const enqueue = (history: History): void => {
    queue = queue.then(() => save(history))
  }
  const unsubscribe = documents.subscribe((state, before) => {
    if (isStopped || state.document === before.document) return
    enqueue({ document: state.document, past: state.past, future: state.future })
  })
  const flush = async (): Promise<void> => {
    await queue
    if (!needsHead || isStopped) return
    const { document: now, past: done, future: undone } = documents.getState()
    enqueue({ document: now, past: done, future: undone })
    await queue
  }
  const { document, past, future } = documents.getState()
  enqueue({ document, past, future })
  await queue
  return {
    flush,
    stop: () => {
      isStopped = true
      clearTimeout(timer)
      unsubscribe()
    },
  }
}
