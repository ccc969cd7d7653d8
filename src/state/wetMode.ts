import type { ViewStore } from './viewStore.ts'

/** Wet mode on: the plan is held still, nothing is in hand. Off: the plan is free again. */
export const setWet = (view: ViewStore, wet: boolean): void =>
  view.setState(wet ? { wet, holdStill: true, tool: null, selection: [], gearOpen: false, panel: null } : { wet, holdStill: false })
