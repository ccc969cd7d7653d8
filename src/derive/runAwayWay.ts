/** How far a string that leaves by itself goes along the line. */
import { distanceBetween } from '../geometry/distance.ts'
import type { SiteModel } from './types.ts'

const STEP_M = 2
/** A fall of the limit itself counts as one. */
const ROUNDING = 1e-9
/** Beyond this it is drawn no farther: nothing stops it. */
export const FARTHEST_RUN_M = 60

/**
 * From a running distance on, to the exit (sign 1) or the infeed (−1): until the ground falls less than `flatRatio`, or a
 * positive stop lies across the line (a building, a barrier said to stop a pipe), or 60 m, where nothing has stopped it.
 */
export function runAwayWay(site: SiteModel, fromM: number, sign: 1 | -1, flatRatio: number): { reachM: number; isStopped: boolean } {
  const stops = [...site.placed.values()].flatMap(({ record }) => {
    if (record.kind === 'building') return [[...record.points, record.points[0]!]]
    return record.kind === 'barrier' && record.stopsPipe === true ? [record.points] : []
  })
  const blocked = (aM: number, bM: number): boolean => {
    const [a, b] = [site.atRunning(aM), site.atRunning(bM)]
    return stops.some((points) => distanceBetween({ kind: 'polyline', points: [a, b] }, { kind: 'polyline', points }).distanceM === 0)
  }
  for (let reachM = STEP_M; reachM <= FARTHEST_RUN_M; reachM += STEP_M) {
    const [beforeM, atM] = [fromM + sign * (reachM - STEP_M), fromM + sign * reachM]
    if (blocked(beforeM, atM)) return { reachM, isStopped: true }
    if ((site.groundLevelAt(beforeM) - site.groundLevelAt(atM)) / STEP_M < flatRatio - ROUNDING) return { reachM, isStopped: true }
  }
  return { reachM: FARTHEST_RUN_M, isStopped: false }
}
