import { createStore } from 'zustand/vanilla'
import type { YardDocument } from '../../scene/document.ts'
import { JOB_ID, LAYOUT_ID, layoutOf } from '../../scene/document.ts'
import { asCopy } from '../../scene/readFile.ts'
import type { DocumentStore } from '../../state/documentStore.ts'
import { viewPersistence, type ViewState } from '../../state/viewStore.ts'
import type { Localized } from '../../messages/localized.ts'
import type { GearItem } from '../../scene/gear.ts'
import type { StorageState } from '../../ui/services.ts'
import type { Keeper, Loaded } from '../services/keeper.ts'
import { replay, type Head } from './journal.ts'
import type { Tables, Write } from './tables.ts'
import type { WindowPort } from './windows.ts'
import { broughtUp, stampOfToday, type VersionStamp } from './versions.ts'
import { everythingOf, readEverything, type PointOfLayout } from './everything.ts'
import { readSettings } from './settings.ts'
import { startWriter, type Writer } from './writer.ts'

const LET_GO_MS = 1500

interface KeptPoint {
  layoutId: string
  name: string
  at: string
  stamp?: VersionStamp
  document: YardDocument
}

/** A layout of this device that the app of today cannot open; it stays as it is. */
export class NotReadable extends Error {
  readonly reason: Localized
  constructor(reason: Localized) {
    super(reason.en)
    this.name = 'NotReadable'
    this.reason = reason
  }
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

const fileKey = (layoutId: string): string => `inFile/${layoutId}`

const isHead = (value: unknown): value is Head => {
  if (typeof value !== 'object' || value === null || !('document' in value)) return false
  const { document } = value as Head
  return document?.records?.[LAYOUT_ID] !== undefined && document.records[JOB_ID] !== undefined
}

const together = (said: readonly Localized[]): Localized | null => (said.length === 0 ? null : { en: said.map(({ en }) => en).join(' '), es: said.map(({ es }) => es).join(' ') })

/** Keeps layouts, points in time, gear and settings on this device (src/app/services/keeper.ts says what each does). */
export const makeKeeper = (parts: KeeperParts): Keeper => {
  const { tables, windows, now } = parts
  const state = createStore<StorageState>()(() => ({
    saved: parts.isBlocked ? 'blocked' : 'saved', savedAt: null, persisted: null, usedBytes: null, allowedBytes: null, editsSinceFile: 0, isBatteryLow: false, heldElsewhere: false, isExample: false, recovered: null,
    reason: parts.isBlocked ? { en: 'This browser keeps nothing for this page. Save your work as a file before you close it.', es: 'Este navegador no guarda nada para esta página. Guarde su trabajo en archivo antes de cerrarla.' } : null,
  }))
  let writer: Writer | null = null
  let open: { documents: DocumentStore; layoutId: string; exampleName: string | null } | null = null
  let stopListening: (() => void) | null = null
  let hasAsked = false
  /** Numbers of the open layout's writes: the last one, and the one its last saved file held. */
  let count = { seq: 0, inFile: 0 }

  const read = async (layoutId: string): Promise<(Loaded & { seq: number; title: string; changedAt: string }) | null> => {
    const head = await tables.get('layouts', layoutId)
    if (!isHead(head)) return null
    const entries = await tables.list('journal', `${layoutId}/`)
    const back = replay(head, entries.map(([, value]) => value))
    const up = broughtUp(back.document, head.stamp)
    if (!up.ok) throw new NotReadable({ en: `"${back.title}" on this device cannot be opened: ${up.reason.en}. It is left as it is.`, es: `"${back.title}" de este equipo no se puede abrir: ${up.reason.es}. Se deja como está.` })
    const lost: Localized[] = back.dropped === 0 ? [] : [{ en: `The last ${back.dropped} edits could not be read back; the layout is as it was before them.`, es: `Los últimos ${back.dropped} cambios no se pudieron leer; el plano está como antes de ellos.` }]
    // Undo steps hold records of the old version: they end where the layout was brought up.
    const history = up.isSame ? { past: back.past, future: back.future } : { past: [], future: [] }
    return { document: up.document, ...history, recovered: together([...lost, ...up.notes]), exampleName: head.exampleName, seq: back.seq, title: back.title, changedAt: back.changedAt }
  }

  /** For the list of layouts: one that cannot be opened is still named. */
  const readOrHead = async (layoutId: string): Promise<{ title: string; changedAt: string; exampleName: string | null } | null> => {
    try {
      return await read(layoutId)
    } catch {
      const head = await tables.get('layouts', layoutId)
      return isHead(head) ? head : null
    }
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
    // The head a writer begins with is a write and no edit: what the file held moves up by it.
    count = { seq: known?.seq ?? 0, inFile: (((await tables.get('settings', fileKey(layoutId)).catch(() => 0)) as number | undefined) ?? 0) + 1 }
    writer = await startWriter({
      documents, tables, layoutId, exampleName, seq: known?.seq ?? 0,
      events: {
        now,
        saving: () => state.setState({ saved: parts.isBlocked ? 'blocked' : 'saving' }),
        saved: (savedAt, seq) => {
          count.seq = seq
          state.setState(parts.isBlocked ? { savedAt: null } : { saved: 'saved', savedAt, reason: null })
          state.setState({ editsSinceFile: Math.max(0, seq - count.inFile) })
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
    void keepCount(layoutId)
  }

  /** A count that cannot be kept only makes the nudge come early. */
  const keepCount = (layoutId: string): Promise<void> => tables.write([{ table: 'settings', key: fileKey(layoutId), value: count.inFile }]).catch(() => undefined)

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

  /** In the order they were kept, whatever the clock said; no two are the same. */
  const pointKey = (layoutId: string, number: number): string => `${layoutId}/${String(number).padStart(6, '0')}-${parts.newId('p').slice(2)}`

  const keeper: Keeper = {
    state,
    layouts: async () => {
      const heads = await tables.list('layouts')
      const entries = await Promise.all(heads.map(async ([layoutId]) => {
        const loaded = await readOrHead(layoutId)
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
    retry: async () => {
      if (state.getState().saved === 'unsaved') await writer?.flush()
    },
    fileSaved: async () => {
      if (open === null || writer === null) return
      await writer.flush()
      count.inFile = count.seq
      state.setState({ editsSinceFile: 0 })
      await keepCount(open.layoutId)
    },
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
      await tables.write([{ table: 'layouts', key: layoutId, remove: true }, { table: 'journal', prefix: `${layoutId}/`, remove: true }, { table: 'points', prefix: `${layoutId}/`, remove: true }, { table: 'settings', key: fileKey(layoutId), remove: true }])
    },
    points: async (layoutId) => (await tables.list('points', `${layoutId}/`)).map(([pointId, value]) => ({ pointId, name: (value as KeptPoint).name, at: (value as KeptPoint).at })).reverse(),
    keepPoint: async (layoutId, name, document) => {
      const count = (await tables.list('points', `${layoutId}/`)).length
      const point: KeptPoint = { layoutId, name, at: now(), stamp: stampOfToday, document }
      await tables.write([{ table: 'points', key: pointKey(layoutId, count), value: point }])
    },
    loadPoint: async (pointId) => {
      const point = (await tables.get('points', pointId)) as KeptPoint | undefined
      if (point === undefined) return null
      const up = broughtUp(point.document, point.stamp)
      if (!up.ok) throw new NotReadable({ en: `"${point.name}" cannot be opened: ${up.reason.en}.`, es: `"${point.name}" no se puede abrir: ${up.reason.es}.` })
      return up.document
    },
    everything: async () => {
      const refused: Localized[] = []
      const documents: YardDocument[] = []
      const points: PointOfLayout[] = []
      for (const [layoutId, head] of await tables.list('layouts')) {
        const name = isHead(head) ? head.title : layoutId
        try {
          const layout = await read(layoutId)
          if (layout === null) refused.push({ en: `"${name}": its record is damaged`, es: `"${name}": su registro está dañado` })
          else documents.push(layout.document)
        } catch (error) {
          refused.push(error instanceof NotReadable ? error.reason : { en: `"${name}" could not be read`, es: `"${name}" no se pudo leer` })
          continue
        }
        for (const [, value] of await tables.list('points', `${layoutId}/`)) {
          const { name: pointName, at, document, stamp } = value as KeptPoint
          const up = broughtUp(document, stamp)
          if (up.ok) points.push({ layoutId, name: pointName, at, document: up.document })
          else refused.push({ en: `point in time "${pointName}" of "${name}": ${up.reason.en}`, es: `punto en el tiempo "${pointName}" de "${name}": ${up.reason.es}` })
        }
      }
      return { text: everythingOf({ at: now(), documents, points, gear: await keeper.gear(), settings: await keeper.settings() }), refused }
    },
    restore: async (text) => {
      const all = readEverything(text)
      if (all === null) return null
      const known = new Set((await tables.list('layouts')).map(([layoutId]) => layoutId))
      const idHere = new Map<string, string>()
      const writes: Write[] = all.documents.map((document) => {
        const own = layoutOf(document)
        const layoutId = known.has(own.layoutId) ? parts.newId('yard') : own.layoutId
        known.add(layoutId)
        idHere.set(own.layoutId, layoutId)
        const copy = asCopy(document, layoutId)
        return { table: 'layouts', key: layoutId, value: { layoutId, title: own.title, changedAt: now(), exampleName: null, stamp: stampOfToday, seq: 1, document: copy, past: [], future: [] } satisfies Head }
      })
      // A layout that stayed here under its id may have points already: those of the copy have an id of their own.
      all.points.forEach(({ layoutId, name, at, document }, i) => {
        const here = idHere.get(layoutId) ?? layoutId
        writes.push({ table: 'points', key: pointKey(here, i), value: { layoutId: here, name, at, stamp: stampOfToday, document: asCopy(document, here) } satisfies KeptPoint })
      })
      const gear = await keeper.gear()
      const added = all.gear.filter(({ id }) => !gear.some((one) => one.id === id))
      if (added.length > 0) writes.push({ table: 'gear', key: 'list', value: [...gear, ...added] })
      await tables.write(writes)
      return { layouts: all.documents.length, points: all.points.length, gear: added.length, settings: all.settings, refused: all.refused }
    },
    clear: async () => {
      await leave()
      await tables.clear()
    },
    gear: async () => ((await tables.get('gear', 'list')) as GearItem[] | undefined) ?? [],
    putGear: (items) => tables.write([{ table: 'gear', key: 'list', value: items }]),
    settings: async () => readSettings(await tables.get('settings', 'view')),
    putSettings: (settings) => tables.write([{ table: 'settings', key: 'view', value: Object.fromEntries(Object.entries(settings).filter(([key]) => viewPersistence[key as keyof ViewState])) }]),
    lastOpen: async () => ((await tables.get('settings', 'lastOpen')) as string | undefined) ?? null,
    setLastOpen: (layoutId) => tables.write([layoutId === null ? { table: 'settings', key: 'lastOpen', remove: true } : { table: 'settings', key: 'lastOpen', value: layoutId }]),
  }
  return keeper
}
