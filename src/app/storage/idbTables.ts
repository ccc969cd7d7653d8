import { openDB, type IDBPDatabase } from 'idb'
import { tableNames, type Tables } from './tables.ts'

const NAME = 'stringyard'
const VERSION = 1

/** Keys from the prefix up to, not including, the next one that does not start with it. */
const range = (prefix: string): IDBKeyRange => IDBKeyRange.bound(prefix, `${prefix}\uffff`)

/**
 * The tables in IndexedDB. Writes ask for strict durability, so a commit that answered has reached the disk; a write
 * over quota surfaces as an abort of the transaction, which `done` rejects with.
 */
export const openIdbTables = async (): Promise<Tables> => {
  const database: IDBPDatabase = await openDB(NAME, VERSION, {
    upgrade: (db) => {
      for (const name of tableNames) if (!db.objectStoreNames.contains(name)) db.createObjectStore(name)
    },
  })
  return {
    get: (table, key) => database.get(table, key) as Promise<unknown>,
    list: async (table, prefix = '') => {
      const transaction = database.transaction(table)
      const [keys, values] = await Promise.all([transaction.store.getAllKeys(range(prefix)), transaction.store.getAll(range(prefix))])
      return keys.map((key, i) => [String(key), values[i] as unknown] as const)
    },
    write: async (writes) => {
      if (writes.length === 0) return
      const transaction = database.transaction([...new Set(writes.map(({ table }) => table))], 'readwrite', { durability: 'strict' })
      for (const write of writes) {
        const store = transaction.objectStore(write.table)
        if ('value' in write) void store.put(write.value, write.key).catch(() => undefined)
        else void store.delete('key' in write ? write.key : range(write.prefix)).catch(() => undefined)
      }
      await transaction.done
    },
    clear: async () => {
      const transaction = database.transaction([...tableNames], 'readwrite')
      for (const name of tableNames) void transaction.objectStore(name).clear()
      await transaction.done
    },
  }
}
