import { createStore, type StoreApi } from 'zustand/vanilla'
import type { ProposalKind, ProposalRequest, ProposalResult } from '../checks/proposals/types.ts'
import { layoutOf } from '../scene/document.ts'
import type { GearItem } from '../scene/gear.ts'
import type { App } from './app.ts'

/** A search for a better layout of the supports, and what came of it. */
export interface ProposalState {
  /** null: nothing asked for. */
  kind: ProposalKind | null
  status: 'idle' | 'working' | 'done' | 'failed'
  /** Share of the work done, 0 … 1. */
  share: number
  result: ProposalResult | null
  failure: string | null
}

/** One search running somewhere else; `cancel` ends it at once and no answer comes. */
export type StartSearch = (request: ProposalRequest, on: { progress: (share: number) => void; done: (result: ProposalResult) => void; failed: (message: string) => void }) => { cancel: () => void }

export interface ProposalDesk {
  store: StoreApi<ProposalState>
  ask: (kind: ProposalKind) => void
  /** Ends the search or takes the proposal away. */
  clear: () => void
}

const idle: ProposalState = { kind: null, status: 'idle', share: 0, result: null, failure: null }

/**
 * Keeps one proposal: what it was searched from is the document of one revision. When that changes the ghost goes and the
 * search is made again, so that what is accepted was judged on the layout it changes; another layout ends it.
 */
export const createProposalDesk = (app: App, start: StartSearch, owned: () => readonly GearItem[]): ProposalDesk => {
  const store = createStore<ProposalState>()(() => idle)
  let running: { cancel: () => void } | null = null
  let searched: { revision: number; layoutId: string } | null = null
  const shown = (): ReturnType<App['documents']['getState']> => app.documents.getState()
  const stop = (): void => {
    running?.cancel()
    running = null
  }
  const dropGhost = (): void => {
    if (app.view.getState().proposal?.isSearched === true) app.view.setState({ proposal: null })
  }
  const clear = (): void => {
    stop()
    searched = null
    store.setState(idle)
    dropGhost()
  }
  const ask = (kind: ProposalKind): void => {
    stop()
    const { document, revision } = shown()
    searched = { revision, layoutId: layoutOf(document).layoutId }
    store.setState({ ...idle, kind, status: 'working' })
    dropGhost()
    const gear = owned()
    running = start({ kind, document, owned: gear.length === 0 ? null : gear }, {
      progress: (share) => store.setState({ share }),
      done: (result) => {
        running = null
        store.setState({ status: 'done', share: 1, result })
        if (result.status === 'found') app.view.setState({ proposal: { ...result.command, revision, isSearched: true } })
      },
      failed: (failure) => {
        running = null
        store.setState({ status: 'failed', failure })
      },
    })
  }
  app.documents.subscribe((state) => {
    const { kind } = store.getState()
    if (kind === null || searched === null || state.revision === searched.revision) return
    if (layoutOf(state.document).layoutId === searched.layoutId) ask(kind)
    else clear()
  })
  // Esc and the start page take a proposal away by the view alone.
  app.view.subscribe((state, before) => {
    if (before.proposal?.isSearched === true && state.proposal === null && store.getState().status === 'done') clear()
    else if (store.getState().kind !== null && state.screen !== 'yard') clear()
  })
  return { store, ask, clear }
}
