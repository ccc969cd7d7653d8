import type { GroundProfile } from './types.ts'

/** The ground under the body as straight pieces without needless corners. */
export interface GroundLine {
  /** Corners, first at the tail end of the body, last at the nose end. Length pieces + 1. */
  xM: Float64Array
  levelM: Float64Array
  /** One per piece. */
  slopeRatio: Float64Array
}

/** Corners that stray less than this from a straight run are left out; a hundredth of the penetration we accept. */
const STRAIGHT_TOLERANCE_M = 1e-11

/** Level of a profile at x, extended flat. Cost: O(log n). */
export function profileLevelM(profile: GroundProfile, xM: number): number {
  const { xM: xs, levelM: levels } = profile
  const last = xs.length - 1
  if (xM <= xs[0]!) return levels[0]!
  if (xM >= xs[last]!) return levels[last]!
  let low = 0
  let high = last
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (xs[middle]! <= xM) low = middle
    else high = middle
  }
  const share = (xM - xs[low]!) / (xs[high]! - xs[low]!)
  return levels[low]! + share * (levels[high]! - levels[low]!)
}

/**
 * The stretch of a profile under startM … endM, straight runs of corners joined.
 *
 * Method: a cone of slopes from the last kept corner that passes every corner since within the tolerance. Cost: O(n).
 * Input:  a valid profile, startM < endM, referenceM taken off every level.
 */
export function groundUnder(profile: GroundProfile, startM: number, endM: number, referenceM: number): GroundLine {
  const { xM: xs, levelM: levels } = profile
  const n = xs.length
  let first = 0
  while (first < n && xs[first]! <= startM) first++
  let stop = first
  while (stop < n && xs[stop]! < endM) stop++
  const keptX: number[] = [startM]
  const keptLevel: number[] = [profileLevelM(profile, startM) - referenceM]
  let anchorX = startM
  let anchorLevel = keptLevel[0]!
  let low = -Infinity
  let high = Infinity
  let previousX = startM
  let previousLevel = anchorLevel
  for (let i = first; i <= stop; i++) {
    const x = i < stop ? xs[i]! : endM
    const level = i < stop ? levels[i]! - referenceM : profileLevelM(profile, endM) - referenceM
    const slope = (level - anchorLevel) / (x - anchorX)
    if (previousX > anchorX && (slope < low || slope > high)) {
      keptX.push(previousX)
      keptLevel.push(previousLevel)
      anchorX = previousX
      anchorLevel = previousLevel
      low = -Infinity
      high = Infinity
    }
    const run = x - anchorX
    low = Math.max(low, (level - STRAIGHT_TOLERANCE_M - anchorLevel) / run)
    high = Math.min(high, (level + STRAIGHT_TOLERANCE_M - anchorLevel) / run)
    previousX = x
    previousLevel = level
  }
  keptX.push(previousX)
  keptLevel.push(previousLevel)
  const pieces = keptX.length - 1
  const slopeRatio = new Float64Array(pieces)
  for (let i = 0; i < pieces; i++) slopeRatio[i] = (keptLevel[i + 1]! - keptLevel[i]!) / (keptX[i + 1]! - keptX[i]!)
  return { xM: Float64Array.from(keptX), levelM: Float64Array.from(keptLevel), slopeRatio }
}
