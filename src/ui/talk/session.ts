import { createStore } from 'zustand/vanilla'
import type { Language } from '../../messages/localized.ts'
import type { ReleaseRecord } from '../../scene/records/beside.ts'

/** A talk under way. It outlives its screen: who goes to the plan to move a spot comes back to the same page. */
export interface TalkSession {
  /** Layout it belongs to; another layout begins anew. */
  layoutId: string | null
  languages: readonly Language[]
  step: number
  people: readonly string[]
  note: string
  /** Last talk held before this one. */
  before: ReleaseRecord | null
  /** Row of the log, once signed off. */
  signed: ReleaseRecord | null
  /** Signed off, but the plan as it is could not be kept beside it. */
  isPointMissing: boolean
}

export const freshSession: TalkSession = { layoutId: null, languages: ['en', 'es'], step: 0, people: [], note: '', before: null, signed: null, isPointMissing: false }

export const talkSession = createStore<TalkSession>()(() => freshSession)
