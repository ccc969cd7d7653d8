import { browserEnv } from '../env.ts'
import type { Keeper } from '../services/keeper.ts'
import { openIdbTables } from './idbTables.ts'
import { makeKeeper } from './keeper.ts'
import { memoryTables, type Tables } from './tables.ts'
import { browserWindows, noWindows } from './windows.ts'

/** The keeper of this browser. Where it refuses storage, everything works in memory and the screen says so. */
export const openKeeper = async (): Promise<Keeper> => {
  let tables: Tables
  let isBlocked = false
  try {
    tables = await openIdbTables()
  } catch {
    tables = memoryTables()
    isBlocked = true
  }
  const keeper = makeKeeper({
    tables, isBlocked, now: browserEnv.now, newId: browserEnv.newId,
    windows: isBlocked || typeof BroadcastChannel === 'undefined' ? noWindows() : browserWindows(),
    askToPersist: async () => (navigator.storage?.persist === undefined ? null : navigator.storage.persist()),
    estimate: async () => {
      const found = await navigator.storage?.estimate?.()
      return { usedBytes: found?.usage ?? null, allowedBytes: found?.quota ?? null }
    },
  })  // What could not be written is tried again as soon as somebody looks at the page.
  const again = (): void => {
    if (document.visibilityState === 'visible') void keeper.retry()
  }
  addEventListener('focus', again)
  document.addEventListener('visibilitychange', again)
  return keeper
}
