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

/**
 * Index of the profile point at or left of x, 0 … n − 2 (n > 1). `guess` is tried first, with the piece after it: asked
 * from left to right this costs O(1), else O(log n).
 */
export function profilePiece(xs: readonly number[], xM: number, guess = 0): number {
  const last = xs.length - 2
  if (guess <= last && xs[guess]! <= xM) {
    if (guess === last || xM < xs[guess + 1]!) return guess
    if (guess + 1 === last || xM < xs[guess + 2]!) return guess + 1
  }
  let low = 0
  let high = last + 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (xs[middle]! <= xM) low = middle
    else high = middle
  }
  return low
}

/** Level of a profile at x, extended flat. */
export function profileLevelM(profile: GroundProfile, xM: number, guess = 0): number {
  const { xM: xs, levelM: levels } = profile
  const last = xs.length - 1
  if (xM <= xs[0]!) return levels[0]!
  if (xM >= xs[last]!) return levels[last]!
  const i = profilePiece(xs, xM, guess)
  const share = (xM - xs[i]!) / (xs[i + 1]! - xs[i]!)
  return levels[i]! + share * (levels[i + 1]! - levels[i]!)
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
  let first = n > 1 && startM >= xs[0]! ? profilePiece(xs, startM) : 0
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
  const corners = keptX.length
  const store = new Float64Array(3 * corners - 1)
  for (let i = 0; i < corners; i++) {
    store[i] = keptX[i]!
    store[corners + i] = keptLevel[i]!
    if (i > 0) store[2 * corners + i - 1] = (keptLevel[i]! - keptLevel[i - 1]!) / (keptX[i]! - keptX[i - 1]!)
  }
  return { xM: store.subarray(0, corners), levelM: store.subarray(corners, 2 * corners), slopeRatio: store.subarray(2 * corners) }
}
