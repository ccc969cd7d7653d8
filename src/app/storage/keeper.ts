import { createStore } from 'zustand/vanilla'
import type { YardDocument } from '../../scene/document.ts'
import { JOB_ID, LAYOUT_ID, layoutOf } from '../../scene/document.ts'
import type { DocumentStore } from '../../state/documentStore.ts'
import { viewPersistence, type ViewState } from '../../state/viewStore.ts'
import type { GearItem, StorageState } from '../../ui/services.ts'
import type { Keeper, Loaded } from '../services/keeper.ts'
import { replay, type Head } from './journal.ts'
import type { Tables } from './tables.ts'
import type { WindowPort } from './windows.ts'
import { startWriter, type Writer } from './writer.ts'

const LET_GO_MS = 1500

interface KeptPoint {
  layoutId: string
  name: string
  at: string
  document: YardDocument
}

export interface KeeperParts {
  tables: Tables
  windows: WindowPort
  now: () => string
  newId: (prefix: string) => string
  /** Blocked: nothing outlives this window. */
  isBlocked: boolean
  /** Asks the browser not to clear this site on its own; once, after the first edit. */
  askToPersist: () => Promise<boolean | null>
  estimate: () => Promise<{ usedBytes: number | null; allowedBytes: number | null }>
}

const isHead = (value: unknown): value is Head => {
  if (typeof value !== 'object' || value === null || !('document' in value)) return false
  const { document } = value as Head
  return document?.records?.[LAYOUT_ID] !== undefined && document.records[JOB_ID] !== undefined
}

/** Keeps layouts, points in time, gear and settings on this device (src/app/services/keeper.ts says what each does). */
export const makeKeeper = (parts: KeeperParts): Keeper => {
  const { tables, windows, now } = parts
  const state = createStore<StorageState>()(() => ({
    saved: parts.isBlocked ? 'blocked' : 'saved', savedAt: null, persisted: null, usedBytes: null, allowedBytes: null, heldElsewhere: false, isExample: false, recovered: null,
    reason: parts.isBlocked ? { en: 'This browser keeps nothing for this page. Save your work as a file before you close it.', es: 'Este navegador no guarda nada para esta página. Guarde su trabajo en archivo antes de cerrarla.' } : null,
  }))
  let writer: Writer | null = null
  let open: { documents: DocumentStore; layoutId: string; exampleName: string | null } | null = null
  let stopListening: (() => void) | null = null
  let hasAsked = false

  const read = async (layoutId: string): Promise<(Loaded & { seq: number; title: string; changedAt: string }) | null> => {
    const head = await tables.get('layouts', layoutId)
    if (!isHead(head)) return null
    const entries = await tables.list('journal', `${layoutId}/`)
    const { document, past, future, seq, title, changedAt, dropped } = replay(head, entries.map(([, value]) => value))
    const recovered = dropped === 0 ? null : { en: `The last ${dropped} edits could not be read back; the layout is as it was before them.`, es: `Los últimos ${dropped} cambios no se pudieron leer; el plano está como antes de ellos.` }
    return { document, past, future, recovered, exampleName: head.exampleName, seq, title, changedAt }
  }

  const measure = async (): Promise<void> => {
    state.setState(await parts.estimate())
  }

  const write = async (): Promise<void> => {
    if (open === null) return
    const { documents, layoutId, exampleName } = open
    const known = await read(layoutId).catch(() => null)
    documents.getState().setWritable(true)
    state.setState({ heldElsewhere: false, saved: parts.isBlocked ? 'blocked' : 'saving' })
    writer = await startWriter({
      documents, tables, layoutId, exampleName, seq: known?.seq ?? 0,
      events: {
        now,
        saving: () => state.setState({ saved: parts.isBlocked ? 'blocked' : 'saving' }),
        saved: (savedAt) => {
          state.setState(parts.isBlocked ? { savedAt: null } : { saved: 'saved', savedAt, reason: null })
          if (!hasAsked && documents.getState().past.length > 0) {
            hasAsked = true
            void parts.askToPersist().then((persisted) => state.setState({ persisted }))
          }
          void measure()
        },
        failed: (reason) => state.setState({ saved: 'unsaved', reason }),
        written: () => windows.say(layoutId, 'written'),
      },
    })
  }

  const follow = (): void => {
    if (open === null) return
    writer?.stop()
    writer = null
    open.documents.getState().cancelPreview()
    open.documents.getState().setWritable(false)
    state.setState({ heldElsewhere: true, saved: 'readOnly' })
  }

  const readAgain = async (): Promise<void> => {
    if (open === null || !state.getState().heldElsewhere) return
    const loaded = await read(open.layoutId)
    if (loaded !== null) open.documents.getState().load(loaded.document, loaded)
  }

  const hear = (message: string): void => {
    if (message === 'written') void readAgain()
    if (message === 'letGo' && writer !== null) {
      const leaving = writer
      void leaving.flush().then(() => {
        follow()
        windows.release()
      })
    }
  }

  const leave = async (): Promise<void> => {
    await writer?.flush()
    writer?.stop()
    writer = null
    stopListening?.()
    stopListening = null
    windows.release()
    open = null
  }

  const keeper: Keeper = {
    state,
    layouts: async () => {
      const heads = await tables.list('layouts')
      const entries = await Promise.all(heads.map(async ([layoutId]) => {
        const loaded = await read(layoutId)
        return loaded === null ? [] : [{ layoutId, title: loaded.title, changedAt: loaded.changedAt, isExample: loaded.exampleName !== null }]
      }))
      return entries.flat().sort((a, b) => (a.changedAt < b.changedAt ? 1 : -1))
    },
    load: read,
    attach: async (documents, layoutId, exampleName) => {
      await leave()
      open = { documents, layoutId, exampleName }
      state.setState({ isExample: exampleName !== null, recovered: null })
      stopListening = windows.listen(layoutId, hear)
      if (await windows.tryLock(layoutId, follow)) await write()
      else {
        follow()
        await readAgain()
      }
    },
    leave,
    takeOver: async () => {
      if (open === null) return false
      const { layoutId } = open
      windows.say(layoutId, 'letGo')
      const until = Date.now() + LET_GO_MS
      let isMine = false
      while (!isMine && Date.now() < until) {
        await new Promise((resolve) => setTimeout(resolve, 60))
        isMine = await windows.tryLock(layoutId, follow)
      }
      if (!isMine) isMine = await windows.steal(layoutId, follow)
      if (!isMine) return false
      await readAgain()
      await write()
      return true
    },
    rename: async (layoutId, title) => {
      const loaded = await read(layoutId)
      const head = await tables.get('layouts', layoutId)
      if (loaded === null || !isHead(head)) return
      const document = { records: { ...loaded.document.records, [LAYOUT_ID]: { ...layoutOf(loaded.document), title } } }
      await tables.write([{ table: 'layouts', key: layoutId, value: { ...head, document, past: loaded.past, future: loaded.future, seq: loaded.seq, title, changedAt: now() } satisfies Head }, { table: 'journal', prefix: `${layoutId}/`, remove: true }])
    },
    remove: async (layoutId) => {
      if (open?.layoutId === layoutId) await leave()
      await tables.write([{ table: 'layouts', key: layoutId, remove: true }, { table: 'journal', prefix: `${layoutId}/`, remove: true }, { table: 'points', prefix: `${layoutId}/`, remove: true }])
    },
    points: async (layoutId) => (await tables.list('points', `${layoutId}/`)).map(([pointId, value]) => ({ pointId, name: (value as KeptPoint).name, at: (value as KeptPoint).at })).reverse(),
    keepPoint: async (layoutId, name, document) => {
      const count = (await tables.list('points', `${layoutId}/`)).length
      const point: KeptPoint = { layoutId, name, at: now(), document }
      await tables.write([{ table: 'points', key: `${layoutId}/${String(count).padStart(6, '0')}-${parts.newId('p').slice(2)}`, value: point }])
    },
    loadPoint: async (pointId) => ((await tables.get('points', pointId)) as KeptPoint | undefined)?.document ?? null,
    everything: async () => {
      const layouts = await Promise.all((await tables.list('layouts')).map(async ([layoutId]) => (await read(layoutId))?.document ?? null))
      return JSON.stringify({ format: 'stringyard-everything', at: now(), layouts: layouts.filter((layout) => layout !== null), gear: await keeper.gear() }, null, 2)
    },
    clear: async () => {
      await leave()
      await tables.clear()
    },
    gear: async () => ((await tables.get('gear', 'list')) as GearItem[] | undefined) ?? [],
    putGear: (items) => tables.write([{ table: 'gear', key: 'list', value: items }]),
    settings: async () => ((await tables.get('settings', 'view')) as Partial<ViewState> | undefined) ?? {},
    putSettings: (settings) => tables.write([{ table: 'settings', key: 'view', value: Object.fromEntries(Object.entries(settings).filter(([key]) => viewPersistence[key as keyof ViewState])) }]),
    lastOpen: async () => ((await tables.get('settings', 'lastOpen')) as string | undefined) ?? null,
    setLastOpen: (layoutId) => tables.write([layoutId === null ? { table: 'settings', key: 'lastOpen', remove: true } : { table: 'settings', key: 'lastOpen', value: layoutId }]),
  }
  return keeper
}
