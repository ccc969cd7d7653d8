import { createStore } from 'zustand/vanilla'

/** Where the tape was left; another layout begins at its first open mark. */
export interface TapeSession {
  layoutId: string | null
  /** Mark shown by its key; null: the page after the last. */
  key: string | null
}

export const tapeSession = createStore<TapeSession>()(() => ({ layoutId: null, key: null }))
