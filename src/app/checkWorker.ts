/// <reference lib="webworker" />
import { runChecks } from '../checks/runner.ts'
import { deriveSite } from '../derive/site.ts'
import type { YardDocument } from '../scene/document.ts'
import { applyDiff } from '../scene/edit.ts'
import { answerTo } from './answers.ts'
import type { FromWorker, ToWorker } from '../state/checkClient.ts'

let document: YardDocument | null = null

const answer = (message: FromWorker): void => {
  postMessage(message)
}

addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  const { requestId, stamp, owned, shownCase } = data
  try {
    if (data.type === 'ask') {
      answer({ type: 'answer', requestId, stamp, answer: answerTo(data.question, { document: document!, shownCase, owned }) })
      return
    }
    document = data.type === 'check' ? data.document : applyDiff(document!, data.diff)
    answer({ type: 'done', requestId, stamp, run: runChecks(deriveSite(document, shownCase), { owned }) })
  } catch (error) {
    answer({ type: 'failed', requestId, stamp, message: error instanceof Error ? error.message : String(error) })
  }
})
