import type { CheckRun } from '../checks/finding.ts'
import type { YardDocument } from '../scene/document.ts'
import type { GearItem } from '../scene/gear.ts'
import { diffDocuments, type DocumentDiff } from '../scene/edit.ts'
import { thePlan, type ShownCase } from '../derive/whatIf.ts'
import type { AnyQuestion, Question, QuestionName, Questions } from './questions.ts'
import type { ResultsStore } from './resultsStore.ts'

/**
 * Worker protocol. To the worker: a request with the stamp of what is shown and either the whole document or the
 * difference to the last one sent, the case shown, and the crew's own gear (null: no list). From it: progress*, partial*,
 * then done | cancelled | failed. The newest stamp wins; at most one request waits while one runs.
 * Beside it questions (state/questions.ts) about the document last sent, in turn, whenever no check waits.
 */
export type OwnedGear = readonly GearItem[] | null

export type ToWorker =
  | { type: 'check'; requestId: number; stamp: string; document: YardDocument; shownCase: ShownCase; owned: OwnedGear }
  | { type: 'checkDiff'; requestId: number; stamp: string; diff: DocumentDiff; shownCase: ShownCase; owned: OwnedGear }
  | { type: 'ask'; requestId: number; stamp: string; shownCase: ShownCase; owned: OwnedGear; question: AnyQuestion }

export type FromWorker =
  | { type: 'progress'; requestId: number; stamp: string; share: number }
  | { type: 'partial'; requestId: number; stamp: string; run: CheckRun }
  | { type: 'done'; requestId: number; stamp: string; run: CheckRun }
  | { type: 'cancelled'; requestId: number; stamp: string }
  | { type: 'failed'; requestId: number; stamp: string; message: string }
  | { type: 'answer'; requestId: number; stamp: string; answer: unknown }

export interface CheckPort {
  post: (message: ToWorker) => void
  /** Throws the worker away and starts another; the next request carries the whole document. */
  restart: () => void
}

export interface CheckClient {
  request: (stamp: string, document: YardDocument, shownCase?: ShownCase) => void
  /** Something beside the checks about the document last asked for, in the case shown or another. Null where the document or the case changes before the answer. */
  ask: <Name extends QuestionName>(question: Question<Name>, shownCase?: ShownCase) => Promise<Questions[Name]['answer'] | null>
  /** What the crew owns, an empty list counting as none; the document asked for last is checked again with it. */
  own: (items: readonly GearItem[]) => void
  receive: (message: FromWorker) => void
  /** The worker died. */
  crashed: (message: string) => void
}

interface Wanted {
  stamp: string
  document: YardDocument
  shownCase: ShownCase
}

interface Asked {
  question: AnyQuestion
  shownCase: ShownCase
  stamp: string
  resolve: (answer: unknown) => void
}

/** Deaths in a row after which no worker is started any more. */
const MOST_CRASHES = 3

/** Sends requests, keeps at most one waiting, and writes only answers to what it asked for into the results store. */
export const createCheckClient = (port: CheckPort, results: ResultsStore): CheckClient => {
  let nextId = 1
  let running: { requestId: number; stamp: string; owned: OwnedGear; asked: Asked | null } | null = null
  let waiting: Wanted | null = null
  let lastSent: YardDocument | null = null
  let latest: Wanted | null = null
  let asked: Asked[] = []
  let owned: OwnedGear = null
  let crashes = 0

  const send = ({ stamp, document, shownCase }: Wanted): void => {
    const requestId = nextId++
    running = { requestId, stamp, owned, asked: null }
    port.post(lastSent === null ? { type: 'check', requestId, stamp, document, shownCase, owned } : { type: 'checkDiff', requestId, stamp, diff: diffDocuments(lastSent, document), shownCase, owned })
    lastSent = document
  }
  const sendQuestion = (one: Asked): void => {
    const requestId = nextId++
    running = { requestId, stamp: one.stamp, owned, asked: one }
    port.post({ type: 'ask', requestId, stamp: one.stamp, shownCase: one.shownCase, owned, question: one.question })
  }
  /** Questions about what is no longer shown get no answer. */
  const dropOldQuestions = (): void => {
    for (const one of asked) if (one.stamp !== latest?.stamp) one.resolve(null)
    asked = asked.filter(({ stamp }) => stamp === latest?.stamp)
  }
  const next = (): void => {
    running = null
    dropOldQuestions()
    if (waiting !== null) {
      const wanted = waiting
      waiting = null
      send(wanted)
      return
    }
    const question = lastSent === null ? undefined : asked.shift()
    if (question !== undefined) sendQuestion(question)
  }

  const request = (stamp: string, document: YardDocument, shownCase: ShownCase = thePlan): void => {
    latest = { stamp, document, shownCase }
    dropOldQuestions()
    results.setState({ status: 'working' })
    if (running === null) send(latest)
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
      request(latest.stamp, latest.document, latest.shownCase)
    },
    ask: (question, shownCase) => new Promise((resolve) => {
      if (latest === null || crashes > MOST_CRASHES) {
        resolve(null)
        return
      }
      // The answer has the type its question names; the worker's table of answers is held to the same list.
      asked.push({ question: question as AnyQuestion, shownCase: shownCase ?? latest.shownCase, stamp: latest.stamp, resolve: resolve as Asked['resolve'] })
      if (running === null) next()
    }),
    receive: (message) => {
      if (running === null || message.requestId !== running.requestId) return
      if (message.type === 'progress') return
      if (running.asked !== null) {
        const isCurrent = running.stamp === latest?.stamp && running.owned === owned
        running.asked.resolve(message.type === 'answer' && isCurrent ? message.answer : null)
        next()
        return
      }
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
      again?.asked?.resolve(null)
      for (const one of asked) one.resolve(null)
      asked = []
      results.setState({ run: null, status: 'failed', failure: message, stamp: again?.stamp ?? null })
      // A document that kills the worker every time must not start it for ever.
      if (crashes > MOST_CRASHES) {
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
