import { makeKeeper, type KeeperParts } from '../../src/app/storage/keeper.ts'
import { memoryTables, type Tables } from '../../src/app/storage/tables.ts'
import { noWindows, type WindowPort } from '../../src/app/storage/windows.ts'
import type { YardDocument, YardRecord } from '../../src/scene/document.ts'
import { createDocumentStore, type DocumentStore } from '../../src/state/documentStore.ts'

export const note = (id: string, text: string): YardRecord => ({ id: `note:${id}`, kind: 'note', place: { at: 'free', xM: 0, yM: 0, headingRad: 0 }, locked: false, note: null, gearId: null, text }) as YardRecord

export const plainDocument = (title = 'Otter Bend'): YardDocument => ({
  records: {
    'layout:this': { id: 'layout:this', kind: 'layout', layoutId: 'yard:1', title } as never,
    'job:this': { id: 'job:this', kind: 'job' } as never,
  },
})

export interface TestTables extends Tables {
  /** Writes of a layout (head or journal) that reached the disk so far. */
  writes: number
  /** The disk dies at this write: it and all later ones are lost. */
  dieAt: number
  /** Number of writes from now on that fail with this error. */
  failing: { count: number; error: Error }
}

export const testTables = (under = memoryTables()): TestTables => {
  const tables: TestTables = {
    ...under, writes: 0, dieAt: Infinity, failing: { count: 0, error: new Error('') },
    write: async (writes) => {
      if (tables.failing.count > 0) {
        tables.failing.count--
        throw tables.failing.error
      }
      const isOfLayout = writes.some(({ table }) => table === 'layouts' || table === 'journal')
      if (tables.writes + 1 >= tables.dieAt) return new Promise(() => undefined)
      if (isOfLayout) tables.writes++
      return under.write(writes)
    },
  }
  return tables
}

export const keeperParts = (tables: Tables, windows: WindowPort = noWindows()): KeeperParts => {
  let id = 0
  return { tables, windows, now: () => '2026-11-24T08:00:00.000Z', newId: (prefix) => `${prefix}:${id++}`, isBlocked: false, askToPersist: () => Promise.resolve(true), estimate: () => Promise.resolve({ usedBytes: 1, allowedBytes: 2 }) }
}
export const keeperOn = (tables: Tables, windows?: WindowPort) => makeKeeper(keeperParts(tables, windows))

export const put = (documents: DocumentStore, id: string, text: string, mergeKey?: string): boolean =>
  documents.getState().commit({ text: { en: `write ${id}`, es: `escribir ${id}` } }, { put: [note(id, text)], remove: [] }, mergeKey)

export const storeOf = (document = plainDocument()): DocumentStore => createDocumentStore(document)
