/** How many sticks the shown string has, and how long it is with any number of them. */
import { houseJointLossM, madeLengthM, stickPlan } from '../engine/pipe/stickPlan.ts'
import { evenShares } from '../engine/pipe/stringSplit.ts'
import type { JobRecord, StringRecord } from '../scene/records/frame.ts'
import type { JobSticks, MissingInput } from './types.ts'

/** The strings of a set-up and which of them is shown; none: one string, derived from the job. */
export interface JobStrings {
  all: readonly StringRecord[]
  shown: StringRecord | null
}

/** Most sticks a guess from the layout may give; a plan from the needed length has no such cap. */
const MOST_GUESSED_STICKS = 60

/**
 * Stick plan of the job and sticks of the string shown.
 *
 * Model:  smallest N with N·S − (N−1)·loss ≥ needed + tails, or the count the string record gives; loss typed, else
 *         the house table by size. Where the needed length is unknown the count is as many sticks as reach
 *         `reachM` (the outermost support), at least 2, and flagged as assumed. Of several strings
 *         the plan is that of them all, joints between two included; those without a count share what is left evenly.
 */
export function sticksOf(job: JobRecord, { all, shown }: JobStrings, odM: number | null, reachM: number): JobSticks {
  const missing: MissingInput[] = []
  const stickLengthM = job.stickLengthM
  const jointLossM = job.jointLossM.value ?? (odM === null ? null : houseJointLossM(odM))
  const outcome = stickPlan({
    neededLengthM: job.neededLengthM, tailsM: job.tailsM, stickLengthM, jointLossM, stickCount: decidedCount(all),
    otherStickLengthsM: job.otherStickLengthM === null ? [] : [job.otherStickLengthM],
  })
  if (stickLengthM === null) missing.push({ recordId: job.id, path: 'stickLengthM', label: { en: 'stick length', es: 'largo del tubo' } })
  if (job.neededLengthM === null) missing.push({ recordId: job.id, path: 'neededLengthM', label: { en: 'length needed', es: 'largo necesario' } })
  const plan = outcome.status === 'ok' ? outcome.value : null
  const lossM = jointLossM !== null && stickLengthM !== null && jointLossM < stickLengthM ? jointLossM : 0
  const guess = stickLengthM === null ? 2 : Math.min(MOST_GUESSED_STICKS, Math.max(2, Math.ceil((reachM - lossM) / (stickLengthM - lossM))))
  const counts = countsOf(all, plan?.sticks ?? null)
  const own = shown === null ? null : (counts.get(shown.id) ?? null)
  return {
    stickLengthM,
    jointLossM,
    jointLossIsTypical: job.jointLossM.value === null || job.jointLossM.basis === 'typical',
    plan,
    missing,
    stickCount: (shown === null ? plan?.sticks : own) ?? guess,
    countAssumed: shown === null ? plan === null : own === null,
    counts,
    stringLengthM: (sticks) => (stickLengthM === null || sticks < 1 ? 0 : madeLengthM(sticks, stickLengthM, lossM)),
  }
}

/** Sticks of all strings together where somebody has decided each of them; null while one is to be worked out. */
const decidedCount = (strings: readonly StringRecord[]): number | null =>
  strings.length === 0 || strings.some(({ stickCount }) => stickCount === null) ? null : strings.reduce((sum, { stickCount }) => sum + stickCount!, 0)

/** Sticks of each string by id: the count it was given, else an even share of what the others leave, never under one. Null: the whole is not known. */
function countsOf(strings: readonly StringRecord[], whole: number | null): ReadonlyMap<string, number | null> {
  const open = strings.filter(({ stickCount }) => stickCount === null)
  const given = strings.reduce((sum, { stickCount }) => sum + (stickCount ?? 0), 0)
  const shares = whole === null || open.length === 0 ? [] : evenShares(Math.max(open.length, whole - given), open.length)
  const share = new Map(open.map(({ id }, i) => [id, shares[i] ?? null]))
  return new Map(strings.map(({ id, stickCount }) => [id, stickCount ?? share.get(id) ?? null]))
}
