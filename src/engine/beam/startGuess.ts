import type { Chain } from './chain.ts'
import { LIES_FROM, LIES_TO, pieceLevel, pushClamp, pushOnPiece, pushPoint, TOUCH } from './chain.ts'
import type { BeamModel } from './model.ts'
import { GROUND_CORNER } from './model.ts'
import { restingPair } from './restingPair.ts'
import type { ContactPattern } from './types.ts'

/** Room for the contacts of most cases; chains grow where it is not enough. */
export function chainCapacity(model: BeamModel): number {
  return model.siteCount + 2 * model.clampX.length + 8
}

/** Something between which the pipe may lie on the ground: a support, a clamp, a corner of the ground. */
interface Mark {
  x: number
  /** Site that would carry, or −1. */
  site: number
  clamp: number
  /** Free length to its left and right if the pipe lies on the ground there. */
  free: number
  isPost: boolean
  carries: boolean
  /** Whether and where the pipe lies between this mark and the next. */
  liesAfter: boolean
  liesFrom: number
  liesTo: number
}

function makeMark(x: number, site: number, clamp: number, free: number, isPost: boolean): Mark {
  return { x, site, clamp, free, isPost, carries: isPost, liesAfter: false, liesFrom: 0, liesTo: 0 }
}

/**
 * Free length beside a corner of the ground: beside a hollow half of (12 Δ/c)^⅓, beside a convex corner the whole of
 * it, at a free end of the body what its bow lifts.
 */
function freeAtCorner(model: BeamModel, corner: number): number {
  const ground = model.ground!
  const { loadPerM3: c, bowPerM: k0 } = model
  if (corner === 0 || corner === ground.slopeRatio.length) return Math.sqrt(k0 > 0 ? (2 * k0) / c : (-4 * k0) / c)
  const turn = Math.abs(ground.slopeRatio[corner]! - ground.slopeRatio[corner - 1]!)
  const length = Math.cbrt((12 * turn) / c)
  return model.cornerSite[corner]! < 0 ? length / 2 : length
}

/** Supports, clamps and corners from left to right. */
function marksOf(model: BeamModel): Mark[] {
  const { siteCount, siteX, siteKind, siteLevel, clampX, clampLevel, loadPerM3: c } = model
  const ground = model.ground!
  const pieces = ground.slopeRatio.length
  const marks: Mark[] = []
  let site = 0
  let clamp = 0
  let piece = 0
  for (let corner = 0; corner <= pieces; ) {
    while (site < siteCount && siteKind[site] === GROUND_CORNER) site++
    const siteAt = site < siteCount ? siteX[site]! : Infinity
    const clampAt = clamp < clampX.length ? clampX[clamp]! : Infinity
    const x = Math.min(siteAt, clampAt)
    const cornerX = ground.xM[corner]!
    if (x <= cornerX + 1e-9) {
      const isClamp = clampAt < siteAt
      piece = Math.max(0, corner - 1)
      const height = Math.max(0, (isClamp ? clampLevel[clamp]! : siteLevel[site]!) - pieceLevel(model, piece, x))
      const free = ((72 * height) / c) ** 0.25
      marks.push(makeMark(x, isClamp ? -1 : site, isClamp ? clamp : -1, free, true))
      if (isClamp) clamp++
      else site++
      if (Math.abs(x - cornerX) <= 1e-9) corner++
    } else {
      marks.push(makeMark(cornerX, model.cornerSite[corner]!, -1, freeAtCorner(model, corner), false))
      corner++
    }
  }
  return marks
}

/** Where between neighbouring marks there is room to lie, clear of what every support and clamp lifts on its two sides. */
function chooseStretches(marks: readonly Mark[], model: BeamModel): void {
  const last = marks.length - 1
  let lifted = -Infinity
  for (let i = 0; i < last; i++) {
    const mark = marks[i]!
    if (mark.isPost) lifted = Math.max(lifted, mark.x + mark.free)
    mark.liesFrom = Math.max(lifted, mark.x + mark.free)
  }
  lifted = Infinity
  for (let i = last; i > 0; i--) {
    const right = marks[i]!
    const left = marks[i - 1]!
    if (right.isPost) lifted = Math.min(lifted, right.x - right.free)
    left.liesTo = Math.min(lifted, right.x - right.free)
    if (left.liesFrom >= left.liesTo) continue
    left.liesAfter = true
    // A body end lies or curls up by itself unless its bow hogs; a corner within reach of a support stays clear.
    if (left.liesFrom === left.x + left.free && (left.x > model.startM || model.bowPerM < 0)) left.carries = true
    if (left.liesTo === right.x - right.free && (right.x < model.endM || model.bowPerM < 0)) right.carries = true
  }
}

/**
 * First guess without any knowledge: every support and clamp carries, and the pipe lies on every piece of ground that
 * is longer than the free lengths at its two ends. Writes to `chain`. Cost: O(n).
 */
export function coldStart(chain: Chain, model: BeamModel): void {
  chain.count = 0
  const { siteCount, siteX, clampX } = model
  if (model.ground === null) {
    let site = 0
    let clamp = 0
    while (site < siteCount || clamp < clampX.length) {
      if (clamp < clampX.length && (site >= siteCount || clampX[clamp]! < siteX[site]!)) pushClamp(chain, model, clamp++, 0, 0)
      else pushPoint(chain, model, site++, 0)
    }
    return
  }
  const marks = marksOf(model)
  chooseStretches(marks, model)
  let piece = 0
  for (let i = 0; i < marks.length; i++) {
    const mark = marks[i]!
    if (mark.clamp >= 0) pushClamp(chain, model, mark.clamp, 0, 0)
    else if (mark.carries && mark.site >= 0) pushPoint(chain, model, mark.site, 0)
    if (!mark.liesAfter) continue
    const next = marks[i + 1]!
    while (model.ground.xM[piece + 1]! < (mark.x + next.x) / 2) piece++
    pushOnPiece(chain, model, LIES_FROM, piece, mark.liesFrom, 0)
    pushOnPiece(chain, model, LIES_TO, piece, mark.liesTo, 0)
  }
  if (chain.count < 2 && clampX.length === 0) bridgeWeight(chain, model)
}

/** Where one support or none was found, the two places a stiff pipe would rest on come in. */
function bridgeWeight(chain: Chain, model: BeamModel): void {
  const places = restingPair(model)
  if (chain.count === 1 && !places.includes(chain.ref[0]!)) places.push(chain.ref[0]!)
  places.sort((a, b) => a - b)
  chain.count = 0
  for (const site of places) pushPoint(chain, model, site, 0)
}

/** A guess from the pattern of a similar case. Writes to `chain`; false where the pattern does not fit the supports. */
export function warmStart(chain: Chain, model: BeamModel, pattern: ContactPattern): boolean {
  chain.count = 0
  const { siteCount, siteX, siteOfSupport, clampX, ground } = model
  if (pattern.carrying.length !== siteOfSupport.length) return false
  const carries = new Uint8Array(siteCount)
  for (let i = 0; i < siteOfSupport.length; i++) if (pattern.carrying[i] && siteOfSupport[i]! >= 0) carries[siteOfSupport[i]!] = 1
  for (let i = 0; i < siteCount; i++) if (model.siteKind[i] === 1) carries[i] = 1
  const resting = ground ? pattern.ground : []
  let piece = 0
  let site = 0
  let clamp = 0
  let g = 0
  for (;;) {
    while (site < siteCount && carries[site] === 0) site++
    const siteAt = site < siteCount ? siteX[site]! : Infinity
    const clampAt = clamp < clampX.length ? clampX[clamp]! : Infinity
    const contact = g < resting.length ? resting[g]! : null
    const groundAt = contact ? Math.max(contact.startM, model.startM) : Infinity
    if (siteAt === Infinity && clampAt === Infinity && groundAt === Infinity) return chain.count > 0
    if (clampAt <= siteAt && clampAt <= groundAt) pushClamp(chain, model, clamp++, 0, 0)
    else if (siteAt <= groundAt) pushPoint(chain, model, site++, 0)
    else {
      g++
      if (!ground || !contact || groundAt > model.endM) continue
      const pieces = ground.slopeRatio.length
      const middle = (groundAt + Math.min(contact.endM, model.endM)) / 2
      while (piece + 1 < pieces && ground.xM[piece + 1]! < middle - 1e-9) piece++
      const corner = Math.abs(ground.xM[piece + 1]! - middle) <= 1e-9 ? piece + 1 : Math.abs(ground.xM[piece]! - middle) <= 1e-9 ? piece : -1
      if (contact.kind === 'point') {
        if (corner < 0) pushOnPiece(chain, model, TOUCH, piece, middle, 0)
        else if (model.cornerSite[corner]! >= 0) pushPoint(chain, model, model.cornerSite[corner]!, 0)
      } else {
        pushOnPiece(chain, model, LIES_FROM, piece, Math.max(groundAt, ground.xM[piece]!), 0)
        pushOnPiece(chain, model, LIES_TO, piece, Math.min(contact.endM, ground.xM[piece + 1]!), 0)
      }
    }
  }
}
