import { createStore, type StoreApi } from 'zustand/vanilla'

/** Where words stand on the plan, px of its band, y DOWN: what is laid over the plan keeps clear of them. */
export interface PlanWords {
  boxes: readonly { x0: number; y0: number; x1: number; y1: number }[]
}

const wordsOf = new WeakMap<object, StoreApi<PlanWords>>()

/** The words of the plan of an app; told by the plan once it has come to rest. */
export const planWordsOf = (app: object): StoreApi<PlanWords> => {
  const known = wordsOf.get(app)
  if (known !== undefined) return known
  const store = createStore<PlanWords>()(() => ({ boxes: [] }))
  wordsOf.set(app, store)
  return store
}
