import type { CheckRun } from '../checks/finding.ts'
import type { YardDocument } from '../scene/document.ts'
import { diffDocuments, type DocumentDiff } from '../scene/edit.ts'
import type { ResultsStore } from './resultsStore.ts'

/**
 * Worker protocol. To the worker: a request with the stamp of what is shown and either the whole document or the
 * difference to the last one sent. From it: progress*, partial*, then done | cancelled | failed.
 * The newest stamp wins; at most one request waits while one runs.
 */
export type ToWorker =
  | { type: 'check'; requestId: number; stamp: string; document: YardDocument }
  | { type: 'checkDiff'; requestId: number; stamp: string; diff: DocumentDiff }

export type FromWorker =
  | { type: 'progress'; requestId: number; stamp: string; share: number }
  | { type: 'partial'; requestId: number; stamp: string; run: CheckRun }
  | { type: 'done'; requestId: number; stamp: string; run: CheckRun }
  | { type: 'cancelled'; requestId: number; stamp: string }
  | { type: 'failed'; requestId: number; stamp: string; message: string }

export interface CheckPort {
  post: (message: ToWorker) => void
  /** Throws the worker away and starts another; the next request carries the whole document. */
  restart: () => void
}

export interface CheckClient {
  request: (stamp: string, document: YardDocument) => void
  receive: (message: FromWorker) => void
  /** The worker died. */
  crashed: (message: string) => void
}

/** Sends requests, keeps at most one waiting, and writes only answers to what it asked for into the results store. */
export const createCheckClient = (port: CheckPort, results: ResultsStore): CheckClient => {
  let nextId = 1
  let running: { requestId: number; stamp: string } | null = null
  let waiting: { stamp: string; document: YardDocument } | null = null
  let lastSent: YardDocument | null = null
  let crashes = 0

  const send = (stamp: string, document: YardDocument): void => {
    const requestId = nextId++
    running = { requestId, stamp }
    port.post(lastSent === null ? { type: 'check', requestId, stamp, document } : { type: 'checkDiff', requestId, stamp, diff: diffDocuments(lastSent, document) })
    lastSent = document
  }
  const next = (): void => {
    running = null
    if (waiting === null) return
    const { stamp, document } = waiting
    waiting = null
    send(stamp, document)
  }

  return {
    request: (stamp, document) => {
      results.setState({ status: 'working' })
      if (running === null) send(stamp, document)
      else waiting = { stamp, document }
    },
    receive: (message) => {
      if (running === null || message.requestId !== running.requestId) return
      if (message.type === 'progress') return
      if (message.type === 'partial') {
        results.setState({ stamp: message.stamp, run: message.run, failure: null })
        return
      }
      const isLast = waiting === null
      if (message.type === 'done') {
        crashes = 0
        results.setState({ stamp: message.stamp, run: message.run, status: isLast ? 'settled' : 'working', failure: null })
      }
      if (message.type === 'failed') results.setState({ stamp: message.stamp, run: null, status: isLast ? 'failed' : 'working', failure: message.message })
      next()
    },
    crashed: (message) => {
      lastSent = null
      crashes++
      const again = running
      running = null
      results.setState({ run: null, status: 'failed', failure: message, stamp: again?.stamp ?? null })
      // A document that kills the worker every time must not start it for ever.
      if (crashes > 3) {
        waiting = null
        return
      }
      port.restart()
      next()
    },
  }
}
