/// <reference lib="webworker" />
import { limitsOf } from '../checks/limits.ts'
import { deriveSite } from '../derive/site.ts'
import { createRunMemory } from '../derive/stages/memory.ts'
import { runThroughSteps } from '../derive/stages/runThrough.ts'
import { stagesOf } from '../derive/stages/stagesOf.ts'
import type { StageResult } from '../derive/stages/types.ts'
import type { YardDocument } from '../scene/document.ts'
import { applyDiff } from '../scene/edit.ts'
import type { FromRunThrough, ToRunThrough } from '../state/runThroughClient.ts'

/** Stages are worked out for this long between two looks at the messages: a newer request waits no longer. */
const SLICE_MS = 12

const memory = createRunMemory()
let document: YardDocument | null = null
let newestId = 0

const answer = (message: FromRunThrough): void => postMessage(message)
/** Lets waiting messages in. A message to oneself is not held back as a timer is. */
const breath = (): Promise<void> => new Promise((resolve) => {
  const { port1, port2 } = new MessageChannel()
  port1.onmessage = () => {
    port1.close()
    resolve()
  }
  port2.postMessage(null)
})

async function rehearse(request: Extract<ToRunThrough, { type: 'run' | 'runDiff' }>, shown: YardDocument): Promise<void> {
  const { requestId, stamp } = request
  const site = deriveSite(shown)
  const count = stagesOf(site).length
  const from = Math.max(0, Math.min(request.from, count - 1))
  const steps = runThroughSteps(site, { limits: limitsOf(shown), memory, from })
  let ready: StageResult[] = []
  let done = 0
  let sliceEndMs = 0
  const flush = (): void => {
    if (ready.length === 0) return
    answer({ type: 'partial', requestId, stamp, stages: ready, count })
    answer({ type: 'progress', requestId, stamp, share: done / count })
    ready = []
  }
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) return answer({ type: 'done', requestId, stamp, run: step.value })
    ready.push(step.value)
    done += 1
    if (performance.now() < sliceEndMs) continue
    // The stage looked at goes out at once, the others in slices.
    flush()
    await breath()
    if (requestId !== newestId) return answer({ type: 'cancelled', requestId, stamp })
    sliceEndMs = performance.now() + SLICE_MS
  }
}

addEventListener('message', ({ data }: MessageEvent<ToRunThrough>) => {
  if (data.type === 'cancel') {
    if (data.requestId === newestId) newestId = 0
    return
  }
  newestId = data.requestId
  const fail = (error: unknown): void => answer({ type: 'failed', requestId: data.requestId, stamp: data.stamp, message: error instanceof Error ? error.message : String(error) })
  try {
    document = data.type === 'run' ? data.document : applyDiff(document!, data.diff)
    void rehearse(data, document).catch(fail)
  } catch (error) {
    fail(error)
  }
})
