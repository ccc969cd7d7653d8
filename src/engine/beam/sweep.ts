import type { Chain } from './chain.ts'
import { CLAMP_LEFT, CLAMP_RIGHT, ELIMINATION_STRIDE, GROUND_PIN, isJoined, LIES_FROM, LIES_TO, pieceLevel, POINT, TOUCH } from './chain.ts'
import type { BeamModel } from './model.ts'

/** Free length of the body end that curls up from the ground it lies on: √(2k₀/c), 0 without bow. */
export function curledEndM(model: BeamModel): number {
  return model.bowPerM > 0 ? Math.sqrt((2 * model.bowPerM) / model.loadPerM3) : 0
}

/** Curvature and place of the first and last item where the free end of the body fixes them. */
function setEnds(chain: Chain, model: BeamModel): void {
  const { startM, endM, loadPerM3: c, bowPerM: k0 } = model
  const { kind, x, curvature, level, count } = chain
  const first = kind[0]!
  const last = kind[count - 1]!
  const curled = curledEndM(model)
  if (first === LIES_FROM) {
    x[0] = startM + curled
    level[0] = pieceLevel(model, chain.ref[0]!, x[0]!)
  } else if (first !== CLAMP_RIGHT) curvature[0] = k0 - (c * (x[0]! - startM) ** 2) / 2
  if (last === LIES_TO) {
    x[count - 1] = endM - curled
    level[count - 1] = pieceLevel(model, chain.ref[count - 1]!, x[count - 1]!)
  } else curvature[count - 1] = k0 - (c * (endM - x[count - 1]!) ** 2) / 2
}

/**
 * One Newton step for all curvatures and free contact places at once: block elimination from left to right, then back.
 *
 * Model: three-moment equations over the contacts, linearised in the places of touches and edges
 *        (docs/formulas/contact-beam.md, "The sweep").        Cost: O(n), no allocation.
 * Output: the largest move of a place in metres (0 where no place is free: the step is then exact).
 *         NaN or Infinity where the chain does not hold the body.
 */
export function newtonStep(chain: Chain, model: BeamModel): number {
  setEnds(chain, model)
  const { startM, endM, loadPerM3: c } = model
  const { count: n, kind, x, level, slope, curvature, elimination } = chain
  // Slope at the right end of the span to the left of item j: slopeLeft + A + B·δκ_j + C·δx_j.
  let slopeLeft = 0
  let A = 0
  let B = 0
  let C = 0
  let hasLeft = false
  let moves = false
  for (let j = 0; j < n; j++) {
    const type = kind[j]!
    const hasRight = j + 1 < n && !isJoined(chain, j)
    let slopeRight = 0
    let l = 1
    let byOwnX = 0
    let byNextX = 0
    let byOwnXLeft = 0
    let nextSlopeLeft = 0
    let byNextXLeft = 0
    if (hasRight) {
      l = x[j + 1]! - x[j]!
      const chord = (level[j + 1]! - level[j]!) / l
      const k = curvature[j]!
      const kNext = curvature[j + 1]!
      const cl2 = c * l * l
      slopeRight = chord - (l * (2 * k + kNext)) / 6 - (cl2 * l) / 24
      nextSlopeLeft = chord + (l * (k + 2 * kNext)) / 6 + (cl2 * l) / 24
      const byLength = -chord / l - (2 * k + kNext) / 6 - cl2 / 8
      const byLengthLeft = -chord / l + (k + 2 * kNext) / 6 + cl2 / 8
      byOwnX = -slope[j]! / l - byLength
      byNextX = slope[j + 1]! / l + byLength
      byOwnXLeft = -slope[j]! / l - byLengthLeft
      byNextXLeft = slope[j + 1]! / l + byLengthLeft
    }
    let k0 = 0
    let k1 = 0
    let k2 = 0
    let x0 = 0
    let x1 = 0
    let x2 = 0
    if (type === POINT || type === GROUND_PIN) {
      if (hasLeft && hasRight) {
        const pivot = 1 / (B + l / 3)
        k0 = (slopeRight - slopeLeft - A) * pivot
        k1 = (-l / 6) * pivot
        k2 = byNextX * pivot
      }
    } else if (type === TOUCH) {
      moves = true
      const s = slope[j]!
      const right = s - slopeRight
      const left = s - slopeLeft - A
      if (hasLeft && hasRight) {
        const pivot = 1 / (B * byOwnX + (C * l) / 3)
        k0 = (left * byOwnX - C * right) * pivot
        k1 = -C * (l / 6) * pivot
        k2 = C * byNextX * pivot
        x0 = (B * right + (l / 3) * left) * pivot
        x1 = B * (l / 6) * pivot
        x2 = -B * byNextX * pivot
      } else if (hasRight) {
        const overhang = x[j]! - startM
        const pivot = 1 / ((c * overhang * l) / 3 + byOwnX)
        x0 = right * pivot
        x1 = (l / 6) * pivot
        x2 = -byNextX * pivot
        k0 = -c * overhang * x0
        k1 = -c * overhang * x1
        k2 = -c * overhang * x2
      } else if (hasLeft) {
        const overhang = endM - x[j]!
        x0 = left / (B * c * overhang + C)
        k0 = c * overhang * x0
      }
    } else if (type === LIES_FROM) {
      if (hasLeft) {
        moves = true
        x0 = (slope[j]! - slopeLeft - A) / C
      }
    } else if (type === LIES_TO) {
      if (hasRight) {
        moves = true
        const pivot = 1 / byOwnX
        x0 = (slope[j]! - slopeRight) * pivot
        x1 = (l / 6) * pivot
        x2 = -byNextX * pivot
      }
    } else if (type === CLAMP_LEFT) {
      if (hasLeft) k0 = (slope[j]! - slopeLeft - A) / B
    } else if (hasRight) {
      const pivot = -3 / l
      k0 = (slope[j]! - slopeRight) * pivot
      k1 = (l / 6) * pivot
      k2 = -byNextX * pivot
    }
    const at = ELIMINATION_STRIDE * j
    elimination[at] = k0
    elimination[at + 1] = k1
    elimination[at + 2] = k2
    elimination[at + 3] = x0
    elimination[at + 4] = x1
    elimination[at + 5] = x2
    if (hasRight) {
      A = (l / 6) * k0 + byOwnXLeft * x0
      B = l / 3 + (l / 6) * k1 + byOwnXLeft * x1
      C = byNextXLeft + (l / 6) * k2 + byOwnXLeft * x2
      slopeLeft = nextSlopeLeft
    }
    hasLeft = hasRight
  }
  return backSubstitute(chain, model, moves)
}

/**
 * Beside a very short span an edge moves by rounding alone: levels are known to this share of x, so slopes to that over
 * the span. A move that turns the span by less is not counted.
 */
const DUST = 1e-15

function backSubstitute(chain: Chain, model: BeamModel, moves: boolean): number {
  const { count: n, kind, x, curvature, elimination } = chain
  let dk = 0
  let dx = 0
  if (!moves) {
    for (let j = n - 1; j >= 0; j--) {
      const at = ELIMINATION_STRIDE * j
      dk = elimination[at]! + elimination[at + 1]! * dk
      curvature[j]! += dk
      // Before a joined neighbour the share of the next is 0, so dk needs no reset.
    }
    return dk === dk ? 0 : NaN
  }
  let largest = 0
  let nextOld = model.endM
  for (let j = n - 1; j >= 0; j--) {
    const kNext = dk
    const xNext = dx
    const at = ELIMINATION_STRIDE * j
    dk = elimination[at]! + elimination[at + 1]! * kNext + elimination[at + 2]! * xNext
    dx = elimination[at + 3]! + elimination[at + 4]! * kNext + elimination[at + 5]! * xNext
    curvature[j]! += dk
    elimination[at + 3] = dx
    const old = x[j]!
    if (dx !== 0) {
      const size = Math.abs(dx)
      const before = j > 0 ? x[j - 1]! : model.startM
      const room = Math.min(old - before, nextOld - old)
      const isDust = size < 0.1 * room && size * model.loadPerM3 * room ** 3 < DUST * (1 + Math.abs(old))
      if (!(size <= largest) && !isDust) largest = size
      // A free place keeps a quarter of the span on the side it moves to.
      let target = old + dx
      if (dx > 0 && kind[j] !== LIES_FROM) target = Math.min(target, nextOld - 0.25 * (nextOld - old))
      if (dx < 0 && kind[j] !== LIES_TO) target = Math.max(target, before + 0.25 * (old - before))
      x[j] = target
    }
    nextOld = old
  }
  placeOnGround(chain, model)
  return largest
}

/** Levels of the moved items; edges beside a carrying point by their closed form, which makes the next step safer. */
function placeOnGround(chain: Chain, model: BeamModel): void {
  const { count: n, kind, ref, x, level, slope, curvature } = chain
  for (let j = 0; j < n; j++) {
    const type = kind[j]!
    if (type === LIES_FROM && j > 0 && kind[j - 1] === POINT) {
      const l = edgeLength(model.loadPerM3, curvature[j - 1]!, heightOver(model, ref[j]!, x[j - 1]!, level[j - 1]!))
      if (l > 0) x[j] = x[j - 1]! + l
    } else if (type === LIES_TO && j + 1 < n && kind[j + 1] === POINT) {
      const l = edgeLength(model.loadPerM3, curvature[j + 1]!, heightOver(model, ref[j]!, x[j + 1]!, level[j + 1]!))
      if (l > 0) x[j] = x[j + 1]! - l
    }
    if (type === TOUCH || type === LIES_FROM || type === LIES_TO) level[j] = pieceLevel(model, ref[j]!, x[j]!)
    if (slope[j] !== slope[j]) throw new RangeError('contact chain is not numeric')
  }
}

/** Height of a contact over the line of a piece; exactly 0 for the corner of the piece itself, where rounding would leave dust. */
function heightOver(model: BeamModel, piece: number, x: number, level: number): number {
  const height = level - pieceLevel(model, piece, x)
  return Math.abs(height) < 1e-14 * (1 + Math.abs(level)) ? 0 : height
}

/**
 * Free length from a carrying point to the edge of the stretch that lies on the ground line, 0 where none exists:
 * height = κ l²/6 + c l⁴/24.
 */
export function edgeLength(c: number, curvature: number, heightM: number): number {
  const k6 = curvature / 6
  const disc = k6 * k6 + (c * heightM) / 6
  if (!(disc > 0)) return 0
  const root = Math.sqrt(disc)
  const square = curvature > 0 ? (2 * heightM) / (k6 + root) : ((root - k6) * 12) / c
  return square > 0 ? Math.sqrt(square) : 0
}

/** Slopes beside the items and the forces, once the curvatures stand. */
export function finishChain(chain: Chain, model: BeamModel): void {
  const { startM, endM, loadPerM3: c } = model
  const { count: n, x, level, curvature, slope, slopeLeft, slopeRight, reaction, kind } = chain
  let shearLeft = -c * (x[0]! - startM)
  let hasLeft = false
  let leftSlope = 0
  for (let j = 0; j < n; j++) {
    const hasRight = j + 1 < n && !isJoined(chain, j)
    let shearRight = 0
    let rightSlope = 0
    let nextShear = 0
    let nextSlope = 0
    if (hasRight) {
      const l = x[j + 1]! - x[j]!
      const chord = (level[j + 1]! - level[j]!) / l
      const k = curvature[j]!
      const kNext = curvature[j + 1]!
      const step = (kNext - k) / l
      const cl3 = (c * l * l * l) / 24
      shearRight = step + (c * l) / 2
      nextShear = step - (c * l) / 2
      rightSlope = chord - (l * (2 * k + kNext)) / 6 - cl3
      nextSlope = chord + (l * (k + 2 * kNext)) / 6 + cl3
    } else if (j === n - 1) shearRight = c * (endM - x[j]!)
    const type = kind[j]!
    const fixed = type !== POINT && type !== GROUND_PIN
    if (!hasLeft) leftSlope = fixed ? slope[j]! : rightSlope
    if (!hasRight) rightSlope = fixed ? slope[j]! : leftSlope
    slopeLeft[j] = leftSlope
    slopeRight[j] = rightSlope
    reaction[j] = shearRight - shearLeft
    shearLeft = nextShear
    leftSlope = nextSlope
    hasLeft = hasRight
  }
}

/** Largest kink at a contact of a finished chain: between its two sides, or to the slope it must have. */
export function slopeMisfit(chain: Chain): number {
  const { count: n, kind, slope, slopeLeft, slopeRight } = chain
  let worst = 0
  for (let j = 0; j < n; j++) {
    const type = kind[j]!
    const own = type === POINT || type === GROUND_PIN ? slopeRight[j]! : slope[j]!
    const misfit = Math.max(Math.abs(slopeLeft[j]! - own), Math.abs(slopeRight[j]! - own))
    if (!(misfit <= worst)) worst = misfit
  }
  return worst
}
