import type { Chain } from './chain.ts'
import { borrowChain, isJoined, makeChain, POINT, returnChains, TOUCH } from './chain.ts'
import type { BeamModel } from './model.ts'
import { buildModel, ONE_WAY, TWO_WAY } from './model.ts'
import { exactFromPoints, searchPoints } from './pointSearch.ts'
import { emptyResult, resultOf } from './result.ts'
import { reviewChain } from './review.ts'
import { chainCapacity, coldStart, warmStart } from './startGuess.ts'
import { finishChain, newtonStep, slopeMisfit } from './sweep.ts'
import type { ContactBeamInput, ContactBeamResult } from './types.ts'

/** Newton steps within one pass; three are common. */
const MAX_STEPS = 12
const PATIENT_STEPS = 4
/** A move of the free contact places below this has left nothing to mend: the next would be its square. */
const SETTLED_MOVE_M = 1e-8
/** Largest kink left at a contact. */
const SLOPE_TOLERANCE = 1e-9
const MAX_REVIEWS = 40
/** Penetration the point search is asked for first, before the exact form takes over, and where that fails. */
const ROUGH_TOLERANCE_M = 1e-6
const FINE_TOLERANCE_M = 1e-9

interface Settled {
  ok: boolean
  chain: Chain
  passes: number
  worstM: number
}

/** False where the chain cannot hold the body, so that a solve would be singular. */
function holdsBody(chain: Chain, model: BeamModel): boolean {
  const n = chain.count
  if (n === 0) return false
  if (n > 1 || model.clampX.length > 0) return true
  if (chain.kind[0] !== TOUCH) return false
  // A single touch is a rocker: it bears right under the centre of gravity.
  const centre = model.startM + model.lengthM / 2
  const corners = model.ground!.xM
  const piece = chain.ref[0]!
  if (centre < corners[piece]! || centre > corners[piece + 1]!) return false
  chain.x[0] = centre
  chain.level[0] = model.ground!.levelM[piece]! + model.ground!.slopeRatio[piece]! * (centre - corners[piece]!)
  return true
}

/** False where contacts have run past each other. */
function isOrdered(chain: Chain): boolean {
  for (let j = 0; j + 1 < chain.count; j++) if (!(chain.x[j + 1]! > chain.x[j]!) && !isJoined(chain, j)) return false
  return true
}

function fingerprint(chain: Chain): number {
  let hash = 17
  for (let j = 0; j < chain.count; j++) hash = (Math.imul(hash, 31) + chain.kind[j]! * 65537 + chain.ref[j]!) | 0
  return hash
}

/** Solve and review in turn until nothing changes; stops when a set of contacts comes back a third time. */
function settle(start: Chain, spare: Chain, model: BeamModel): Settled {
  let chain = start
  let next = spare
  let passes = 0
  let worstM = Infinity
  const seen = new Map<number, number>()
  for (let round = 0; round < MAX_REVIEWS; round++) {
    if (!holdsBody(chain, model) || !isOrdered(chain)) break
    let move = Infinity
    for (let step = 0; step < MAX_STEPS && move > SETTLED_MOVE_M; step++) {
      const before = move
      move = newtonStep(chain, model)
      passes++
      // Newton that does not close in is after a touch that is not there; the review takes it out.
      if (step >= PATIENT_STEPS && move > 0.5 * before) break
    }
    if (move !== move) break
    finishChain(chain, model)
    const review = reviewChain(chain, next, model)
    worstM = review.worstM
    if (!review.changed && move <= SETTLED_MOVE_M && isOrdered(chain) && slopeMisfit(chain) <= SLOPE_TOLERANCE) return { ok: true, chain, passes, worstM }
    if (review.changed) {
      const mark = fingerprint(next)
      const times = (seen.get(mark) ?? 0) + 1
      if (times > 2) break
      seen.set(mark, times)
    } else if (round > MAX_REVIEWS / 2) break
    const swap = chain
    chain = next
    next = swap
  }
  return { ok: false, chain, passes, worstM }
}

/** Place of a lone support that balances the pipe, −1 if none; `unstable` where nothing keeps the pipe from tipping. */
function statics(model: BeamModel): 'held' | 'unstable' | number {
  if (model.clampX.length > 0 || model.twoWayCount > 1 || model.ground !== null) return 'held'
  const centre = model.startM + model.lengthM / 2
  const slack = 1e-9 * model.lengthM
  let left = false
  let right = false
  let under = -1
  let pivot = -1
  for (let i = 0; i < model.siteCount; i++) {
    const offset = model.siteX[i]! - centre
    if (model.siteKind[i] === TWO_WAY) pivot = i
    if (Math.abs(offset) <= slack) under = i
    else if (offset < 0) left = true
    else right = true
  }
  if (pivot >= 0) {
    const offset = model.siteX[pivot]! - centre
    if (Math.abs(offset) <= slack) return left && right ? 'held' : pivot
    for (let i = 0; i < model.siteCount; i++) {
      if (model.siteKind[i] === ONE_WAY && (model.siteX[i]! - model.siteX[pivot]!) * -offset > 0) return 'held'
    }
    return 'unstable'
  }
  if (left && right) return 'held'
  return under >= 0 ? under : 'unstable'
}

/** The pipe balanced on one support, turned just so far that it clears what stands on one side. */
function balanced(model: BeamModel, site: number): Chain {
  const chain = makeChain(4)
  chain.count = 1
  chain.kind[0] = POINT
  chain.ref[0] = site
  chain.x[0] = model.siteX[site]!
  chain.level[0] = model.siteLevel[site]!
  newtonStep(chain, model)
  finishChain(chain, model)
  const { loadPerM3: c, bowPerM: k0 } = model
  const arm = model.lengthM / 2
  let turn = 0
  for (let i = 0; i < model.siteCount; i++) {
    if (i === site) continue
    const t = Math.abs(model.siteX[i]! - chain.x[0]!)
    const level = chain.level[0]! + (k0 * t * t) / 2 - (c / 24) * (t * t * (6 * arm * arm - 4 * arm * t + t * t))
    const needed = (model.siteLevel[i]! - level) / (model.siteX[i]! - chain.x[0]!)
    if (Math.abs(needed) > Math.abs(turn) && model.siteLevel[i]! > level) turn = needed
  }
  chain.slopeLeft[0] = turn
  chain.slopeRight[0] = turn
  return chain
}

/**
 * A pipe under its own weight on one-sided supports, clamps and rigid ground: contact forces, bent shape, moments.
 *
 * Model:  Euler–Bernoulli, small slope, linear elastic, uniform, quasi-static, no friction; optional even bow.
 * Method: mesh-free. Between contacts the pipe is a quartic, so three-moment equations over the contacts plus Newton on
 *         the free places of touches and lying edges are exact. The set of contacts is mended until nothing pulls and
 *         nothing penetrates; where that starts to cycle, a dual active set search that cannot cycle takes over.
 *         Cost: O(p·n) for p passes, O(n) memory, n supports and ground corners.
 * Input:  see ContactBeamInput. Supports at or below the ground carry nothing.
 * Output: see ContactBeamResult; reactions ≥ 0 (two-way: either sign), gaps ≥ 0, reaction × gap = 0.
 * Valid:  |slope| ≤ 0.1; past it the result says `outOfSmallSlope` and is not clipped.
 * Fails:  never throws. `rejected` names the field of malformed input; `unstable` where the weight lies outside the outer
 *         contacts and there is no ground; `notConverged` with `residual` (metres of penetration left) after the pass cap.
 * Accuracy: balance of force and moment 1e-9 of the load, penetration ≤ 1e-9 m, levels 1e-6 m (asserted in tests).
 * Source: derived; derivation and symbols in docs/formulas/contact-beam.md.
 */
export function solveContactBeam(input: ContactBeamInput): ContactBeamResult {
  const model = buildModel(input)
  if (typeof model === 'string') return emptyResult('rejected', model, 0)
  const held = statics(model)
  if (held === 'unstable') return emptyResult('unstable', 'the weight lies outside the outer supports and there is no ground', 0)
  if (typeof held === 'number') return resultOf(input, model, balanced(model, held), { status: 'ok', passes: 1 })

  const capacity = chainCapacity(model)
  const start = borrowChain(capacity)
  const spare = borrowChain(capacity)
  const result = solveFrom(input, model, start, spare)
  returnChains(start, spare)
  return result
}

function solveFrom(input: ContactBeamInput, model: BeamModel, start: Chain, spare: Chain): ContactBeamResult {
  let passes = 0
  if (input.warmStart && warmStart(start, model, input.warmStart)) {
    const warm = settle(start, spare, model)
    passes += warm.passes
    if (warm.ok) return resultOf(input, model, warm.chain, { status: 'ok', passes })
  }
  coldStart(start, model)
  const cold = settle(start, spare, model)
  passes += cold.passes
  if (cold.ok) return resultOf(input, model, cold.chain, { status: 'ok', passes })

  for (const toleranceM of [ROUGH_TOLERANCE_M, FINE_TOLERANCE_M]) {
    const points = searchPoints(model, toleranceM)
    if (points === null) return emptyResult('unstable', 'nothing holds the pipe', passes)
    passes += points.passes
    exactFromPoints(points.chain, model, start)
    const polished = settle(start, spare, model)
    passes += polished.passes
    if (polished.ok) return resultOf(input, model, polished.chain, { status: 'ok', passes })
    if (toleranceM > FINE_TOLERANCE_M) continue
    if (points.worstM <= toleranceM) return resultOf(input, model, points.chain, { status: 'ok', passes })
    const reason = 'the contacts did not settle'
    if (points.worstM === Infinity) return { ...emptyResult('notConverged', reason, passes), residual: Infinity }
    return resultOf(input, model, points.chain, { status: 'notConverged', reason, residual: points.worstM, passes })
  }
  return emptyResult('notConverged', 'the contacts did not settle', passes)
}

