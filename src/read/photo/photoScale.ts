/** Scale of a photo from two taps on a length somebody knows, and the check by a second one. */

export interface Tap {
  xPx: number
  yPx: number
}

const apartPx = (a: Tap, b: Tap): number => Math.hypot(b.xPx - a.xPx, b.yPx - a.yPx)

/** Taps nearer than this say nothing of the scale: a finger is off by some 4 px of the photo on screen. */
export const LEAST_APART_PX = 40

/** Metres a pixel of the photo. Null where the taps lie too near to one another or the length is not above zero. */
export function photoScale(from: Tap, to: Tap, knownM: number): number | null {
  const px = apartPx(from, to)
  return px < LEAST_APART_PX || !(knownM > 0) ? null : knownM / px
}

/** More than this off on the check and the photo is skewed or a tap was off: house rule, before measuring. */
export const SKEW_RATIO = 0.03

export interface ScaleCheck {
  /** What the photo says the checked length is. */
  readsM: number
  /** (read − known) / known. */
  offRatio: number
  /** Off by more than the rule: a photo taken at an angle has no one scale. */
  isSkewed: boolean
}

/** Holds a second known length against the scale: 'this gate should be 12 ft, the photo says 13 ft 1 in'. */
export function checkScale(mPerPx: number, from: Tap, to: Tap, knownM: number): ScaleCheck | null {
  const px = apartPx(from, to)
  if (px < LEAST_APART_PX || !(knownM > 0)) return null
  const readsM = px * mPerPx
  const offRatio = (readsM - knownM) / knownM
  return { readsM, offRatio, isSkewed: Math.abs(offRatio) > SKEW_RATIO }
}
