/** How many sticks the shown string has, and how long it is with any number of them. */
import { houseJointLossM, madeLengthM, stickPlan } from '../engine/pipe/stickPlan.ts'
import type { JobRecord, StringRecord } from '../scene/records/frame.ts'
import type { JobSticks, MissingInput } from './types.ts'

/** Most sticks a guess from the layout may give; a plan from the needed length has no such cap. */
const MOST_GUESSED_STICKS = 60

/**
 * Stick plan of the job.
 *
 * Model:  smallest N with N·S − (N−1)·loss ≥ needed + tails, or the count the string record gives; loss typed, else
 *         the house table by size. Where the needed length is unknown the count is as many sticks as reach
 *         `reachM` (the outermost support), at least 2, and flagged as assumed.
 */
export function sticksOf(job: JobRecord, string: StringRecord | null, odM: number | null, reachM: number): JobSticks {
  const missing: MissingInput[] = []
  const stickLengthM = job.stickLengthM
  const jointLossM = job.jointLossM.value ?? (odM === null ? null : houseJointLossM(odM))
  const outcome = stickPlan({
    neededLengthM: job.neededLengthM, tailsM: job.tailsM, stickLengthM, jointLossM, stickCount: string?.stickCount ?? null,
    otherStickLengthsM: job.otherStickLengthM === null ? [] : [job.otherStickLengthM],
  })
  if (stickLengthM === null) missing.push({ recordId: job.id, path: 'stickLengthM', label: { en: 'stick length', es: 'largo del tubo' } })
  if (job.neededLengthM === null) missing.push({ recordId: job.id, path: 'neededLengthM', label: { en: 'length needed', es: 'largo necesario' } })
  const plan = outcome.status === 'ok' ? outcome.value : null
  const lossM = jointLossM !== null && stickLengthM !== null && jointLossM < stickLengthM ? jointLossM : 0
  const guess = stickLengthM === null ? 2 : Math.min(MOST_GUESSED_STICKS, Math.max(2, Math.ceil((reachM - lossM) / (stickLengthM - lossM))))
  return {
    stickLengthM,
    jointLossM,
    jointLossIsTypical: job.jointLossM.value === null || job.jointLossM.basis === 'typical',
    plan,
    missing,
    stickCount: plan?.sticks ?? string?.stickCount ?? guess,
    countAssumed: plan === null && (string?.stickCount ?? null) === null,
    stringLengthM: (sticks) => (stickLengthM === null || sticks < 1 ? 0 : madeLengthM(sticks, stickLengthM, lossM)),
  }
}
