import type { Chain } from './chain.ts'
import { isJoined, LIES_FROM } from './chain.ts'
import type { BeamModel } from './model.ts'
import { spanOf } from './review.ts'
import type { BeamPoint } from './types.ts'
import type { FreeSpan } from './violation.ts'
import { makeSpan, risingThrough, saggingStretch, spanCurvature, spanLevel, spanSlope } from './violation.ts'

const FIELDS = 7

/**
 * The bent pipe as quartics, left to right without holes: free ends, free spans, stretches on the ground.
 * Seven numbers a part: x0, length, level, slope, curvature, its growth, and the load that bends it (0 on the ground).
 */
export interface BentShape {
  count: number
  parts: number[]
}

export function shapeOf(chain: Chain, model: BeamModel): BentShape {
  const n = chain.count
  const parts: number[] = []
  const span = makeSpan()
  let count = 0
  const add = (load: number): void => {
    if (!(span.length > 0)) return
    count++
    parts.push(span.x0, span.length, span.level0, span.slope0, span.curvature0, span.growth0, load)
  }
  spanOf(chain, model, -1, span)
  add(model.loadPerM3)
  for (let j = 0; j < n; j++) {
    if (j + 1 < n && isJoined(chain, j)) {
      if (chain.kind[j] !== LIES_FROM) continue
      span.x0 = chain.x[j]!
      span.x1 = chain.x[j + 1]!
      span.length = span.x1 - span.x0
      span.level0 = chain.level[j]!
      span.slope0 = chain.slope[j]!
      span.curvature0 = 0
      span.growth0 = 0
      add(0)
    } else {
      spanOf(chain, model, j, span)
      add(model.loadPerM3)
    }
  }
  return { count, parts }
}

/** Loads part i into `span` and returns its load. */
export function partInto(shape: BentShape, i: number, span: FreeSpan): number {
  const at = FIELDS * i
  const { parts } = shape
  span.x0 = parts[at]!
  span.length = parts[at + 1]!
  span.x1 = span.x0 + span.length
  span.level0 = parts[at + 2]!
  span.slope0 = parts[at + 3]!
  span.curvature0 = parts[at + 4]!
  span.growth0 = parts[at + 5]!
  return parts[at + 6]!
}

/** Part that holds x; `guess` is tried first, so that asking from left to right costs O(1), else O(log n). */
export function partAt(shape: BentShape, x: number, guess = 0): number {
  const { parts, count } = shape
  if (parts[FIELDS * guess]! <= x && (guess + 1 === count || x < parts[FIELDS * (guess + 1)]!)) return guess
  let low = 0
  let high = count
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (parts[FIELDS * middle]! <= x) low = middle
    else high = middle
  }
  return low
}

/** Level less the reference at x, which lies in part i. */
export function levelOnShape(shape: BentShape, i: number, x: number): number {
  const { parts } = shape
  const at = FIELDS * i
  const t = x - parts[at]!
  return parts[at + 2]! + t * (parts[at + 3]! + t * (parts[at + 4]! / 2 + t * (parts[at + 5]! / 6 - (t * parts[at + 6]!) / 24)))
}

/** Level, slope, moment and shear at x, held to the body. Cost: O(log n). */
export function pointOnShape(shape: BentShape, model: BeamModel, xM: number): BeamPoint {
  const x = Math.min(Math.max(xM, model.startM), model.endM)
  const span = makeSpan()
  const load = partInto(shape, partAt(shape, x), span)
  const t = x - span.x0
  return {
    levelM: model.referenceM + spanLevel(span, load, t),
    slopeRatio: spanSlope(span, load, t),
    momentNm: model.stiffnessNm2 * (spanCurvature(span, load, t) - model.bowPerM),
    shearN: model.stiffnessNm2 * (span.growth0 - load * t),
  }
}

/** Levels at every multiple of the step from the tail, at every join of parts and at both ends. */
export function curveOfShape(shape: BentShape, model: BeamModel, stepM: number): { xM: Float64Array; levelM: Float64Array } {
  if (!(stepM > 0)) throw new RangeError(`stepM must be more than 0, got ${stepM}`)
  const xs: number[] = []
  const levels: number[] = []
  const span = makeSpan()
  for (let i = 0; i < shape.count; i++) {
    const load = partInto(shape, i, span)
    const end = span.x0 + span.length
    xs.push(span.x0)
    levels.push(model.referenceM + span.level0)
    for (let k = Math.floor((span.x0 - model.startM) / stepM) + 1; ; k++) {
      const x = model.startM + k * stepM
      if (!(x < end)) break
      if (x <= span.x0) continue
      xs.push(x)
      levels.push(model.referenceM + spanLevel(span, load, x - span.x0))
    }
    if (i === shape.count - 1) {
      xs.push(model.endM)
      levels.push(model.referenceM + spanLevel(span, load, model.endM - span.x0))
    }
  }
  return { xM: Float64Array.from(xs), levelM: Float64Array.from(levels) }
}

export interface Extremes {
  momentNm: number
  momentAtM: number
  slopeRatio: number
}

/**
 * Largest |M| and |slope| of the body. Within a part the moment turns where its growth is zero and the slope where the
 * curvature is zero, so both come from closed forms.
 */
export function extremesOf(shape: BentShape, model: BeamModel): Extremes {
  const k0 = model.bowPerM
  const { parts, count } = shape
  let moment = 0
  let momentAtM = model.startM
  let slope = 0
  for (let i = 0; i < count; i++) {
    const at = FIELDS * i
    const length = parts[at + 1]!
    const slope0 = parts[at + 3]!
    const curvature0 = parts[at + 4]!
    const growth0 = parts[at + 5]!
    const load = parts[at + 6]!
    const startMoment = curvature0 - k0
    const endMoment = startMoment + length * (growth0 - (load * length) / 2)
    if (Math.abs(startMoment) > Math.abs(moment)) {
      moment = startMoment
      momentAtM = parts[at]!
    }
    if (Math.abs(endMoment) > Math.abs(moment)) {
      moment = endMoment
      momentAtM = parts[at]! + length
    }
    slope = Math.max(slope, Math.abs(slope0), Math.abs(slopeIn(slope0, curvature0, growth0, load, length)))
    if (load === 0) continue
    const turn = growth0 / load
    if (turn > 0 && turn < length) {
      const top = startMoment + (growth0 * turn) / 2
      if (Math.abs(top) > Math.abs(moment)) {
        moment = top
        momentAtM = parts[at]! + turn
      }
    }
    const disc = growth0 * growth0 + 2 * load * curvature0
    if (!(disc > 0)) continue
    const root = Math.sqrt(disc)
    const first = (growth0 - root) / load
    const second = (growth0 + root) / load
    if (first > 0 && first < length) slope = Math.max(slope, Math.abs(slopeIn(slope0, curvature0, growth0, load, first)))
    if (second > 0 && second < length) slope = Math.max(slope, Math.abs(slopeIn(slope0, curvature0, growth0, load, second)))
  }
  return { momentNm: model.stiffnessNm2 * moment, momentAtM, slopeRatio: slope }
}

function slopeIn(slope0: number, curvature0: number, growth0: number, load: number, t: number): number {
  return slope0 + t * (curvature0 + t * (growth0 / 2 - (t * load) / 6))
}

export interface Sag {
  sagM: number
  atM: number
}

/** Cursor of `deepestBelowChord`: spans are asked from left to right. */
export interface SagCursor {
  part: number
  span: FreeSpan
  stretch: { from: number; to: number }
}

/**
 * Largest depth of the pipe below the chord from (fromX, fromLevel) to (toX, toLevel), levels less the reference.
 * The pipe is deepest where it has the slope of the chord and curves upward, or where parts join.
 */
export function deepestBelowChord(
  shape: BentShape,
  cursor: SagCursor,
  chord: { fromX: number; toX: number; fromLevel: number; toLevel: number },
): Sag {
  const { fromX, toX, fromLevel, toLevel } = chord
  const slope = (toLevel - fromLevel) / (toX - fromX)
  const { span, stretch } = cursor
  let sagM = 0
  let atM = (fromX + toX) / 2
  for (; cursor.part < shape.count; cursor.part++) {
    const load = partInto(shape, cursor.part, span)
    if (span.x0 >= toX) break
    if (span.x0 + span.length <= fromX) continue
    // The start of the part, which covers every join, and the place where it runs along the chord.
    const startDepth = span.x0 > fromX ? fromLevel + slope * (span.x0 - fromX) - span.level0 : 0
    if (startDepth > sagM) {
      sagM = startDepth
      atM = span.x0
    }
    if (load !== 0 && saggingStretch(span, load, stretch)) {
      const t = risingThrough(span, load, slope, Math.max(stretch.from, fromX - span.x0), Math.min(stretch.to, toX - span.x0))
      const depth = t === t ? fromLevel + slope * (span.x0 + t - fromX) - spanLevel(span, load, t) : 0
      if (depth > sagM) {
        sagM = depth
        atM = span.x0 + t
      }
    }
    if (span.x0 + span.length > toX) break
  }
  return { sagM, atM }
}
