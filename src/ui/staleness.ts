import { createStore, type StoreApi } from 'zustand/vanilla'
import type { App } from '../state/app.ts'

/** Results count as current only after they have matched what is shown for this long: in a drag they would else flicker between the two. */
const STEADY_MS = 50

export interface Staleness {
  isStale: boolean
}

/**
 * Whether what the checks say belongs to an older layout than the one on screen. Turns true at once, and false only
 * once the stamps have agreed for a moment. `connect` subscribes and answers how to let go.
 */
export const createStaleness = (app: Pick<App, 'site' | 'results'>): { store: StoreApi<Staleness>; connect: () => () => void } => {
  const differ = (): boolean => app.site.getState().stamp !== app.results.getState().stamp
  const store = createStore<Staleness>()(() => ({ isStale: differ() }))
  const connect = (): (() => void) => {
    let timer: ReturnType<typeof setTimeout> | undefined
    const read = (): void => {
      if (differ()) {
        clearTimeout(timer)
        timer = undefined
        if (!store.getState().isStale) store.setState({ isStale: true })
      } else if (store.getState().isStale && timer === undefined) {
        timer = setTimeout(() => {
          timer = undefined
          if (!differ()) store.setState({ isStale: false })
        }, STEADY_MS)
      }
    }
    const unsubscribe = [app.site.subscribe(read), app.results.subscribe(read)]
    read()
    return () => {
      clearTimeout(timer)
      timer = undefined
      for (const stop of unsubscribe) stop()
    }
  }
  return { store, connect }
}
