import type { App } from '../state/app.ts'
import { keptFold } from '../state/fold.ts'
import { foldLossM, foldOf } from '../state/frames.ts'
import type { ViewState } from '../state/viewStore.ts'
import { centredOn } from './viewMoves.ts'

/** Keys of the view after which a fold may hide what it must not. */
const watched: readonly (keyof ViewState)[] = ['fold', 'selection', 'hiddenKinds', 'orientation', 'tapeVertical', 'phase', 'joint']

/** View with the fold open: about the one thing chosen where that was hidden, else with what is at the left edge staying there. */
const opened = (app: App, view: ViewState): Partial<ViewState> => {
  const { site } = app.site.getState()
  const [only] = view.selection
  const item = view.selection.length === 1 && only !== undefined ? site.placed.get(only) : undefined
  const fold = foldOf(view)
  if (item !== undefined && fold !== null && item.runningM !== null && item.runningM > fold.fromM && item.runningM < fold.toM) return { ...centredOn({ ...view, fold: null }, site.setUp, item.xM, item.yM), fold: null, midOffsetM: view.midOffsetM }
  return { fold: null, leftRunningM: view.leftRunningM + (fold !== null && view.leftRunningM > fold.fromM ? foldLossM(view) : 0) }
}

/** Keeps the fold true: after each settled edit, choice or finding it shrinks to what may stay hidden, or opens. Answers how to stop. */
export const keepFold = (app: App): (() => void) => {
  const look = (): void => {
    const view = app.view.getState()
    const { pending, preview } = app.documents.getState()
    // Nothing shifts under a hand that holds something.
    if (view.fold === null || pending !== null || preview !== null) return
    const { site, profile } = app.site.getState()
    const kept = foldOf(view) === null ? null : keptFold(site, app.results.getState().run?.findings ?? [], view, profile.tipM)
    if (kept !== view.fold) app.view.setState(kept === null ? opened(app, view) : { fold: kept })
  }
  const stops = [
    app.view.subscribe((view, before) => { if (watched.some((key) => view[key] !== before[key])) look() }),
    app.site.subscribe(look),
    app.results.subscribe((state, before) => { if (state.run !== before.run) look() }),
  ]
  return () => { for (const stop of stops) stop() }
}
