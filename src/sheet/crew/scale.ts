/** True scales of the key plan. */
import { footM, inchM } from '../../units/factors.ts'
import { POINTS_PER_M } from './paper.ts'

/** A drawing at 1:ratio; feet sheets also say feet to the inch. */
export interface DrawnScale {
  ratio: number
  /** Points of the page to a metre of the site. */
  ptPerM: number
  /** 1 in on paper is so many feet; null on metric sheets. */
  feetPerIn: number | null
}

const decades = [1, 10, 100, 1000]
/** Steps of engineer's scales: 1 in = 10, 20 … 60 ft and their tenfolds. */
const feetSteps = decades.flatMap((ten) => [1, 2, 3, 4, 5, 6, 8].map((step) => step * ten))
/** Common metric scales. */
const metricSteps = [10, 100, 1000, 10_000].flatMap((ten) => [1, 2, 2.5, 5].map((step) => step * ten)).filter((ratio) => Number.isInteger(ratio))

export const scaleAt = (ratio: number, feetPerIn: number | null): DrawnScale => ({ ratio, ptPerM: POINTS_PER_M / ratio, feetPerIn })

/**
 * The largest usual scale at which `lengthM` takes at most `roomPt` and `widthM` at most `acrossPt`.
 * Never fails: what is longer than every step is drawn at the smallest.
 */
export const scaleFor = (lengthM: number, roomPt: number, widthM: number, acrossPt: number, isMetric: boolean): DrawnScale => {
  const steps = isMetric ? metricSteps.map((ratio) => scaleAt(ratio, null)) : feetSteps.map((feet) => scaleAt(Math.round((feet * footM) / inchM), feet))
  return steps.find(({ ptPerM }) => lengthM * ptPerM <= roomPt && widthM * ptPerM <= acrossPt) ?? steps.at(-1)!
}
