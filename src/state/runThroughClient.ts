import type { RunThrough, StageResult } from '../derive/stages/types.ts'
import type { YardDocument } from '../scene/document.ts'
import { diffDocuments, type DocumentDiff } from '../scene/edit.ts'
import type { RunThroughStore } from './runThroughStore.ts'

/**
 * Worker protocol of the run-through. To the worker: a request with the stamp of what is shown, the whole document or the
 * difference to the last one sent, the stage that is looked at, which comes first, and of several strings the one shown. From it: progress*, partial* (stages as
 * they come), then done | cancelled | failed. A newer request cancels the one under way.
 */
export type ToRunThrough =
  | { type: 'run'; requestId: number; stamp: string; document: YardDocument; from: number; stringId?: string }
  | { type: 'runDiff'; requestId: number; stamp: string; diff: DocumentDiff; from: number; stringId?: string }
  | { type: 'cancel'; requestId: number }

export type FromRunThrough =
  | { type: 'progress'; requestId: number; stamp: string; share: number }
  | { type: 'partial'; requestId: number; stamp: string; stages: readonly StageResult[]; count: number }
  | { type: 'done'; requestId: number; stamp: string; run: RunThrough }
  | { type: 'cancelled'; requestId: number; stamp: string }
  | { type: 'failed'; requestId: number; stamp: string; message: string }

export interface RunThroughPort {
  /** Starts the worker where there is none yet. */
  post: (message: ToRunThrough) => void
  /** Throws the worker away; the next message starts another, and the next request carries the whole document. */
  stop: () => void
}

export interface RunThroughClient {
  /** Asks for the run-through of what is shown, the stage at index `from` first. A request for the stamp that is there or under way does nothing. */
  request: (stamp: string, document: YardDocument, from?: number, stringId?: string) => void
  /** Nobody looks any more: what is under way is given up, what is there stays. */
  cancel: () => void
  receive: (message: FromRunThrough) => void
  /** The worker died. */
  crashed: (message: string) => void
}

/** A document that kills the worker every time must not start it for ever. */
const MOST_CRASHES = 3

/** Keeps one request under way, the newest; writes only answers to it into the store. */
export const createRunThroughClient = (port: RunThroughPort, store: RunThroughStore): RunThroughClient => {
  let nextId = 1
  let running: { requestId: number; stamp: string } | null = null
  let latest: { stamp: string; document: YardDocument; from: number; stringId: string | undefined } | null = null
  let lastSent: YardDocument | null = null
  let crashes = 0

  const send = (): void => {
    if (latest === null) return
    const { stamp, document, from, stringId } = latest
    const string = stringId === undefined ? {} : { stringId }
    const requestId = nextId++
    running = { requestId, stamp }
    store.setState({ status: 'working', share: 0, failure: null })
    port.post(lastSent === null ? { type: 'run', requestId, stamp, document, from, ...string } : { type: 'runDiff', requestId, stamp, diff: diffDocuments(lastSent, document), from, ...string })
    lastSent = document
  }
  const stopRunning = (): void => {
    if (running !== null) port.post({ type: 'cancel', requestId: running.requestId })
    running = null
  }

  return {
    request: (stamp, document, from = 0, stringId = undefined) => {
      if (running?.stamp === stamp) return
      const { stamp: there, run } = store.getState()
      if (running === null && there === stamp && run !== null) return
      latest = { stamp, document, from, stringId }
      stopRunning()
      send()
    },
    cancel: () => {
      stopRunning()
      const { run } = store.getState()
      store.setState({ status: run === null ? 'idle' : 'settled' })
    },
    receive: (message) => {
      if (message.requestId !== running?.requestId) return
      const { stamp } = message
      switch (message.type) {
        case 'progress': return store.setState({ share: message.share })
        case 'partial': {
          // The first stages of a new document take the place of all of the old one: never two documents side by side.
          const stages = store.getState().stamp === stamp ? [...store.getState().stages] : Array.from<StageResult | undefined>({ length: message.count })
          for (const one of message.stages) stages[one.stage.index] = one
          return store.setState({ stamp, stages, ...(store.getState().stamp === stamp ? {} : { run: null }) })
        }
        case 'done':
          running = null
          crashes = 0
          return store.setState({ stamp, stages: message.run.stages, run: message.run, share: 1, status: 'settled', failure: null })
        case 'failed':
          running = null
          return store.setState({ stamp, stages: [], run: null, status: 'failed', failure: message.message })
        case 'cancelled':
          running = null
      }
    },
    crashed: (message) => {
      running = null
      lastSent = null
      crashes += 1
      port.stop()
      store.setState({ stamp: latest?.stamp ?? null, stages: [], run: null, status: 'failed', failure: message })
      if (crashes <= MOST_CRASHES) send()
    },
  }
}
