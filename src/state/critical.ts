import { createStore, type StoreApi } from 'zustand/vanilla'
import type { CriticalRanking } from '../derive/critical.ts'
import { inchM } from '../units/factors.ts'
import type { CheckClient } from './checkClient.ts'
import type { ResultsStore } from './resultsStore.ts'

/** Each support missing or sunk in turn: asked for, by how much it sinks, and the last answer with the stamp it belongs to. */
export interface CriticalState {
  isOn: boolean
  /** m, > 0. */
  sinkM: number
  ranking: CriticalRanking | null
  stamp: string | null
  /** The worker gave no answer though nothing changed meanwhile. */
  hasFailed: boolean
}
export interface Critical {
  store: StoreApi<CriticalState>
  turn: (isOn: boolean) => void
  sinkBy: (sinkM: number) => void
}

/** Common practice, no source: a stand sinks this much before anybody sees it. */
const SINK_M = inchM / 2

interface Parts {
  /** Stamp of what is shown. */
  stamp: () => string
  results: ResultsStore
  ask: CheckClient['ask']
}

/**
 * Keeps the ranking of what is shown while it is wanted: asked for whenever the checks have settled on another document or
 * case. Until the answer is there the old one stays with its old stamp; an answer to what is no longer wanted is dropped.
 */
export const createCritical = ({ stamp, results, ask }: Parts): Critical => {
  const store = createStore<CriticalState>()(() => ({ isOn: false, sinkM: SINK_M, ranking: null, stamp: null, hasFailed: false }))
  let asked: string | null = null
  const refresh = (): void => {
    const { isOn, sinkM, ranking, stamp: known } = store.getState()
    const shown = stamp()
    const isSettled = results.getState().status === 'settled' && results.getState().stamp === shown
    const wanted = `${shown}/${sinkM}`
    if (!isOn || !isSettled || asked === wanted || (known === shown && ranking?.sinkM === sinkM)) return
    asked = wanted
    void ask({ name: 'critical', args: { sinkM } }).then((answer) => {
      if (asked === wanted) asked = null
      const now = store.getState()
      const isWanted = now.isOn && now.sinkM === sinkM && stamp() === shown
      if (!isWanted) refresh()
      // Where another check runs, its end asks again.
      else if (answer !== null) store.setState({ ranking: answer, stamp: shown, hasFailed: false })
      else if (results.getState().status === 'settled') store.setState({ hasFailed: true })
    })
  }
  results.subscribe(refresh)
  return {
    store,
    turn: (isOn) => {
      store.setState(isOn ? { isOn } : { isOn, ranking: null, stamp: null, hasFailed: false })
      refresh()
    },
    sinkBy: (sinkM) => {
      if (!(sinkM > 0)) return
      store.setState({ sinkM })
      refresh()
    },
  }
}

/** Whether the ranking on screen belongs to an older layout, case or amount than the one asked for. */
export const isOldRanking = ({ ranking, stamp, sinkM }: CriticalState, shown: string): boolean => ranking === null || stamp !== shown || ranking.sinkM !== sinkM
