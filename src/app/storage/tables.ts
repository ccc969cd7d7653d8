/**
 * What storage needs of a database: named tables of key → value and an atomic batch. Kept apart from IndexedDB so that
 * kills, torn tails and full disks are tested without a browser.
 */
export type TableName = 'layouts' | 'journal' | 'points' | 'gear' | 'settings'
export const tableNames: readonly TableName[] = ['layouts', 'journal', 'points', 'gear', 'settings']

export type Write =
  | { table: TableName; key: string; value: unknown }
  | { table: TableName; key: string; remove: true }
  /** Removes every key that starts with the prefix. */
  | { table: TableName; prefix: string; remove: true }

export interface Tables {
  get: (table: TableName, key: string) => Promise<unknown>
  /** Entries whose key starts with the prefix, in key order. */
  list: (table: TableName, prefix?: string) => Promise<readonly (readonly [key: string, value: unknown])[]>
  /** All or nothing; rejects where it could not be written. */
  write: (writes: readonly Write[]) => Promise<void>
  clear: () => Promise<void>
}

/** Tables in memory: for tests, and for browsers that keep nothing. */
export const memoryTables = (): Tables => {
  const tables = new Map<TableName, Map<string, unknown>>(tableNames.map((name) => [name, new Map()]))
  return {
    get: (table, key) => Promise.resolve(structuredClone(tables.get(table)!.get(key))),
    list: (table, prefix = '') => Promise.resolve([...tables.get(table)!].filter(([key]) => key.startsWith(prefix)).sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, value]) => [key, structuredClone(value)] as const)),
    write: (writes) => {
      for (const write of writes) {
        const table = tables.get(write.table)!
        if ('value' in write) table.set(write.key, structuredClone(write.value))
        else if ('key' in write) table.delete(write.key)
        else for (const key of table.keys()) if (key.startsWith(write.prefix)) table.delete(key)
      }
      return Promise.resolve()
    },
    clear: () => {
      for (const table of tables.values()) table.clear()
      return Promise.resolve()
    },
  }
}
