import type { App } from './app.ts'
import { intoSight } from './runThroughView.ts'
import type { ViewState } from './viewStore.ts'

type Sheet = Pick<ViewState, 'fold' | 'pxPerM' | 'leftRunningM' | 'midOffsetM'>

/** The sheet as it lay when the mode was opened, and the scale it was brought to. */
const before = new WeakMap<App, { sheet: Sheet; pxPerM: number }>()

/** Under this scale a stick is a speck: a long job is brought to the other one, px per m (1.5 and 3 px per ft). */
const SPECK_PX_PER_M = 4.92
const WORKING_PX_PER_M = 9.84

/** The mode on: nothing is folded or being placed, the nose is in sight at a scale at which sticks can be told apart. */
export const openRunThrough = (app: App): void => {
  const { fold, pxPerM, leftRunningM, midOffsetM } = app.view.getState()
  const isFar = pxPerM < SPECK_PX_PER_M
  const scale = isFar ? WORKING_PX_PER_M : pxPerM
  before.set(app, { sheet: { fold, pxPerM, leftRunningM, midOffsetM }, pxPerM: scale })
  app.view.setState({ runThrough: true, noseM: null, tool: null, panel: null, fold: null, gearOpen: false, measure: null, ...(isFar ? { pxPerM: scale, midOffsetM: 0 } : {}) })
  const { tipM } = app.site.getState().profile
  if (tipM !== null) app.view.setState(intoSight(app.view.getState(), tipM))
}

/** The mode off. What was folded is folded again; a sheet brought nearer goes back, unless somebody has chosen another scale since. */
export const closeRunThrough = (app: App): void => {
  const view = app.view.getState()
  if (!view.runThrough) return
  const was = before.get(app)
  const goesBack = was !== undefined && view.pxPerM === was.pxPerM && (was.sheet.pxPerM !== was.pxPerM || was.sheet.fold !== null)
  app.view.setState({ runThrough: false, noseM: null, ...(goesBack ? was.sheet : { fold: was?.sheet.fold ?? null }) })
}
