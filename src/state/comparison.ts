import { createStore, type StoreApi } from 'zustand/vanilla'
import type { YardDocument } from '../scene/document.ts'

/** The older plan that is held against the one on screen: its name as the person chose it, and the document. */
export interface Compared {
  name: string
  document: YardDocument
}

export interface ComparisonState {
  compared: Compared | null
}

const stores = new WeakMap<object, StoreApi<ComparisonState>>()

/** What an app is compared with; drawn under the plan and told in the list. Never saved. Let go when another layout is opened. */
export const comparisonOf = (app: object): StoreApi<ComparisonState> => {
  const known = stores.get(app)
  if (known !== undefined) return known
  const store = createStore<ComparisonState>()(() => ({ compared: null }))
  stores.set(app, store)
  return store
}
