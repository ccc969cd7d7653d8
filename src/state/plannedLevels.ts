import { createStore, type StoreApi } from 'zustand/vanilla'
import type { CheckRun, Level } from '../checks/finding.ts'
import type { ShownCase } from '../derive/whatIf.ts'
import type { CheckClient } from './checkClient.ts'
import type { ResultsStore } from './resultsStore.ts'

/** While heights as set are shown: what the same checks say of the planned heights, by finding. */
export interface PlannedLevels {
  /** Stamp of the as-set case they stand beside; null: none asked for. */
  stamp: string | null
  levels: ReadonlyMap<string, Level>
  /** Findings of the plan, STOP to NOTE, that do not hold as set. */
  gone: CheckRun['findings']
}
export type PlannedLevelsStore = StoreApi<PlannedLevels>

interface Parts {
  stamp: () => string
  shownCase: () => ShownCase
  results: ResultsStore
  ask: CheckClient['ask']
}

const none: PlannedLevels = { stamp: null, levels: new Map(), gone: [] }

/** Asks for the planned findings once those of the as-set case have settled. */
export const createPlannedLevels = ({ stamp, shownCase, results, ask }: Parts): PlannedLevelsStore => {
  const store = createStore<PlannedLevels>()(() => none)
  let asked: string | null = null
  const refresh = (): void => {
    const shown = stamp()
    const { variant, whatIf } = shownCase()
    if (variant !== 'asSet') {
      if (store.getState().stamp !== null) store.setState(none)
      return
    }
    const { status, stamp: found, run } = results.getState()
    if (status !== 'settled' || found !== shown || run === null || asked === shown || store.getState().stamp === shown) return
    asked = shown
    void ask({ name: 'findings', args: null }, { variant: 'planned', whatIf }).then((planned) => {
      if (asked === shown) asked = null
      // Where something changed meanwhile, the end of the next check asks again.
      if (planned === null || stamp() !== shown) return
      const asSet = new Map(run.findings.map(({ key, level }) => [key, level]))
      store.setState({
        stamp: shown,
        levels: new Map(planned.findings.map(({ key, level }) => [key, level])),
        gone: planned.findings.filter(({ key, level, isUnknown }) => level !== 'met' && !isUnknown && (asSet.get(key) ?? 'met') === 'met'),
      })
    })
  }
  results.subscribe(refresh)
  return store
}
