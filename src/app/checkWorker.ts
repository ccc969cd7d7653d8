/// <reference lib="webworker" />
import { runChecks } from '../checks/runner.ts'
import { deriveSite } from '../derive/site.ts'
import type { YardDocument } from '../scene/document.ts'
import { applyDiff } from '../scene/edit.ts'
import type { FromWorker, ToWorker } from '../state/checkClient.ts'

let document: YardDocument | null = null

const answer = (message: FromWorker): void => {
  postMessage(message)
}

addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  const { requestId, stamp, owned } = data
  try {
    document = data.type === 'check' ? data.document : applyDiff(document!, data.diff)
    answer({ type: 'done', requestId, stamp, run: runChecks(deriveSite(document), { owned }) })
  } catch (error) {
    answer({ type: 'failed', requestId, stamp, message: error instanceof Error ? error.message : String(error) })
  }
})
