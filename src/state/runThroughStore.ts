import { createStore, type StoreApi } from 'zustand/vanilla'
import type { RunThrough, StageResult } from '../derive/stages/types.ts'

/** The run-through with the stamp of the document it belongs to; apart from the findings, for it is only worked out when a screen asks. */
export interface RunThroughState {
  /** Stamp of `stages` and `run`; shown as current only while it is that of the site. */
  stamp: string | null
  /** Stages as they have come, by index; holes where one has not. Whole once `run` is there. */
  stages: readonly (StageResult | undefined)[]
  /** Set once all stages are through. */
  run: RunThrough | null
  /** Share of the stages done, 0 to 1. */
  share: number
  /** idle: nobody asked yet. */
  status: 'idle' | 'working' | 'settled' | 'failed'
  failure: string | null
}

export type RunThroughStore = StoreApi<RunThroughState>
export const createRunThroughStore = (): RunThroughStore => createStore<RunThroughState>()(() => ({ stamp: null, stages: [], run: null, share: 0, status: 'idle', failure: null }))
