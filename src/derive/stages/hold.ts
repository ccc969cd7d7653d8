/** Tether and anchor of the job: from which stage the string would leave by itself, and what has to hold it. */
import type { LimitLookup } from '../mechanics.ts'
import type { HoldBack, RunAway, RunThrough, StageResult } from './types.ts'

/** A force below this is rounding. */
const NO_FORCE_N = 1

/** Both ends. The tether takes the full weight down the slope at its worst stage, the anchor that times the limit's factor. */
export function holdOf(results: readonly StageResult[], limits: LimitLookup): RunThrough['hold'] {
  const factor = limits.limit('anchor-factor').fix ?? 2
  return {
    exit: towards(results, ({ exitN }) => exitN, ({ tetherExitN }) => tetherExitN, factor),
    infeed: towards(results, ({ infeedN }) => infeedN, ({ tetherInfeedN }) => tetherInfeedN, factor),
  }
}

function towards(results: readonly StageResult[], runAway: (of: RunAway) => number, tether: (of: RunAway) => number, factor: number): HoldBack {
  const pulls = results.flatMap(({ stage, pull }) => (pull === null ? [] : [{ id: stage.id, awayN: runAway(pull.runAway), tetherN: tether(pull.runAway) }]))
  const leaving = pulls.filter(({ awayN }) => awayN > NO_FORCE_N)
  const worst = leaving.reduce<(typeof pulls)[number] | null>((most, one) => (most === null || one.awayN > most.awayN ? one : most), null)
  const tetherN = Math.max(0, ...pulls.map((one) => one.tetherN))
  return { fromStageId: leaving[0]?.id ?? null, worstStageId: worst?.id ?? null, runAwayN: worst?.awayN ?? 0, tetherN, anchorN: factor * tetherN }
}
