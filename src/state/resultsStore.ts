import { createStore, type StoreApi } from 'zustand/vanilla'
import type { CheckRun } from '../checks/finding.ts'

/** Results of the checks with the stamp of the document they belong to. Shown as current only while the stamps agree. */
export interface ResultsState {
  stamp: string | null
  run: CheckRun | null
  /** `failed`: the worker died or threw; shown as CHECK 'could not be worked out', never as silence. */
  status: 'idle' | 'working' | 'settled' | 'failed'
  failure: string | null
}

export type ResultsStore = StoreApi<ResultsState>
export const createResultsStore = (): ResultsStore => createStore<ResultsState>()(() => ({ stamp: null, run: null, status: 'idle', failure: null }))
