/** What the run-through's worker does with its messages; clock, breath and answers are handed in, so that tests drive it. */
import { limitsOf } from '../checks/limits.ts'
import { deriveSite } from '../derive/site.ts'
import { createRunMemory } from '../derive/stages/memory.ts'
import { runThroughSteps } from '../derive/stages/runThrough.ts'
import { stagesOf } from '../derive/stages/stagesOf.ts'
import type { StageResult } from '../derive/stages/types.ts'
import type { YardDocument } from '../scene/document.ts'
import { applyDiff } from '../scene/edit.ts'
import type { FromRunThrough, ToRunThrough } from '../state/runThroughClient.ts'

export interface RehearsalParts {
  answer: (message: FromRunThrough) => void
  /** Lets waiting messages in. */
  breath: () => Promise<void>
  nowMs: () => number
}

/** Stages are worked out for this long between two looks at the messages: a newer request waits no longer. */
const SLICE_MS = 12

/** Takes messages in the order they come; the promise is settled when a request is answered for good. */
export const createRehearsal = ({ answer, breath, nowMs }: RehearsalParts): ((message: ToRunThrough) => Promise<void>) => {
  const memory = createRunMemory()
  let document: YardDocument | null = null
  let newestId = 0

  const rehearse = async ({ requestId, stamp, from, stringId }: Exclude<ToRunThrough, { type: 'cancel' }>, shown: YardDocument): Promise<void> => {
    const site = deriveSite(shown, stringId === undefined ? {} : { stringId })
    const count = stagesOf(site).length
    const steps = runThroughSteps(site, { limits: limitsOf(shown), memory, from: Math.max(0, Math.min(from, count - 1)) })
    let ready: StageResult[] = []
    let done = 0
    let sliceEndMs = -Infinity
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done === true) return answer({ type: 'done', requestId, stamp, run: step.value })
      ready.push(step.value)
      done += 1
      // The stage looked at goes out at once, the others in slices.
      if (nowMs() < sliceEndMs) continue
      answer({ type: 'partial', requestId, stamp, stages: ready, count })
      answer({ type: 'progress', requestId, stamp, share: done / count })
      ready = []
      await breath()
      if (requestId !== newestId) return answer({ type: 'cancelled', requestId, stamp })
      sliceEndMs = nowMs() + SLICE_MS
    }
  }

  return async (message) => {
    if (message.type === 'cancel') {
      if (message.requestId === newestId) newestId = 0
      return
    }
    const { requestId, stamp } = message
    newestId = requestId
    try {
      document = message.type === 'run' ? message.document : applyDiff(document!, message.diff)
      await rehearse(message, document)
    } catch (error) {
      answer({ type: 'failed', requestId, stamp, message: error instanceof Error ? error.message : String(error) })
    }
  }
}
