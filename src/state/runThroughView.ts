import type { JobStage, StageArrival, StageResult } from '../derive/stages/types.ts'
import { shownAt } from '../derive/stages/stagesOf.ts'
import type { SiteModel } from '../derive/types.ts'
import { alongToPx, drawnAlongM, tapeDirection, tapeLengthPx, type FrameView } from './frames.ts'
import type { ViewState } from './viewStore.ts'

/** Moves of the run-through as patches of the view store. */
type StagePatch = Pick<ViewState, 'phase' | 'joint' | 'noseM'>

/** Index of the stage a view shows; joints beyond the job are held to it, as everywhere. 0 without stages. */
export function shownIndex(stages: readonly JobStage[], { phase, joint }: Pick<ViewState, 'phase' | 'joint'>): number {
  const ofPhase = stages.filter((stage) => stage.phase === phase)
  const exact = ofPhase.find((stage) => stage.joint === null || stage.joint === joint) ?? (joint < 1 ? ofPhase[0] : ofPhase.at(-1))
  return exact?.index ?? 0
}

/** A stage at its end. */
export function toStage(site: SiteModel, stage: JobStage): StagePatch {
  const { phase, joint } = shownAt(site, stage)
  return { phase, joint, noseM: null }
}

/** The nose at a place of the run: the pull it comes by there. Null where it is never there, or the job has no pull. */
export function toNose(stages: readonly JobStage[], noseM: number): StagePatch | null {
  const pulls = stages.filter((stage) => stage.phase === 'pull' && stage.noseM !== null)
  const [first, last] = [pulls[0], pulls.at(-1)]
  if (first === undefined || last === undefined) return null
  const heldM = Math.min(Math.max(noseM, first.noseM!.from), last.noseM!.to)
  const pull = pulls.find(({ noseM: way }) => heldM <= way!.to) ?? last
  return { phase: 'pull', joint: pull.joint ?? 1, noseM: heldM }
}

/** Half an inch short of a support: where its arrival is judged (derive/noseArrivals.ts). */
const SHORT_OF_M = 0.0127

/** Place of the nose at an arrival. */
export const arrivalNoseM = ({ runningM }: StageArrival): number => runningM - SHORT_OF_M

/** What has to be done by hand or fails; a nose that rides on by itself is passed over. */
export const needsHand = ({ outcome }: StageArrival): boolean => outcome !== 'ridesOn'

/** Rounding of a nose that stands at an arrival. */
const SAME_PLACE_M = 0.002

/**
 * Next (+1) or last (−1) arrival seen from a stage and a place of the nose, over all stages that have come. `null` for the
 * nose: the stage at its end. Null where there is none that way.
 */
export function arrivalFrom(results: readonly (StageResult | undefined)[], index: number, noseM: number, step: 1 | -1): { stage: JobStage; arrival: StageArrival } | null {
  const all = results.flatMap((result) => (result === undefined || result.stage.phase !== 'pull' ? [] : result.arrivals.map((arrival) => ({ stage: result.stage, arrival }))))
  const isAhead = ({ stage, arrival }: (typeof all)[number]): boolean => {
    if (stage.index !== index) return (stage.index - index) * step > 0
    return (arrivalNoseM(arrival) - noseM) * step > SAME_PLACE_M
  }
  return (step === 1 ? all.find(isAhead) : all.findLast(isAhead)) ?? null
}

/** Share of the tape, the way the string goes, within which the nose is in sight, and where it is brought to. */
const SIGHT = { from: 0.08, to: 0.9, at: 0.62 }

/** Scroll that brings a place into sight; empty where it is. `isHeld`: a hand holds it, so it is moved no more than has to be. */
export function intoSight(view: FrameView, runningM: number, isHeld = false): Partial<Pick<ViewState, 'leftRunningM'>> {
  const lengthPx = tapeLengthPx(view)
  const direction = tapeDirection(view)
  const px = alongToPx(view, runningM)
  // Counted the way the string goes, whichever way the sheet is turned.
  const awayPx = direction === 'right' || direction === 'down' ? px : lengthPx - px
  const [fromPx, toPx] = [SIGHT.from * lengthPx, SIGHT.to * lengthPx]
  if (awayPx >= fromPx && awayPx <= toPx) return {}
  const targetPx = isHeld ? Math.min(Math.max(awayPx, fromPx), toPx) : SIGHT.at * lengthPx
  return { leftRunningM: drawnAlongM(view, runningM) - targetPx / view.pxPerM }
}
