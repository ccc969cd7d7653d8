import type { CheckRun } from '../checks/finding.ts'
import type { YardDocument } from '../scene/document.ts'
import type { GearItem } from '../scene/gear.ts'
import { diffDocuments, type DocumentDiff } from '../scene/edit.ts'
import type { ResultsStore } from './resultsStore.ts'

/**
 * Worker protocol. To the worker: a request with the stamp of what is shown and either the whole document or the
 * difference to the last one sent, and the crew's own gear (null: no list). From it: progress*, partial*, then done | cancelled | failed.
 * The newest stamp wins; at most one request waits while one runs.
 */
export type OwnedGear = readonly GearItem[] | null

export type ToWorker =
  | { type: 'check'; requestId: number; stamp: string; document: YardDocument; owned: OwnedGear }
  | { type: 'checkDiff'; requestId: number; stamp: string; diff: DocumentDiff; owned: OwnedGear }

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
  /** What the crew owns, an empty list counting as none; the document asked for last is checked again with it. */
  own: (items: readonly GearItem[]) => void
  receive: (message: FromWorker) => void
  /** The worker died. */
  crashed: (message: string) => void
}

/** Sends requests, keeps at most one waiting, and writes only answers to what it asked for into the results store. */
export const createCheckClient = (port: CheckPort, results: ResultsStore): CheckClient => {
  let nextId = 1
  let running: { requestId: number; stamp: string; owned: OwnedGear } | null = null
  let waiting: { stamp: string; document: YardDocument } | null = null
  let lastSent: YardDocument | null = null
  let latest: { stamp: string; document: YardDocument } | null = null
  let owned: OwnedGear = null
  let crashes = 0

  const send = (stamp: string, document: YardDocument): void => {
    const requestId = nextId++
    running = { requestId, stamp, owned }
    port.post(lastSent === null ? { type: 'check', requestId, stamp, document, owned } : { type: 'checkDiff', requestId, stamp, diff: diffDocuments(lastSent, document), owned })
    lastSent = document
  }
  const next = (): void => {
    running = null
    if (waiting === null) return
    const { stamp, document } = waiting
    waiting = null
    send(stamp, document)
  }

  const request = (stamp: string, document: YardDocument): void => {
    latest = { stamp, document }
    results.setState({ status: 'working' })
    if (running === null) send(stamp, document)
    else waiting = latest
  }

  return {
    request,
    own: (items) => {
      if (items === owned || (items.length === 0 && owned === null)) return
      owned = items.length === 0 ? null : items
      if (latest === null) return
      // What is there was found with another list: no longer what holds for this document.
      results.setState({ stamp: null })
      request(latest.stamp, latest.document)
    },
    receive: (message) => {
      if (running === null || message.requestId !== running.requestId) return
      if (message.type === 'progress') return
      const stamp = running.owned === owned ? message.stamp : null
      if (message.type === 'partial') {
        results.setState({ stamp, run: message.run, failure: null })
        return
      }
      const isLast = waiting === null
      if (message.type === 'done') {
        crashes = 0
        results.setState({ stamp, run: message.run, status: isLast ? 'settled' : 'working', failure: null })
      }
      if (message.type === 'failed') results.setState({ stamp, run: null, status: isLast ? 'failed' : 'working', failure: message.message })
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
      // What is on screen is asked for again, so that one death does not leave the findings empty until the next edit.
      waiting ??= latest
      next()
    },
  }
}
