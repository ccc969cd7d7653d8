import type { App } from '../state/app.ts'
import { keptFold } from '../state/fold.ts'
import { foldLossM, foldOf } from '../state/frames.ts'
import type { Fold, ViewState } from '../state/viewStore.ts'
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

const isSame = (a: Fold | null, b: Fold | null): boolean => a === b || (a !== null && b !== null && a.fromM === b.fromM && a.toM === b.toM)

/**
 * Keeps the fold true: after each settled edit, choice, stage or finding it shrinks to what may stay hidden, or opens.
 * Where what stood in its way goes again, it grows back to what it was laid as. Answers how to stop.
 */
export const keepFold = (app: App): (() => void) => {
  let laid = app.view.getState().fold
  // A listener further back in a row of nested changes sees the newest state: what was set here is told by being that very fold.
  let own = laid
  const set = (change: Partial<ViewState>): void => {
    own = change.fold ?? null
    if (own === null) laid = null
    app.view.setState(change)
  }
  const look = (): void => {
    const view = app.view.getState()
    if (view.fold !== own) laid = own = view.fold
    const { pending, preview } = app.documents.getState()
    // Nothing shifts under a hand that holds something.
    if (view.fold === null || pending !== null || preview !== null) return
    const { site, profile } = app.site.getState()
    const kept = foldOf(view) === null ? null : keptFold(site, app.results.getState().run?.findings ?? [], { ...view, fold: laid }, profile.tipM)
    if (!isSame(kept, view.fold)) set(kept === null ? opened(app, view) : { fold: kept })
  }
  const stops = [
    app.view.subscribe((view, before) => { if (watched.some((key) => view[key] !== before[key])) look() }),
    app.site.subscribe(look),
    app.results.subscribe((state, before) => { if (state.run !== before.run) look() }),
  ]
  return () => { for (const stop of stops) stop() }
}
