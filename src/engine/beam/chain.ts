import type { BeamModel } from './model.ts'

/** A site that carries: x and level known, curvature unknown. */
export const POINT = 0
/** A touch on a straight piece of ground: tangent, place unknown. */
export const TOUCH = 1
/** Left and right edge of a stretch lying on a piece of ground: tangent, no curvature, place unknown. Always a pair. */
export const LIES_FROM = 2
export const LIES_TO = 3
/** Left and right side of a clamp: level and slope known. */
export const CLAMP_LEFT = 4
export const CLAMP_RIGHT = 5
/** A place on a piece of ground held at a fixed x (only in the slow search). */
export const GROUND_PIN = 6

const NUMBERS = 13

/**
 * The contacts from left to right, with what is known and sought at each. Between neighbours the pipe is free,
 * save inside the pairs LIES_FROM–LIES_TO and CLAMP_LEFT–CLAMP_RIGHT.
 *
 * `curvature` is w″ = M/EI + k₀; `reaction` is the force on the pipe divided by EI; `slopeLeft` and `slopeRight`
 * are those of the free spans beside the item.
 */
export interface Chain {
  count: number
  capacity: number
  kind: Uint8Array
  /** Site (POINT), piece of ground (TOUCH, LIES_*, GROUND_PIN) or clamp. */
  ref: Int32Array
  x: Float64Array
  level: Float64Array
  slope: Float64Array
  curvature: Float64Array
  slopeLeft: Float64Array
  slopeRight: Float64Array
  reaction: Float64Array
  /** Elimination coefficients of the sweep. */
  a0: Float64Array
  a1: Float64Array
  a2: Float64Array
  b0: Float64Array
  b1: Float64Array
  b2: Float64Array
}

export function makeChain(capacity: number): Chain {
  const store = new Float64Array(NUMBERS * capacity)
  const part = (k: number): Float64Array => store.subarray(k * capacity, (k + 1) * capacity)
  return {
    count: 0,
    capacity,
    kind: new Uint8Array(capacity),
    ref: new Int32Array(capacity),
    x: part(0),
    level: part(1),
    slope: part(2),
    curvature: part(3),
    slopeLeft: part(4),
    slopeRight: part(5),
    reaction: part(6),
    a0: part(7),
    a1: part(8),
    a2: part(9),
    b0: part(10),
    b1: part(11),
    b2: part(12),
  }
}

/** Level of the straight line through a piece of ground. */
export function pieceLevel(model: BeamModel, piece: number, x: number): number {
  const ground = model.ground!
  return ground.levelM[piece]! + ground.slopeRatio[piece]! * (x - ground.xM[piece]!)
}

function push(chain: Chain, kind: number, ref: number, x: number, level: number, slope: number, curvature: number): void {
  const j = chain.count++
  if (j >= chain.capacity) throw new RangeError('contact chain is full')
  chain.kind[j] = kind
  chain.ref[j] = ref
  chain.x[j] = x
  chain.level[j] = level
  chain.slope[j] = slope
  chain.curvature[j] = curvature
}

export function pushPoint(chain: Chain, model: BeamModel, site: number, curvature: number): void {
  push(chain, POINT, site, model.siteX[site]!, model.siteLevel[site]!, 0, curvature)
}

export function pushOnPiece(chain: Chain, model: BeamModel, kind: number, piece: number, x: number, curvature: number): void {
  push(chain, kind, piece, x, pieceLevel(model, piece, x), model.ground!.slopeRatio[piece]!, curvature)
}

/** Both sides of a clamp; at an end of the body only the side that has pipe. */
export function pushClamp(chain: Chain, model: BeamModel, clamp: number, curvatureLeft: number, curvatureRight: number): void {
  const x = model.clampX[clamp]!
  const level = model.clampLevel[clamp]!
  const slope = model.clampSlope[clamp]!
  push(chain, CLAMP_LEFT, clamp, x, level, slope, curvatureLeft)
  push(chain, CLAMP_RIGHT, clamp, x, level, slope, curvatureRight)
}

/** True where no free span lies between two neighbouring items. */
export function isJoined(chain: Chain, j: number): boolean {
  const kind = chain.kind[j]!
  if (kind === LIES_FROM || kind === CLAMP_LEFT) return true
  // A stretch that starts or ends at a clamp lying on the ground.
  const next = chain.kind[j + 1]!
  return ((kind === CLAMP_RIGHT && next === LIES_FROM) || (kind === LIES_TO && next === CLAMP_LEFT)) && chain.x[j] === chain.x[j + 1]
}
