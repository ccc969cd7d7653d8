/** Bowed sticks turned about their own axis: what each turn does at the joint, and which turn is best (docs/formulas/bow.md). */
import { sideHoldRatio, type GuideGeometry } from '../engine/lateral/guideHold.ts'
import { solveSideForces, standApart } from '../engine/lateral/solveSideForces.ts'
import { limitParam } from '../engine/limits.ts'
import { bodies, bodySolverOf, bowCurvaturePerM, solveBody, type BodySolution } from './bodies.ts'
import type { Side } from './jawSolve.ts'
import type { LimitLookup } from './mechanics.ts'
import { guideGeometryOf } from './sideForces.ts'
import { jawLineLevelM } from './supports.ts'
import type { MissingInput, SiteModel } from './types.ts'

/** The end of one pipe at the joint, upright and sideways. Slopes down-string against the jaw line; up and right positive. */
export interface BowFace {
  upRatio: number
  sideRatio: number
  /** Slope of both together × OD: what this face stands off square by. */
  gapM: number
  /** End of the pipe off the jaw line at the joint. */
  upM: number
  sideM: number
  /** Largest force of a clamp of this side, upright and sideways together. */
  clampN: number
}

/** The joint with all sticks turned alike. */
export interface BowAt {
  /** 0: ends up; counter-clockwise seen looking down-string, the ends then to the left. */
  turnRad: number
  /** Joint with the widest gap. */
  joint: number
  infeed: BowFace
  exit: BowFace
  /** Both faces added, upright and sideways together; the parts by themselves. */
  faceGapM: number
  uprightGapM: number
  sidewaysGapM: number
  /** Ends past each other at the joint, upright and sideways together. */
  hiLoM: number
  /** C: the largest clamp force of both sides × clamp spacing ÷ (stick weight × lever). */
  effortRatio: number
  clampN: number
}

export interface BowSolver {
  /** Inputs without which nothing can be solved; the bow itself among them. */
  missing: readonly MissingInput[]
  bowM: number
  curvaturePerM: number
  /** Null where a body does not come out. */
  at: (turnRad: number) => BowAt | null
  /** The same with straight sticks. */
  straight: () => BowAt | null
  /** Widest gap with every stick turned as it happens to lie: each face at its own worst turn of those tried. */
  worstGapM: (turnsRad: readonly number[]) => number | null
}

export interface BowSweep {
  bowM: number
  straight: BowAt
  /** Every 5° from ends up to ends down; the other way round is the same. */
  curve: readonly BowAt[]
  /** Turn of the least gap, and of the least effort; 0 … π. */
  leastGap: BowAt
  leastEffort: BowAt
  /** The best of every 15°: as near as a crew turns a stick. */
  leastGapByHand: BowAt
  /** Turn that squares the face of each side by itself, to the step of the curve. */
  leastGapOf: Readonly<Record<Side, number>>
  /** Nobody turns the sticks: each face at its own worst turn. */
  worstGapM: number
}

const DEGREE_RAD = Math.PI / 180
/** Step of the curve, and the step a crew turns by. */
const STEP_DEG = 5
export const HAND_STEP_RAD = 15 * DEGREE_RAD
const curveTurnsRad: readonly number[] = Array.from({ length: 180 / STEP_DEG + 1 }, (_, i) => i * STEP_DEG * DEGREE_RAD)
/** From the fourth joint on the nose no longer counts at the jaws (docs/formulas/jaws.md). */
const MOST_JOINTS = 4
/** Guides looked at from the jaws outward: each span passes on about a quarter. */
const MOST_GUIDES = 6
/** A bow across under this is the rounding of a half turn. */
const STRAIGHT_PER_M = 1e-15
const GOLDEN = (Math.sqrt(5) - 1) / 2
/** The turn is found to a hundredth of a degree. */
const TURN_TOLERANCE_RAD = 0.01 * DEGREE_RAD

/**
 * Solver of the joint for any turn of bowed sticks.
 *
 * Model:  natural curvature κ = 8 b/S²; κ·cos(turn) bends upright in the contact beam, κ·sin(turn) sideways between the closed clamps
 *         and the V rollers and cradles that carry, each with no more than its shape holds under its load (limit `guide-hold`).
 *         Upright and sideways add as legs of a right angle. All sticks of the string are turned like the stick in the infeed: one even arc.
 * Input:  bowM overrides the job's, for a bow nobody measured.
 * Limits: sideways without friction on flat rollers and ground, and with every stand on the line.
 */
export function createBowSolver(site: SiteModel, limits: LimitLookup, bowM: number | null = site.job.stickBowM.value): BowSolver {
  const leverM = limitParam(limits.limit('jaw-effort'), 'leverM')
  const geometry = guideGeometryOf(limits.limit('guide-hold'))
  const { missing: lacking } = bodySolverOf(site)
  const missing: readonly MissingInput[] = bowM === null ? [...lacking, { recordId: site.job.id, path: 'stickBowM.value', label: { en: 'bow of a stick', es: 'curvatura del tubo' } }] : lacking
  const curvaturePerM = bowCurvaturePerM(bowM, site.sticks.stickLengthM) ?? 0
  const joints = Array.from({ length: Math.min(MOST_JOINTS, Math.max(1, site.sticks.stickCount - 1)) }, (_, i) => i + 1)
  const faces = new Map<string, BowFace | null>()
  const face = (side: Side, joint: number, turnRad: number, perM: number): BowFace | null => {
    // The upright part is the same either way round; the sideways part only changes its sign.
    const key = `${side},${joint},${Math.abs(turnRad)},${perM}`
    let known = faces.get(key)
    if (known === undefined) faces.set(key, (known = missing.length > 0 ? null : solveFace(site, geometry, { side, joint, turnRad: Math.abs(turnRad), curvaturePerM: perM })))
    return known === null || turnRad >= 0 ? known : { ...known, sideRatio: -known.sideRatio, sideM: -known.sideM }
  }
  const weightN = (site.pipe.properties?.lineLoadNPerM ?? 0) * (site.sticks.stickLengthM ?? 0)
  const effortOf = (clampN: number): number => (clampN * (site.jaws.outerClampM - site.jaws.innerClampM)) / (weightN * leverM)
  const jointAt = (turnRad: number, perM: number): BowAt | null => {
    const infeed = face('infeed', 1, turnRad, perM)
    const exits = joints.map((joint) => face('exit', joint, turnRad, perM))
    if (infeed === null || exits.some((exit) => exit === null)) return null
    const known = exits as BowFace[]
    const widest = known.reduce((worst, { gapM }, i) => (gapM > known[worst]!.gapM ? i : worst), 0)
    const exit = known[widest]!
    const clampN = Math.max(infeed.clampN, ...known.map((one) => one.clampN))
    const odM = site.pipe.odM ?? 0
    return {
      turnRad, joint: joints[widest]!, infeed, exit, clampN,
      faceGapM: infeed.gapM + exit.gapM,
      uprightGapM: (Math.abs(infeed.upRatio) + Math.abs(exit.upRatio)) * odM,
      sidewaysGapM: (Math.abs(infeed.sideRatio) + Math.abs(exit.sideRatio)) * odM,
      hiLoM: Math.max(...known.map((one) => Math.hypot(one.upM - infeed.upM, one.sideM - infeed.sideM))),
      effortRatio: effortOf(clampN),
    }
  }
  return {
    missing, bowM: bowM ?? 0, curvaturePerM,
    at: (turnRad) => jointAt(wrappedRad(turnRad), curvaturePerM),
    straight: () => jointAt(0, 0),
    worstGapM: (turnsRad) => {
      const widest = (side: Side, joint: number): number => Math.max(...turnsRad.map((turnRad) => face(side, joint, turnRad, curvaturePerM)?.gapM ?? NaN))
      const gapM = widest('infeed', 1) + Math.max(...joints.map((joint) => widest('exit', joint)))
      return Number.isFinite(gapM) ? gapM : null
    },
  }
}

/** A turn within −π … π, the half turn as +π. */
export function wrappedRad(turnRad: number): number {
  const rest = turnRad - 2 * Math.PI * Math.round(turnRad / (2 * Math.PI))
  return rest <= -Math.PI ? rest + 2 * Math.PI : rest
}

function solveFace(site: SiteModel, geometry: GuideGeometry, { side, joint, turnRad, curvaturePerM }: { side: Side; joint: number; turnRad: number; curvaturePerM: number }): BowFace | null {
  const straight = side === 'infeed' ? bodies.infeedStick(site, 'closed') : bodies.exitString(site, joint, 'closed')
  const solution = solveBody(site, { ...straight, bow: { curvaturePerM, angleRad: turnRad } })
  if (solution === null || solution.result.status !== 'ok') return null
  // Ends up turned counter-clockwise look to the left, and right is positive.
  const plan = planOf(site, geometry, solution, -curvaturePerM * Math.sin(turnRad))
  if (plan === null) return null
  const upRatio = solution.result.ends.slopeRatio[side === 'infeed' ? 1 : 0] - site.jaws.slopeRatio
  return {
    upRatio, sideRatio: plan.slopeRatio,
    gapM: Math.hypot(upRatio, plan.slopeRatio) * (site.pipe.odM ?? 0),
    upM: solution.result.at(0).levelM - (jawLineLevelM(site.jaws, 0) ?? 0),
    sideM: plan.offsetM,
    clampN: Math.max(0, ...solution.jaws.map(({ forceN }, i) => Math.hypot(forceN, plan.clampForcesN[i] ?? 0))),
  }
}

interface Plan {
  offsetM: number
  slopeRatio: number
  /** In the order of the clamps. */
  clampForcesN: readonly number[]
}

/**
 * The body in plan. A pipe with the natural arc k·x²/2 held to the line is a straight pipe held off it by as much, so the
 * beam in plan of docs/formulas/side-force.md answers; at the joint, x = 0, the arc itself has neither offset nor slope.
 * Null where its search does not end, or the clamps stand in one place and hold nothing.
 */
function planOf(site: SiteModel, geometry: GuideGeometry, { body, jaws, supports }: BodySolution, k: number): Plan | null {
  if (Math.abs(k) < STRAIGHT_PER_M || jaws.length < 2) return { offsetM: 0, slopeRatio: 0, clampForcesN: [] }
  if (!standApart(jaws.map(({ runningM }) => runningM))) return null
  const place = (xM: number): { xM: number; offsetM: number } => ({ xM, offsetM: (-k * xM * xM) / 2 })
  const guides = supports
    .filter(({ view, reactionN }) => view.roller !== 'flat' && reactionN > 0)
    .toSorted((a, b) => Math.abs(a.view.runningM) - Math.abs(b.view.runningM))
    .slice(0, MOST_GUIDES)
    .map(({ view, reactionN }) => ({ ...place(view.runningM), holdN: reactionN * sideHoldRatio(view.roller, geometry) }))
  const result = solveSideForces({ bendingStiffnessNm2: site.pipe.stiffnessNm2(body.question)!, clamps: jaws.map(({ runningM }) => place(runningM)), guides, jointM: 0 })
  return result.isSettled ? { ...result.joint, clampForcesN: result.clampForcesN } : null
}

/**
 * All turns of the job's bow: curve every 5°, and the turns of least gap and least effort refined by golden section between
 * the samples next to the best one. Null while an input is missing or a body does not come out at some turn.
 * Cost: some 70 turns of two to five bodies each, upright and in plan.
 */
export function sweepBow(solver: BowSolver): BowSweep | null {
  const curve = curveTurnsRad.map(solver.at)
  const straight = solver.straight()
  const worstGapM = solver.worstGapM(curveTurnsRad)
  if (solver.missing.length > 0 || straight === null || worstGapM === null || curve.some((one) => one === null)) return null
  const known = curve as BowAt[]
  const least = (of: (at: BowAt) => number): BowAt => leastOf(solver, known, of)
  return {
    bowM: solver.bowM, straight, curve: known, worstGapM,
    leastGap: least(({ faceGapM }) => faceGapM),
    leastEffort: least(({ effortRatio }) => effortRatio),
    leastGapByHand: bestByHand(known),
    leastGapOf: { infeed: squarest(known, 'infeed'), exit: squarest(known, 'exit') },
  }
}

const squarest = (curve: readonly BowAt[], side: Side): number => curve.reduce((best, one) => (one[side].gapM < best[side].gapM - 1e-9 ? one : best)).turnRad

/** The best of every 15°; of equals the one nearest to ends up. */
const bestByHand = (curve: readonly BowAt[]): BowAt => curve.filter((_, i) => (i * STEP_DEG) % 15 === 0).reduce((best, one) => (one.faceGapM < best.faceGapM - 1e-9 ? one : best))

/** Golden section around the best sample; the sample itself where nothing between is better. */
function leastOf(solver: BowSolver, curve: readonly BowAt[], of: (at: BowAt) => number): BowAt {
  const index = curve.reduce((best, one, i) => (of(one) < of(curve[best]!) ? i : best), 0)
  let best = curve[index]!
  let [low, high] = [(curve[index - 1] ?? best).turnRad, (curve[index + 1] ?? best).turnRad]
  const ask = (turnRad: number): number => {
    const at = solver.at(turnRad)
    if (at !== null && of(at) < of(best)) best = at
    return at === null ? Infinity : of(at)
  }
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)]
  let [atLeft, atRight] = [ask(left), ask(right)]
  while (high - low > TURN_TOLERANCE_RAD) {
    if (atLeft <= atRight) {
      ;[high, right, atRight] = [right, left, atLeft]
      left = high - GOLDEN * (high - low)
      atLeft = ask(left)
    } else {
      ;[low, left, atLeft] = [left, right, atRight]
      right = low + GOLDEN * (high - low)
      atRight = ask(right)
    }
  }
  return best
}
