import type { Chain } from './chain.ts'
import {
  CLAMP_LEFT,
  CLAMP_RIGHT,
  isJoined,
  lastMove,
  LIES_FROM,
  LIES_TO,
  pieceLevel,
  POINT,
  pushClamp,
  pushOnPiece,
  pushPoint,
  TOUCH,
} from './chain.ts'
import type { BeamModel } from './model.ts'
import { TWO_WAY } from './model.ts'
import type { FreeSpan, Violation, Walker } from './violation.ts'
import { deepestViolation, makeSpan, makeViolation, makeWalker, spanCurvature } from './violation.ts'

/** No penetration above this is left (metres); a tenth of what is promised. */
export const PENETRATION_TOLERANCE_M = 1e-10
/** A one-way contact lets go below minus this share of the mean load. */
export const RELEASE_SHARE = 1e-9
/** Places nearer than this to the limit of their piece have reached it. */
const AT_LIMIT_M = 1e-9
/** A touch still moving this much after all steps of a pass is not settling. */
const UNSETTLED_MOVE_M = 1e-3
/** An edge this near a clamp that lies on the ground starts at it. */
const GLUE_M = 1e-6

export interface Review {
  changed: boolean
  /** Deepest penetration met. */
  worstM: number
}

interface Work {
  chain: Chain
  next: Chain
  model: BeamModel
  span: FreeSpan
  found: Violation
  walker: Walker
  result: Review
  /** A corner whose part a touch beside it has taken. */
  replacedSite: number
}

/** The free span to the right of item j, or the free ends (j = −1: the tail). */
export function spanOf(chain: Chain, model: BeamModel, j: number, span: FreeSpan): void {
  const { loadPerM3: c, startM, endM, bowPerM: k0 } = model
  const n = chain.count
  if (j < 0) {
    const a = chain.x[0]! - startM
    span.x0 = startM
    span.x1 = chain.x[0]!
    span.length = a
    span.curvature0 = k0
    span.growth0 = 0
    span.slope0 = chain.slopeLeft[0]! - a * (k0 - (c * a * a) / 6)
    span.level0 = chain.level[0]! - a * (span.slope0 + a * (k0 / 2 - (c * a * a) / 24))
    return
  }
  span.x0 = chain.x[j]!
  span.level0 = chain.level[j]!
  span.slope0 = chain.slopeRight[j]!
  span.curvature0 = chain.curvature[j]!
  if (j === n - 1) {
    span.x1 = endM
    span.length = endM - span.x0
    span.growth0 = c * span.length
  } else {
    span.x1 = chain.x[j + 1]!
    span.length = span.x1 - span.x0
    span.growth0 = (chain.curvature[j + 1]! - span.curvature0) / span.length + (c * span.length) / 2
  }
}

/** Adds a contact on a piece of ground, joining it with what the piece already has beside it. */
function emitOnPiece(work: Work, kind: number, piece: number, x: number, curvature: number): void {
  const { next, model } = work
  const last = next.count - 1
  if (kind === TOUCH && last >= 0 && next.x[last]! >= x) {
    work.result.changed = true
    return
  }
  if (last >= 0 && next.ref[last] === piece && (next.kind[last] === TOUCH || next.kind[last] === LIES_TO)) {
    if (kind !== LIES_TO) work.result.changed = true
    if (kind === TOUCH) {
      if (next.kind[last] === TOUCH && next.curvature[last]! > 0 && curvature > 0) {
        // A touch that curves upward is not yet at its place: it moves.
        next.x[last] = x
        next.level[last] = pieceLevel(model, piece, x)
      } else if (next.kind[last] === TOUCH) {
        next.kind[last] = LIES_FROM
        next.curvature[last] = 0
        pushOnPiece(next, model, LIES_TO, piece, x, 0)
      } else {
        next.x[last] = x
        next.level[last] = pieceLevel(model, piece, x)
      }
      return
    }
    if (kind === LIES_FROM) {
      if (next.kind[last] === TOUCH) {
        next.kind[last] = LIES_FROM
        next.curvature[last] = 0
      } else next.count-- // the stretch before goes on: its right edge goes, this left edge too
      return
    }
  }
  pushOnPiece(next, model, kind, piece, x, curvature)
}

function emitSite(work: Work, site: number, curvature: number): void {
  const { next, model } = work
  const last = next.count - 1
  if (last >= 0 && next.x[last]! >= model.siteX[site]!) return
  pushPoint(next, model, site, curvature)
}

/** Looks along one free span and adds the deepest violation, if any. */
function addDeepest(work: Work, j: number, withEnds: boolean): void {
  const { chain, model, span, found, walker, result } = work
  spanOf(chain, model, j, span)
  if (!(span.length > 0) && !withEnds) return
  deepestViolation(model, span, walker, withEnds, found)
  if (!(found.depth > PENETRATION_TOLERANCE_M)) return
  if (found.depth > result.worstM) result.worstM = found.depth
  result.changed = true
  const curvature = spanCurvature(span, model.loadPerM3, found.x - span.x0)
  if (found.site >= 0) emitSite(work, found.site, curvature)
  else {
    // Beside a corner where the pipe curves upward it touches next to the corner, not on both.
    const { cornerSite } = model
    if (j >= 0 && isUpwardCorner(chain, j, cornerSite[found.piece]!) && work.next.count > 0 && work.next.ref[work.next.count - 1] === chain.ref[j]) work.next.count--
    if (j + 1 < chain.count && isUpwardCorner(chain, j + 1, cornerSite[found.piece + 1]!)) work.replacedSite = chain.ref[j + 1]!
    emitOnPiece(work, TOUCH, found.piece, found.x, curvature)
  }
}

function isUpwardCorner(chain: Chain, j: number, site: number): boolean {
  return site >= 0 && chain.kind[j] === POINT && chain.ref[j] === site && chain.curvature[j]! > 0
}

/** Ground piece limits and what stands there. */
function leavesPiece(work: Work, piece: number, x: number): -1 | 0 | 1 {
  const corners = work.model.ground!.xM
  if (x < corners[piece]! - AT_LIMIT_M) return -1
  if (x > corners[piece + 1]! + AT_LIMIT_M) return 1
  return 0
}

/** A touch that ran off its piece: on to the corner, or to the next piece across a hollow. */
function emitStrayTouch(work: Work, piece: number, x: number, side: -1 | 1): void {
  const { model, result } = work
  const corners = model.ground!.xM
  const corner = side < 0 ? piece : piece + 1
  const site = model.cornerSite[corner]!
  result.changed = true
  if (site >= 0) return emitSite(work, site, 0)
  const other = piece + side
  const limit = corners[corner]!
  if (other < 0 || other >= model.ground!.slopeRatio.length) return emitOnPiece(work, TOUCH, piece, limit, 0)
  const middle = (corners[other]! + corners[other + 1]!) / 2
  emitOnPiece(work, TOUCH, other, side < 0 ? Math.max(x, middle) : Math.min(x, middle), 0)
}

function emitTouch(work: Work, j: number): void {
  const { chain, model, result } = work
  const piece = chain.ref[j]!
  const x = chain.x[j]!
  if (chain.reaction[j]! < -RELEASE_SHARE * model.meanLoad) {
    result.changed = true
    return
  }
  const move = lastMove(chain, j)
  const isUnsettled = Math.abs(move) > UNSETTLED_MOVE_M
  const side = leavesPiece(work, piece, isUnsettled ? x + move : x)
  if (side !== 0) return emitStrayTouch(work, piece, x, side)
  if (isUnsettled) {
    // A touch that finds no place has none; a real one comes back as the next deepest place.
    result.changed = true
    return
  }
  const before = j > 0 ? x - chain.x[j - 1]! : x - model.startM
  const after = j + 1 < chain.count ? chain.x[j + 1]! - x : model.endM - x
  const span = Math.min(before, after)
  if (chain.curvature[j]! < -1e-9 * model.loadPerM3 * span * span) {
    result.changed = true
    emitOnPiece(work, LIES_FROM, piece, x, 0)
    emitOnPiece(work, LIES_TO, piece, x, 0)
    return
  }
  emitOnPiece(work, TOUCH, piece, x, chain.curvature[j]!)
}

/** A stretch whose right edge has passed its left one: the spans beside it mean nothing. */
function isCrossed(chain: Chain, j: number): boolean {
  return chain.kind[j] === LIES_FROM && chain.x[j + 1]! < chain.x[j]! - AT_LIMIT_M
}

/** A stretch lying on the ground, items j and j + 1. */
function emitStretch(work: Work, j: number): void {
  const { chain, next, model, result } = work
  const piece = chain.ref[j]!
  const corners = model.ground!.xM
  const low = corners[piece]!
  const high = corners[piece + 1]!
  let from = chain.x[j]!
  let to = chain.x[j + 1]!
  if (isCrossed(chain, j)) {
    result.changed = true
    const before = from - (j > 0 ? chain.x[j - 1]! : model.startM)
    const after = (j + 2 < chain.count ? chain.x[j + 2]! : model.endM) - to
    const middle = (from + to) / 2
    // A little too far: a touch. Far too far: nothing lies here; if something touches, the next round finds it below the ground.
    if (from - to < 0.3 * Math.min(before, after) && leavesPiece(work, piece, middle) === 0) emitOnPiece(work, TOUCH, piece, middle, 0)
    return
  }
  const n = chain.count
  if (model.bowPerM < 0 && j === 0 && model.cornerSite[0]! >= 0) {
    // Hogging bow stands on its tip; only then does the pipe come down to lie.
    result.changed = true
    emitSite(work, model.cornerSite[0]!, model.bowPerM)
    from = Math.max(from, low) + Math.min(Math.sqrt((-4 * model.bowPerM) / model.loadPerM3), 0.3 * (to - from))
  }
  if (j > 0 && chain.kind[j - 1] === CLAMP_RIGHT && from - chain.x[j - 1]! < GLUE_M && from !== chain.x[j - 1]) {
    result.changed = true
    from = chain.x[j - 1]!
    next.curvature[next.count - 1] = 0
  } else if (from < low - AT_LIMIT_M) {
    result.changed = true
    if (to <= low) return emitStrayTouch(work, piece, from, -1)
    const over = Math.min(low - from, 0.3 * (to - low))
    emitStrayTouch(work, piece, from, -1)
    from = low + over
  }
  const last = next.count - 1
  if (last >= 0 && next.kind[last] === POINT && next.x[last]! >= from) {
    // A support that came in right at the edge lifts the pipe off beside it.
    result.changed = true
    const free = ((72 * Math.max(0, next.level[last]! - pieceLevel(model, piece, next.x[last]!))) / model.loadPerM3) ** 0.25
    from = next.x[last]! + Math.min(free, 0.45 * (to - next.x[last]!))
    if (!(from < to)) return
  }
  let right: -1 | 0 | 1 = 0
  let rightX = to
  if (to > high + AT_LIMIT_M) {
    result.changed = true
    if (from >= high) return emitStrayTouch(work, piece, to, 1)
    right = 1
    rightX = to
    to = high - Math.min(to - high, 0.3 * (high - from))
  }
  if (j + 2 < n && chain.kind[j + 2] === CLAMP_LEFT && chain.x[j + 2]! - to < GLUE_M && to !== chain.x[j + 2]) {
    result.changed = true
    to = chain.x[j + 2]!
  }
  emitOnPiece(work, LIES_FROM, piece, from, 0)
  splitBySupports(work, piece, from, to)
  const tip = model.cornerSite[model.cornerSite.length - 1]!
  if (model.bowPerM < 0 && j + 2 === n && tip >= 0) {
    result.changed = true
    to -= Math.min(Math.sqrt((-4 * model.bowPerM) / model.loadPerM3), 0.3 * (to - from))
    emitOnPiece(work, LIES_TO, piece, to, 0)
    emitSite(work, tip, model.bowPerM)
    return
  }
  emitOnPiece(work, LIES_TO, piece, to, 0)
  if (right > 0) emitStrayTouch(work, piece, rightX, 1)
}

/** Supports standing up through a stretch that is meant to lie on the ground. */
function splitBySupports(work: Work, piece: number, from: number, to: number): void {
  const { model, walker, result } = work
  let i = walker.site
  let worst = -1
  let depth = PENETRATION_TOLERANCE_M
  while (i < model.siteCount && model.siteX[i]! <= from) i++
  for (; i < model.siteCount && model.siteX[i]! < to; i++) {
    const above = model.siteLevel[i]! - pieceLevel(model, piece, model.siteX[i]!)
    if (above > depth) {
      depth = above
      worst = i
    }
  }
  walker.site = i
  if (worst < 0) return
  result.changed = true
  if (depth > result.worstM) result.worstM = depth
  const x = model.siteX[worst]!
  const free = ((72 * depth) / model.loadPerM3) ** 0.25
  pushOnPiece(work.next, model, LIES_TO, piece, x - Math.min(free, 0.45 * (x - from)), 0)
  pushPoint(work.next, model, worst, -Math.sqrt(model.loadPerM3 * depth))
  pushOnPiece(work.next, model, LIES_FROM, piece, x + Math.min(free, 0.45 * (to - x)), 0)
}

/** True for a body end resting beside a stretch on the same piece: without hogging bow it lies, it does not stand on its tip. */
function isIdleEnd(chain: Chain, model: BeamModel, j: number): boolean {
  if (model.bowPerM < 0 || model.ground === null) return false
  const site = chain.ref[j]!
  if (j === 0 && model.cornerSite[0] === site && chain.count > 1) return chain.kind[1] === LIES_FROM && chain.ref[1] === 0
  const last = model.ground.slopeRatio.length
  if (j === chain.count - 1 && model.cornerSite[last] === site && j > 0) return chain.kind[j - 1] === LIES_TO && chain.ref[j - 1] === last - 1
  return false
}

/**
 * Compares a solved chain with what contact allows and writes the corrected chain to `next`: contacts that would pull
 * go, the deepest violation of every span comes in, touches and stretches change into each other.
 */
export function reviewChain(chain: Chain, next: Chain, model: BeamModel): Review {
  const work: Work = { chain, next, model, span: makeSpan(), found: makeViolation(), walker: makeWalker(), result: { changed: false, worstM: 0 }, replacedSite: -1 }
  const { result } = work
  const n = chain.count
  next.count = 0
  const hasTail = chain.kind[0] !== CLAMP_RIGHT
  if (hasTail && !isCrossed(chain, 0)) addDeepest(work, -1, true)
  for (let j = 0; j < n; j++) {
    const kind = chain.kind[j]!
    if (kind === POINT) {
      const site = chain.ref[j]!
      if (site === work.replacedSite || (chain.reaction[j]! < -RELEASE_SHARE * model.meanLoad && model.siteKind[site] !== TWO_WAY) || isIdleEnd(chain, model, j)) result.changed = true
      else emitSite(work, site, chain.curvature[j]!)
    } else if (kind === TOUCH) emitTouch(work, j)
    else if (kind === LIES_FROM) {
      emitStretch(work, j)
      j++
    } else if (kind === CLAMP_LEFT) {
      const last = next.count - 1
      const glued = last >= 0 && next.kind[last] === LIES_TO && next.x[last] === chain.x[j]
      pushClamp(next, model, chain.ref[j]!, glued ? 0 : chain.curvature[j]!, chain.curvature[j + 1]!)
      j++
    }
    if (kind === LIES_FROM && isCrossed(chain, j - 1)) continue
    if (j === n - 1) addDeepest(work, j, true)
    else if (!isJoined(chain, j) && !isCrossed(chain, j + 1)) addDeepest(work, j, false)
  }
  return result
}
