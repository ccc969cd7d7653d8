/** Whether a stand tips over the edge of its base (docs/formulas/tipping.md). */

export interface TippingInput {
  /** Horizontal push on the saddle and its height over the ground. */
  pushN: number
  heightM: number
  /** Weight the pipe puts on the saddle at that moment. */
  loadN: number
  /** Weight of the stand itself. */
  standN: number
  /** Base in the direction of the push. */
  baseM: number
}

/**
 * Moment that keeps a stand on its base over the moment that tips it, about the edge it would tip over.
 *
 * Model:  rigid stand on firm level ground, load and own weight over the middle of the base: (N + G)·b/2 over H·h.
 * Output: Infinity where nothing pushes; under 1 it tips.
 * Source: statics, derived.
 */
export function standingRatio({ pushN, heightM, loadN, standN, baseM }: TippingInput): number {
  const tippingNm = Math.abs(pushN) * heightM
  return tippingNm > 0 ? ((loadN + standN) * baseM) / 2 / tippingNm : Infinity
}

export interface NosePushInput {
  /** Bottom of the nose below the top of the roller when it meets it. */
  droopM: number
  /** Weight the roller takes once the nose is up. */
  liftN: number
  /** Radius of the roller; null: unknown, the steepest slope counts. */
  rollerRadiusM: number | null
  /** Steepest slope on which a nose still rides up, against the line. */
  steepestRad: number
}

/** Places of the way up that are tried; the push is smooth and has one hump. */
const STEPS = 64

/**
 * Largest push along the line of a nose that rides up a roller, with the weight on the roller at that moment.
 *
 * Model:  the edge of the nose lies on the roller at ψ before its top, cosψ = 1 − z/r for a height z still to climb; the
 *         roller bears square to itself, so the push is weight × tanψ. The weight grows evenly from 0 to `liftN` on the way
 *         up. Where the roller is met deeper than at `steepestRad` a lead-in of that slope is taken to carry the nose there.
 *         Rolling friction is not in it.
 * Source: statics, derived.
 */
export function nosePush({ droopM, liftN, rollerRadiusM, steepestRad }: NosePushInput): { pushN: number; loadN: number } {
  let worst = { pushN: 0, loadN: 0 }
  if (!(droopM > 0) || !(liftN > 0)) return worst
  for (let step = 0; step <= STEPS; step += 1) {
    const toClimbM = (droopM * step) / STEPS
    const loadN = (liftN * (droopM - toClimbM)) / droopM
    const cosine = rollerRadiusM === null || rollerRadiusM <= 0 ? -1 : 1 - toClimbM / rollerRadiusM
    const slopeRad = toClimbM === 0 ? 0 : Math.min(steepestRad, Math.acos(Math.max(-1, cosine)))
    const pushN = loadN * Math.tan(slopeRad)
    if (pushN > worst.pushN) worst = { pushN, loadN }
  }
  return worst
}
