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
  /** What holds all the lists below: one allocation for a chain. */
  store: Float64Array
  kind: Float64Array
  /** Site (POINT), piece of ground (TOUCH, LIES_*, GROUND_PIN) or clamp. */
  ref: Float64Array
  x: Float64Array
  level: Float64Array
  slope: Float64Array
  curvature: Float64Array
  slopeLeft: Float64Array
  slopeRight: Float64Array
  reaction: Float64Array
  /**
   * Six an item, left by the sweep: δcurvature and δx as a constant plus shares of the next item's. After the step the
   * fourth is the move of the item in metres.
   */
  elimination: Float64Array
}

export const ELIMINATION_STRIDE = 6

const LISTS = 9

/** An empty chain; it grows when more is pushed than it has room for. */
export function makeChain(capacity: number): Chain {
  const store = new Float64Array((LISTS + ELIMINATION_STRIDE) * capacity)
  return {
    count: 0,
    capacity,
    store,
    kind: store.subarray(0, capacity),
    ref: store.subarray(capacity, 2 * capacity),
    x: store.subarray(2 * capacity, 3 * capacity),
    level: store.subarray(3 * capacity, 4 * capacity),
    slope: store.subarray(4 * capacity, 5 * capacity),
    curvature: store.subarray(5 * capacity, 6 * capacity),
    slopeLeft: store.subarray(6 * capacity, 7 * capacity),
    slopeRight: store.subarray(7 * capacity, 8 * capacity),
    reaction: store.subarray(8 * capacity, LISTS * capacity),
    elimination: store.subarray(LISTS * capacity),
  }
}

/** Chains handed back: a solve takes two and keeps neither, and typed arrays are dear to make. No more than these are kept. */
const idle: Chain[] = []
const MOST_IDLE = 6

/** An empty chain with room for so many, from those handed back where one is large enough. */
export function borrowChain(capacity: number): Chain {
  for (let i = idle.length - 1; i >= 0; i--) {
    const chain = idle[i]!
    if (chain.capacity < capacity) continue
    idle.splice(i, 1)
    chain.count = 0
    chain.store.fill(0)
    return chain
  }
  return makeChain(capacity)
}

/** Hands chains back; nobody may use them any more. */
export function returnChains(...chains: readonly Chain[]): void {
  for (const chain of chains) {
    if (idle.length >= MOST_IDLE) idle.shift()
    idle.push(chain)
  }
}

function grow(chain: Chain): void {
  const larger = makeChain(2 * chain.capacity + 8)
  for (const list of ['kind', 'ref', 'x', 'level', 'slope', 'curvature', 'slopeLeft', 'slopeRight', 'reaction', 'elimination'] as const) larger[list].set(chain[list])
  Object.assign(chain, { ...larger, count: chain.count })
}

/** Move of a free contact place in the last step, metres. */
export function lastMove(chain: Chain, j: number): number {
  return chain.elimination[ELIMINATION_STRIDE * j + 3]!
}

/** Level of the straight line through a piece of ground. */
export function pieceLevel(model: BeamModel, piece: number, x: number): number {
  const ground = model.ground!
  return ground.levelM[piece]! + ground.slopeRatio[piece]! * (x - ground.xM[piece]!)
}

function push(chain: Chain, kind: number, ref: number, x: number, level: number, slope: number, curvature: number): void {
  if (chain.count >= chain.capacity) grow(chain)
  const j = chain.count++
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

/** Item j of `from` at the end of `to`, its curvature to be found anew. */
export function pushCopy(to: Chain, from: Chain, j: number): void {
  push(to, from.kind[j]!, from.ref[j]!, from.x[j]!, from.level[j]!, from.slope[j]!, 0)
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
