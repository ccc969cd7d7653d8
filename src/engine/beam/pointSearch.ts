import type { Chain } from './chain.ts'
import { GROUND_PIN, isJoined, makeChain, POINT, pushClamp, pushOnPiece, pushPoint } from './chain.ts'
import type { BeamModel } from './model.ts'
import { TWO_WAY } from './model.ts'
import { RELEASE_SHARE, spanOf } from './review.ts'
import { chainCapacity } from './startGuess.ts'
import { finishChain, newtonStep } from './sweep.ts'
import { deepestViolation, makeSpan, makeViolation, makeWalker } from './violation.ts'

/**
 * Two places whose upper hull edge bridges the centre of gravity: where a stiff straight pipe would rest. With one
 * two-way support the pipe turns about it on to the first obstacle on the heavy side.
 * Returns sites left to right, or an empty list where nothing holds the pipe.
 */
function restingPair(model: BeamModel): number[] {
  const { siteCount, siteX, siteLevel, siteKind } = model
  const centre = model.startM + model.lengthM / 2
  let pivot = -1
  for (let i = 0; i < siteCount; i++) if (siteKind[i] === TWO_WAY) pivot = i
  if (pivot >= 0) {
    const toRight = centre >= siteX[pivot]!
    let best = -1
    let steepest = -Infinity
    for (let i = 0; i < siteCount; i++) {
      if (i === pivot || siteX[i]! > siteX[pivot]! !== toRight) continue
      const rise = (siteLevel[i]! - siteLevel[pivot]!) / Math.abs(siteX[i]! - siteX[pivot]!)
      if (rise > steepest) {
        steepest = rise
        best = i
      }
    }
    if (best < 0) return []
    return toRight ? [pivot, best] : [best, pivot]
  }
  const hull: number[] = []
  for (let i = 0; i < siteCount; i++) {
    while (hull.length > 1) {
      const a = hull[hull.length - 2]!
      const b = hull[hull.length - 1]!
      const cross = (siteX[b]! - siteX[a]!) * (siteLevel[i]! - siteLevel[a]!) - (siteLevel[b]! - siteLevel[a]!) * (siteX[i]! - siteX[a]!)
      if (cross < 0) break
      hull.pop()
    }
    hull.push(i)
  }
  for (let k = 0; k + 1 < hull.length; k++) if (siteX[hull[k + 1]!]! >= centre) return siteX[hull[k]!]! <= centre ? [hull[k]!, hull[k + 1]!] : []
  return []
}

function startingChain(model: BeamModel, capacity: number): Chain | null {
  const chain = makeChain(capacity)
  const held: number[] = []
  for (let i = 0; i < model.siteCount; i++) if (model.siteKind[i] === TWO_WAY) held.push(i)
  const places = model.clampX.length === 0 && held.length < 2 ? restingPair(model) : held
  let clamp = 0
  for (const site of places) {
    while (clamp < model.clampX.length && model.clampX[clamp]! < model.siteX[site]!) pushClamp(chain, model, clamp++, 0, 0)
    pushPoint(chain, model, site, 0)
  }
  while (clamp < model.clampX.length) pushClamp(chain, model, clamp++, 0, 0)
  return chain.count > 0 ? chain : null
}

function isOneWay(chain: Chain, model: BeamModel, j: number): boolean {
  const kind = chain.kind[j]!
  return kind === GROUND_PIN || (kind === POINT && model.siteKind[chain.ref[j]!] !== TWO_WAY)
}

function copyItem(from: Chain, j: number, to: Chain): void {
  const k = to.count++
  to.kind[k] = from.kind[j]!
  to.ref[k] = from.ref[j]!
  to.x[k] = from.x[j]!
  to.level[k] = from.level[j]!
  to.slope[k] = from.slope[j]!
  to.curvature[k] = 0
}

/** `chain` with the deepest violation of every span added; forces of the present state in `before`. */
function withDeepest(chain: Chain, model: BeamModel, toleranceM: number, before: Float64Array): { next: Chain; worstM: number; added: number } {
  const next = makeChain(chain.capacity)
  const span = makeSpan()
  const found = makeViolation()
  const walker = makeWalker()
  let worstM = 0
  let added = 0
  const look = (j: number, withEnds: boolean): void => {
    spanOf(chain, model, j, span)
    if (!(span.length > 0) && !withEnds) return
    deepestViolation(model, span, walker, withEnds, found)
    if (found.depth > worstM) worstM = found.depth
    if (!(found.depth > toleranceM) || next.count + chain.count + 2 >= next.capacity) return
    before[next.count] = 0
    added++
    if (found.site >= 0) pushPoint(next, model, found.site, 0)
    else pushOnPiece(next, model, GROUND_PIN, found.piece, found.x, 0)
  }
  look(-1, true)
  for (let j = 0; j < chain.count; j++) {
    before[next.count] = chain.reaction[j]!
    copyItem(chain, j, next)
    if (j === chain.count - 1) look(j, true)
    else if (!isJoined(chain, j)) look(j, false)
  }
  return { next, worstM, added }
}

function without(chain: Chain, drop: number): Chain {
  const next = makeChain(chain.capacity)
  for (let j = 0; j < chain.count; j++) if (j !== drop) copyItem(chain, j, next)
  return next
}

export interface PointSearch {
  chain: Chain
  passes: number
  /** Deepest penetration left. */
  worstM: number
}

/**
 * Contact as carrying points only, found by a way that cannot cycle.
 *
 * Method: dual active set. Start from a pair (or the clamps) that carries without pulling. Each round lifts the pipe on to
 * the deepest violations; on the way there the forces change in proportion, and a contact whose force reaches zero is let
 * go at once. The energy of the bent pipe rises every round, so no set of contacts comes twice.
 * Touches and stretches on the ground come out as points ever closer together, down to `toleranceM` of penetration.
 * Cost: O(n) for each contact that comes or goes. Returns null where nothing holds the pipe.
 */
export function searchPoints(model: BeamModel, toleranceM: number, maxPasses: number): PointSearch | null {
  const capacity = Math.max(chainCapacity(model), 64) + (toleranceM < 1e-8 ? 4096 : 512)
  let chain = startingChain(model, capacity)
  if (chain === null) return null
  newtonStep(chain, model)
  finishChain(chain, model)
  let passes = 1
  let worstM = Infinity
  const release = RELEASE_SHARE * model.meanLoad
  let before = new Float64Array(capacity)
  while (passes < maxPasses) {
    const grown = withDeepest(chain, model, toleranceM, before)
    worstM = grown.worstM
    if (grown.added === 0) return { chain, passes, worstM }
    chain = grown.next
    for (;;) {
      newtonStep(chain, model)
      finishChain(chain, model)
      passes++
      let drop = -1
      let reach = 1
      for (let j = 0; j < chain.count; j++) {
        const now = chain.reaction[j]!
        if (!(now < -release) || !isOneWay(chain, model, j)) continue
        const was = Math.max(0, before[j]!)
        const share = was / (was - now)
        if (drop < 0 || share < reach) {
          reach = share
          drop = j
        }
      }
      if (drop < 0 || passes >= maxPasses) break
      const kept = new Float64Array(capacity)
      for (let j = 0, k = 0; j < chain.count; j++) if (j !== drop) kept[k++] = before[j]! + reach * (chain.reaction[j]! - before[j]!)
      before = kept
      chain = without(chain, drop)
    }
  }
  return { chain, passes, worstM }
}

