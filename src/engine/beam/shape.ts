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
  parts: Float64Array
}

export function shapeOf(chain: Chain, model: BeamModel): BentShape {
  const n = chain.count
  const parts = new Float64Array(FIELDS * (n + 1))
  const span = makeSpan()
  let count = 0
  const add = (load: number): void => {
    if (!(span.length > 0)) return
    const at = FIELDS * count++
    parts[at] = span.x0
    parts[at + 1] = span.length
    parts[at + 2] = span.level0
    parts[at + 3] = span.slope0
    parts[at + 4] = span.curvature0
    parts[at + 5] = span.growth0
    parts[at + 6] = load
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

function partAt(shape: BentShape, x: number): number {
  let low = 0
  let high = shape.count
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (shape.parts[FIELDS * middle]! <= x) low = middle
    else high = middle
  }
  return low
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
  const { parts } = shape
  let moment = 0
  let momentAtM = model.startM
  let slope = 0
  for (let i = 0; i < shape.count; i++) {
    const at = FIELDS * i
    const x0 = parts[at]!
    const length = parts[at + 1]!
    const slope0 = parts[at + 3]!
    const curvature0 = parts[at + 4]!
    const growth0 = parts[at + 5]!
    const load = parts[at + 6]!
    const startMoment = curvature0 - k0
    if (Math.abs(startMoment) > Math.abs(moment)) {
      moment = startMoment
      momentAtM = x0
    }
    if (Math.abs(slope0) > slope) slope = Math.abs(slope0)
    const endMoment = startMoment + length * (growth0 - (load * length) / 2)
    if (Math.abs(endMoment) > Math.abs(moment)) {
      moment = endMoment
      momentAtM = x0 + length
    }
    const slopeAt = (t: number): void => {
      const s = Math.abs(slope0 + t * (curvature0 + t * (growth0 / 2 - (t * load) / 6)))
      if (s > slope) slope = s
    }
    slopeAt(length)
    if (load === 0) continue
    const turn = growth0 / load
    if (turn > 0 && turn < length) {
      const top = startMoment + (growth0 * turn) / 2
      if (Math.abs(top) > Math.abs(moment)) {
        moment = top
        momentAtM = x0 + turn
      }
    }
    const disc = growth0 * growth0 + 2 * load * curvature0
    if (disc > 0) {
      const root = Math.sqrt(disc)
      const first = (growth0 - root) / load
      const second = (growth0 + root) / load
      if (first > 0 && first < length) slopeAt(first)
      if (second > 0 && second < length) slopeAt(second)
    }
  }
  return { momentNm: model.stiffnessNm2 * moment, momentAtM, slopeRatio: slope }
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
  const consider = (x: number, level: number): void => {
    const depth = fromLevel + slope * (x - fromX) - level
    if (depth > sagM) {
      sagM = depth
      atM = x
    }
  }
  for (; cursor.part < shape.count; cursor.part++) {
    const load = partInto(shape, cursor.part, span)
    if (span.x0 >= toX) break
    if (span.x0 + span.length <= fromX) continue
    if (span.x0 > fromX) consider(span.x0, span.level0)
    if (load === 0) {
      if (span.x0 + span.length < toX) consider(span.x0 + span.length, spanLevel(span, 0, span.length))
    } else if (saggingStretch(span, load, stretch)) {
      const t = risingThrough(span, load, slope, Math.max(stretch.from, fromX - span.x0), Math.min(stretch.to, toX - span.x0))
      if (t === t) consider(span.x0 + t, spanLevel(span, load, t))
    }
    if (span.x0 + span.length > toX) break
  }
  return { sagM, atM }
}
