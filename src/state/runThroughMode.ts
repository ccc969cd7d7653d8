import type { App } from './app.ts'
import { intoSight } from './runThroughView.ts'
import type { Fold } from './viewStore.ts'

/** What was folded when the mode was opened: it is folded again when it ends. */
const foldsBefore = new WeakMap<App, Fold | null>()

/** The mode on: the whole run is drawn, nothing is being placed, the nose is in sight. */
export const openRunThrough = (app: App): void => {
  const view = app.view.getState()
  foldsBefore.set(app, view.fold)
  app.view.setState({ runThrough: true, noseM: null, tool: null, panel: null, fold: null, gearOpen: false, measure: null })
  const { tipM } = app.site.getState().profile
  if (tipM !== null) app.view.setState(intoSight(app.view.getState(), tipM))
}

export const closeRunThrough = (app: App): void => {
  if (!app.view.getState().runThrough) return
  app.view.setState({ runThrough: false, noseM: null, fold: foldsBefore.get(app) ?? null })
}
