import type { BeamModel } from './model.ts'

/** A free span from x0 on: level0 + slope0·t + curvature0·t²/2 + growth0·t³/6 − c·t⁴/24, 0 ≤ t ≤ length. */
export interface FreeSpan {
  x0: number
  /** Right end; not x0 + length, which would be off by rounding. */
  x1: number
  length: number
  level0: number
  slope0: number
  curvature0: number
  growth0: number
}

/** The deepest place of a span below what it may not pass. site ≥ 0: a site; else piece ≥ 0: inside a piece of ground. */
export interface Violation {
  depth: number
  x: number
  site: number
  piece: number
}

export function makeSpan(): FreeSpan {
  return { x0: 0, x1: 0, length: 0, level0: 0, slope0: 0, curvature0: 0, growth0: 0 }
}

export function makeViolation(): Violation {
  return { depth: 0, x: 0, site: -1, piece: -1 }
}

export function spanLevel(span: FreeSpan, c: number, t: number): number {
  return span.level0 + t * (span.slope0 + t * (span.curvature0 / 2 + t * (span.growth0 / 6 - (t * c) / 24)))
}

export function spanSlope(span: FreeSpan, c: number, t: number): number {
  return span.slope0 + t * (span.curvature0 + t * (span.growth0 / 2 - (t * c) / 6))
}

export function spanCurvature(span: FreeSpan, c: number, t: number): number {
  return span.curvature0 + t * (span.growth0 - (t * c) / 2)
}

/**
 * Where the slope of a span passes `slope` while rising, between `from` and `to`, both inside the stretch where the
 * curvature is positive (so there is one such place at most). NaN if there is none.
 *
 * Method: Newton held in a shrinking bracket, to the last digit.
 */
export function risingThrough(span: FreeSpan, c: number, slope: number, from: number, to: number): number {
  let low = from
  let high = to
  const atLow = spanSlope(span, c, low) - slope
  const atHigh = spanSlope(span, c, high) - slope
  if (!(atLow < 0 && atHigh > 0)) return NaN
  let t = low - (atLow * (high - low)) / (atHigh - atLow)
  for (let i = 0; i < 60; i++) {
    const value = spanSlope(span, c, t) - slope
    if (value < 0) low = t
    else high = t
    let next = t - value / spanCurvature(span, c, t)
    if (!(next > low && next < high)) next = (low + high) / 2
    if (Math.abs(next - t) <= 1e-15 * (Math.abs(span.x0) + span.length)) return next
    t = next
  }
  return t
}

/** Ends of the stretch of positive curvature within the span; false if there is none. Writes to `out`. */
export function saggingStretch(span: FreeSpan, c: number, out: { from: number; to: number }): boolean {
  const b = span.growth0
  const disc = b * b + 2 * c * span.curvature0
  if (!(disc > 0)) return false
  const root = Math.sqrt(disc)
  out.from = Math.max(0, (b - root) / c)
  out.to = Math.min(span.length, (b + root) / c)
  return out.to > out.from
}

/** Walks along sites and pieces once while the spans are asked from left to right. */
export interface Walker {
  site: number
  piece: number
  stretch: { from: number; to: number }
}

export function makeWalker(): Walker {
  return { site: 0, piece: 0, stretch: { from: 0, to: 0 } }
}

/**
 * Deepest violation of one free span against the sites inside it and the ground under it.
 *
 * Sites cover all supports, convex corners of the ground and the body ends; between them a span can only be below the
 * ground at a place where it has the slope of the piece and curves upward, which `risingThrough` finds exactly.
 * Cost: O(sites and pieces under the span).
 * Input: `withEnds` for a free end of the body. Output: in `worst`, depth 0 if none.
 */
export function deepestViolation(model: BeamModel, span: FreeSpan, walker: Walker, withEnds: boolean, worst: Violation): void {
  const { siteX, siteLevel, siteCount, loadPerM3: c, ground } = model
  const { x0, x1, level0, slope0, curvature0, growth0 } = span
  worst.depth = 0
  worst.site = -1
  worst.piece = -1
  const half = curvature0 / 2
  const third = growth0 / 6
  const fourth = c / 24
  let i = walker.site
  // A free end counts the site at its outer end, also where it has no length: a lying pipe may end under a support.
  const withStart = withEnds && x0 === model.startM
  const withStop = withEnds && (x1 === model.endM || x0 === x1)
  while (i < siteCount && (withStart || x0 === x1 ? siteX[i]! < x0 : siteX[i]! <= x0)) i++
  for (; i < siteCount && (withStop ? siteX[i]! <= x1 : siteX[i]! < x1); i++) {
    const t = siteX[i]! - x0
    const depth = siteLevel[i]! - level0 - t * (slope0 + t * (half + t * (third - t * fourth)))
    if (depth > worst.depth) {
      worst.depth = depth
      worst.site = i
      worst.x = siteX[i]!
    }
  }
  walker.site = i
  if (ground === null) return
  const corners = ground.xM
  const pieces = ground.slopeRatio.length
  let k = walker.piece
  while (k + 1 < pieces && corners[k + 1]! <= x0) k++
  walker.piece = k
  const { stretch } = walker
  if (!saggingStretch(span, c, stretch)) return
  while (k + 1 < pieces && corners[k + 1]! <= x0 + stretch.from) k++
  for (; k < pieces && corners[k]! < x0 + stretch.to; k++) {
    const left = Math.max(stretch.from, corners[k]! - x0)
    const right = Math.min(stretch.to, corners[k + 1]! - x0)
    if (!(right > left)) continue
    const t = risingThrough(span, c, ground.slopeRatio[k]!, left, right)
    if (t !== t) continue
    const depth = ground.levelM[k]! + ground.slopeRatio[k]! * (x0 + t - corners[k]!) - spanLevel(span, c, t)
    if (depth > worst.depth) {
      worst.depth = depth
      worst.site = -1
      worst.piece = k
      worst.x = x0 + t
    }
  }
}
