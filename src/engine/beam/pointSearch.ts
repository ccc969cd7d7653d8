import type { Chain } from './chain.ts'
import { CLAMP_LEFT, GROUND_PIN, isJoined, LIES_FROM, LIES_TO, makeChain, POINT, pushClamp, pushCopy, pushOnPiece, pushPoint, TOUCH } from './chain.ts'
import type { BeamModel } from './model.ts'
import { TWO_WAY } from './model.ts'
import { restingPair } from './restingPair.ts'
import { RELEASE_SHARE, spanOf } from './review.ts'
import { chainCapacity } from './startGuess.ts'
import { finishChain, newtonStep } from './sweep.ts'
import { deepestViolation, makeSpan, makeViolation, makeWalker } from './violation.ts'

function startingChain(model: BeamModel): Chain | null {
  const chain = makeChain(chainCapacity(model))
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

interface Search {
  model: BeamModel
  chain: Chain
  /** The other chain of the pair; the two swap roles. */
  spare: Chain
  /** Forces of the state the present step started from, in the order of `chain`, and room for the next. */
  before: number[]
  beforeSpare: number[]
  /** No more contacts than this: a floor of points is as good as a stretch. */
  mostContacts: number
}

function swap(search: Search): void {
  const { chain, before } = search
  search.chain = search.spare
  search.spare = chain
  search.before = search.beforeSpare
  search.beforeSpare = before
}

/** Adds the deepest violation of every span to the chain. Returns the deepest met and how many came in. */
function addDeepest(search: Search, toleranceM: number): { worstM: number; added: number } {
  const { model, chain, spare: next, beforeSpare: before } = search
  const span = makeSpan()
  const found = makeViolation()
  const walker = makeWalker()
  let worstM = 0
  let added = 0
  next.count = 0
  const look = (j: number, withEnds: boolean): void => {
    spanOf(chain, model, j, span)
    if (!(span.length > 0) && !withEnds) return
    deepestViolation(model, span, walker, withEnds, found)
    if (found.depth > worstM) worstM = found.depth
    if (!(found.depth > toleranceM) || next.count + chain.count - j >= search.mostContacts) return
    before[next.count] = 0
    added++
    if (found.site >= 0) pushPoint(next, model, found.site, 0)
    else pushOnPiece(next, model, GROUND_PIN, found.piece, found.x, 0)
  }
  look(-1, true)
  for (let j = 0; j < chain.count; j++) {
    before[next.count] = chain.reaction[j]!
    pushCopy(next, chain, j)
    if (j === chain.count - 1) look(j, true)
    else if (!isJoined(chain, j)) look(j, false)
  }
  // Without an addition the solved chain stays the present one.
  if (added > 0) swap(search)
  return { worstM, added }
}

/** Lets item `drop` go at the share `reach` of the way from the forces before to those now. */
function letGo(search: Search, drop: number, reach: number): void {
  const { chain, spare: next, before, beforeSpare } = search
  next.count = 0
  for (let j = 0; j < chain.count; j++) {
    if (j === drop) continue
    beforeSpare[next.count] = before[j]! + reach * (chain.reaction[j]! - before[j]!)
    pushCopy(next, chain, j)
  }
  swap(search)
}

export interface PointSearch {
  chain: Chain
  passes: number
  /** Deepest penetration left. */
  worstM: number
}

/** Points the search may put on the ground beside its corners. */
const MOST_GROUND_POINTS = 4096

/** Contacts solved for in all passes together: some seconds at most. */
const WORK_LIMIT = 5e7

/**
 * Contact as carrying points only, found by a way that cannot cycle.
 *
 * Method: dual active set. Start from a pair (or the clamps) that carries without pulling. Each round lifts the pipe on to
 * the deepest violations; on the way there the forces change in proportion, and a contact whose force reaches zero is let
 * go at once. The energy of the bent pipe rises every round, so no set of contacts comes twice.
 * Touches and stretches on the ground come out as points ever closer together, down to `toleranceM` of penetration.
 * Cost: O(n) for each contact that comes or goes. Returns null where nothing holds the pipe.
 */
export function searchPoints(model: BeamModel, toleranceM: number): PointSearch | null {
  const start = startingChain(model)
  if (start === null) return null
  const search: Search = {
    model,
    chain: start,
    spare: makeChain(start.capacity),
    before: [],
    beforeSpare: [],
    mostContacts: 2 * model.siteCount + 2 * model.clampX.length + MOST_GROUND_POINTS,
  }
  newtonStep(start, model)
  finishChain(start, model)
  const release = RELEASE_SHARE * model.meanLoad
  let passes = 1
  let work = start.count
  let worstM = Infinity
  while (work < WORK_LIMIT) {
    const grown = addDeepest(search, toleranceM)
    worstM = grown.worstM
    if (grown.added === 0) break
    for (;;) {
      const { chain, before } = search
      newtonStep(chain, model)
      finishChain(chain, model)
      passes++
      work += chain.count
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
      if (drop < 0 || work >= WORK_LIMIT) break
      letGo(search, drop, reach)
    }
  }
  return isNumeric(search.chain) ? { chain: search.chain, passes, worstM } : { chain: search.chain, passes, worstM: Infinity }
}

/** False where a hopelessly slender body has run out of digits. */
function isNumeric(chain: Chain): boolean {
  for (let j = 0; j < chain.count; j++) if (!Number.isFinite(chain.curvature[j]!) || !Number.isFinite(chain.reaction[j]!)) return false
  return true
}

/** The exact form of what the search found: lone points on a piece become a touch, several a stretch (or one touch where they curve upward). */
export function exactFromPoints(points: Chain, model: BeamModel, exact: Chain): void {
  exact.count = 0
  for (let j = 0; j < points.count; j++) {
    const kind = points.kind[j]!
    const ref = points.ref[j]!
    if (kind === CLAMP_LEFT) pushClamp(exact, model, ref, points.curvature[j]!, points.curvature[++j]!)
    else if (kind === POINT) pushPoint(exact, model, ref, points.curvature[j]!)
    else {
      let last = j
      let force = points.reaction[j]!
      let moment = force * points.x[j]!
      let curvesUp = points.curvature[j]! > 0
      while (last + 1 < points.count && points.kind[last + 1] === GROUND_PIN && points.ref[last + 1] === ref) {
        last++
        force += points.reaction[last]!
        moment += points.reaction[last]! * points.x[last]!
        curvesUp &&= points.curvature[last]! > 0
      }
      if (curvesUp) pushOnPiece(exact, model, TOUCH, ref, force > 0 ? moment / force : points.x[j]!, points.curvature[j]!)
      else {
        pushOnPiece(exact, model, LIES_FROM, ref, points.x[j]!, 0)
        pushOnPiece(exact, model, LIES_TO, ref, points.x[last]!, 0)
      }
      j = last
    }
  }
}
