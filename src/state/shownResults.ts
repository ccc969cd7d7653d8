import { createStore, type StoreApi } from 'zustand/vanilla'
import type { CheckRun } from '../checks/finding.ts'
import type { App } from './app.ts'

/** Results count as current only after they have matched what is shown for this long: in a drag they would else flicker between the two, ms. */
const STEADY_MS = 50
/** While they are old, newer but still old findings take their place at most this often, ms: a drag is not slowed by notes that are grey anyway. */
const FOLLOW_MS = 150

/** The findings on screen, and whether they belong to an older layout than the one on screen. */
export interface ShownResults {
  isStale: boolean
  run: CheckRun | null
}

/**
 * What is shown of the results. `isStale` turns true at once, and false only once the stamps have agreed for a moment;
 * with it `run` becomes the current one. Old findings are never shown as current: while `run` lags, `isStale` is true.
 * `connect` subscribes and answers how to let go.
 */
export const createShownResults = (app: Pick<App, 'site' | 'results'>): { store: StoreApi<ShownResults>; connect: () => () => void } => {
  const differ = (): boolean => app.site.getState().stamp !== app.results.getState().stamp
  const store = createStore<ShownResults>()(() => ({ isStale: differ(), run: app.results.getState().run }))
  const connect = (): (() => void) => {
    let steady: ReturnType<typeof setTimeout> | undefined
    let following: ReturnType<typeof setTimeout> | undefined
    const take = (isStale: boolean): void => {
      clearTimeout(following)
      following = undefined
      const { run } = app.results.getState()
      const shown = store.getState()
      if (shown.run !== run || shown.isStale !== isStale) store.setState({ run, isStale })
    }
    const becomeCurrent = (): void => {
      steady = undefined
      if (!differ()) take(false)
    }
    const read = (): void => {
      const shown = store.getState()
      const isOld = differ()
      if (isOld) {
        clearTimeout(steady)
        steady = undefined
        if (!shown.isStale) store.setState({ isStale: true })
      } else if (shown.isStale) steady ??= setTimeout(becomeCurrent, STEADY_MS)
      const { run } = app.results.getState()
      if (run === shown.run) return
      // The first findings, and that there are none, are not waited for.
      if (run === null || shown.run === null || !store.getState().isStale) take(store.getState().isStale)
      else following ??= setTimeout(() => take(store.getState().isStale), FOLLOW_MS)
    }
    const unsubscribe = [app.site.subscribe(read), app.results.subscribe(read)]
    read()
    return () => {
      clearTimeout(steady)
      clearTimeout(following)
      steady = undefined
      following = undefined
      for (const stop of unsubscribe) stop()
    }
  }
  return { store, connect }
}

const shownOf = new WeakMap<object, StoreApi<ShownResults>>()

/** The one store of shown results of an app: canvas and ui show the same findings at the same time. Lives as long as the app. */
export const shownResultsOf = (app: Pick<App, 'site' | 'results'>): StoreApi<ShownResults> => {
  const known = shownOf.get(app)
  if (known !== undefined) return known
  const { store, connect } = createShownResults(app)
  connect()
  shownOf.set(app, store)
  return store
}
