/** How long each step of a joint takes, and where each figure is from. */
import jointTimesJson from '../../../shared/tables/joint-times.json' with { type: 'json' }
import { inchM, minuteS } from '../../units/factors.ts'
import { requireNumber } from '../outcome.ts'
import { jointFigures, singleHighPressure } from '../pipe/fusion.ts'

export const jointSteps = ['load', 'clampFace', 'soak', 'heaterOut', 'cool', 'hold', 'pull'] as const
export type JointStep = (typeof jointSteps)[number]

export type TimeSource = 'houseRule' | 'publishedFromMemory' | 'procedure'

export interface StepTime {
  step: JointStep
  lowS: number
  likelyS: number
  highS: number
  source: TimeSource
  /** Document and clause, or the words house rule. */
  cite: string
}

export interface JointTimesInput {
  odM: number
  minimumWallM: number
  /** The machine travels along strung sticks: the last step is driving on, not pulling. */
  walks: boolean
  /** Times of the operator's own procedure; null: the published figure or the house rule stands. */
  procedure: { soakS: number | null; openCloseS: number | null; coolS: number | null; holdBeforePullS: number | null } | null
}

const { load, clampFace, pull, walkOn } = jointTimesJson
const HOUSE = 'house rule (common practice, no source)'

/**
 * Steps of one joint in order, each with low, likely and high time.
 *
 * Model:  load, clamp and face, pull: house values (shared/tables/joint-times.json), clamping and facing growing with
 *         the OD. Soak: from 14 in OD the least of ASTM F2620 by wall, below that 11 s for each mm of wall of
 *         ISO 21307:2017, as there the bead decides. Heater out: the longest allowed. Cooling: 11 min for each inch of
 *         wall, ASTM F2620. All published times from memory, to be confirmed with the qualified procedure.
 *         A time of the operator's own procedure replaces each and has no spread.
 * Input:  metres; times in seconds. Throws a RangeError for a size or wall that is not above zero.
 */
export function jointTimes({ odM, minimumWallM, walks, procedure }: JointTimesInput): StepTime[] {
  requireNumber('odM', odM, { above: 0 })
  const figures = jointFigures({ odM, minimumWallM })
  const faceMin = clampFace.baseMin + (clampFace.perOdInMin * odM) / inchM
  const moved = walks ? walkOn : pull
  const house = (step: JointStep, { lowMin, likelyMin, highMin }: { lowMin: number; likelyMin: number; highMin: number }): StepTime => ({ step, lowS: lowMin * minuteS, likelyS: likelyMin * minuteS, highS: highMin * minuteS, source: 'houseRule', cite: HOUSE })
  const given = (step: JointStep, own: number | null | undefined, publishedS: number, cite: string): StepTime =>
    own === null || own === undefined
      ? { step, lowS: publishedS, likelyS: publishedS, highS: publishedS, source: 'publishedFromMemory', cite }
      : { step, lowS: own, likelyS: own, highS: own, source: 'procedure', cite: 'the procedure of the job' }
  return [
    house('load', load),
    house('clampFace', { lowMin: faceMin * (1 - clampFace.spread), likelyMin: faceMin, highMin: faceMin * (1 + clampFace.spread) }),
    figures.soakS === null
      ? given('soak', procedure?.soakS, singleHighPressure(minimumWallM).soakS, 'ISO 21307:2017, 11 s per mm of wall, from memory; below 14 in the bead decides')
      : given('soak', procedure?.soakS, figures.soakS, 'ASTM F2620, least heat soak by wall, from memory'),
    given('heaterOut', procedure?.openCloseS, figures.heaterOutS, 'ASTM F2620, longest time from heater out to joined, from memory'),
    given('cool', procedure?.coolS, figures.coolingS, 'ASTM F2620, 11 min per inch of wall, from memory'),
    given('hold', procedure?.holdBeforePullS, 0, 'none asked for unless the procedure says so'),
    house('pull', moved),
  ]
}

/** Time of the whole round by its likely, low or high steps. */
export const cycleS = (steps: readonly StepTime[], which: 'lowS' | 'likelyS' | 'highS' = 'likelyS'): number => steps.reduce((sum, step) => sum + step[which], 0)
