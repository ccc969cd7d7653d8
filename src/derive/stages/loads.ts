/** Largest load of each support, stage by stage and over the job. */
import type { BodySolution } from '../bodies.ts'
import type { RunThrough, StageResult } from './types.ts'

/** A body stands for a longer one only in the two thirds away from where it was cut off. */
const TRUSTED_RATIO = 1 / 3

export interface LoadedBody {
  solution: BodySolution
  /** It stands for a longer string whose nose lies far ahead: what is near its own nose is not judged by it. */
  isShort: boolean
}

/** Largest reaction of each support over the bodies; what was cut off or stands for a longer string counts away from that end only. */
export function loadsOf(loaded: readonly LoadedBody[]): StageResult['loads'] {
  const most = new Map<string, number>()
  for (const { solution: { body, result, supports }, isShort } of loaded) {
    if (result.status !== 'ok') continue
    const thirdM = (body.endM - body.startM) * TRUSTED_RATIO
    const fromM = body.isCut === true ? body.startM + thirdM : -Infinity
    const toM = isShort ? body.endM - thirdM : Infinity
    for (const { view, reactionN } of supports) {
      if (view.runningM < fromM || view.runningM > toM) continue
      most.set(view.key, Math.max(reactionN, most.get(view.key) ?? 0))
    }
  }
  return [...most].map(([key, loadN]) => ({ key, loadN }))
}

/** Over all stages, with the first stage in which it is that much. */
export function mostOf(results: readonly StageResult[]): RunThrough['loads'] {
  const most = new Map<string, { key: string; loadN: number; stageId: string }>()
  for (const { stage, loads } of results) {
    for (const { key, loadN } of loads) {
      const before = most.get(key)
      if (before === undefined || loadN > before.loadN) most.set(key, { key, loadN, stageId: stage.id })
    }
  }
  return [...most.values()]
}
