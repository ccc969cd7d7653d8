import type { App } from './app.ts'
import { shownDocument } from './documentStore.ts'
import { createRunThroughClient, type RunThroughClient, type RunThroughPort } from './runThroughClient.ts'
import { createRunThroughStore, type RunThroughStore } from './runThroughStore.ts'

/** What a screen of the run-through holds on to: results as they come, and what it looks at. */
export interface RunThroughDesk {
  results: RunThroughStore
  /** A screen looks, at the stage of this index first; it is kept up to date with the shown document until the answer is called. */
  look: (fromIndex?: number) => () => void
}

/** Follows the shown document while anybody looks; asks for nothing while nobody does. */
export const createRunThroughDesk = (app: App, open: (client: () => RunThroughClient) => RunThroughPort): RunThroughDesk => {
  const results = createRunThroughStore()
  const client: RunThroughClient = createRunThroughClient(open(() => client), results)
  let lookers = 0
  let fromIndex = 0
  const ask = (): void => client.request(app.site.getState().stamp, shownDocument(app.documents.getState()), fromIndex, app.view.getState().shownCase.stringId)
  app.site.subscribe((state, before) => {
    if (lookers > 0 && state.stamp !== before.stamp) ask()
  })
  return {
    results,
    look: (from = 0) => {
      fromIndex = from
      lookers += 1
      ask()
      let isLooking = true
      return () => {
        if (!isLooking) return
        isLooking = false
        lookers -= 1
        if (lookers === 0) client.cancel()
      }
    },
  }
}
