/** The nose at every support it arrives on (docs/formulas/nose.md). */
import { solveContactBeam } from '../engine/beam/solveContactBeam.ts'
import { bodies, type BodyCase, type BodySolution, type BodySolver } from './bodies.ts'
import type { SiteModel, SupportView } from './types.ts'

export interface NoseArrival {
  key: string
  view: SupportView
  /** The pull it happens in: after joint k; 0 while stick 1 is fed through. */
  pull: number
  /** Where the tip is judged: half an inch short of the support. */
  tipM: number
  /** Tip below the top of the support; negative = it passes over and lands late. */
  droopM: number
  /** What the support takes in. */
  leadInM: number
  groundLevelM: number
  /** The nose rests on the ground in front of the support. */
  isOnGround: boolean
  solution: BodySolution
}

/** Half an inch short of the support. */
const SHORT_OF_M = 0.0127
/** What lies farther behind the nose than this many supports and this length does not move it. */
export const SUPPORTS_BEHIND = 14
export const LENGTH_BEHIND_M = 60
const ON_GROUND_M = 0.001

/** Sticks a string must have for its nose to reach a running distance; it then lies from the datum backwards. */
export function sticksToReach(site: SiteModel, runningM: number): number {
  for (let sticks = 1; sticks <= site.sticks.stickCount; sticks += 1) if (site.sticks.stringLengthM(sticks) >= runningM - 1e-9) return sticks
  return site.sticks.stickCount
}

/**
 * Supports the nose arrives on, nearest first: those beyond the end of stick 1 (from the datum on, where stick 1 is fed
 * through) and within the finished string.
 */
export function arrivingSupports(site: SiteModel): SupportView[] {
  // A machine that walks leaves the string where it lies: its nose arrives nowhere.
  if (site.job.method === 'walking') return []
  const fromM = site.job.firstStick === 'fedThrough' ? site.jaws.outerClampM : site.sticks.stringLengthM(1)
  const toM = site.sticks.stringLengthM(site.sticks.stickCount)
  return site.supports.filter(({ runningM, levelM }) => levelM !== null && runningM > fromM + 1e-9 && runningM <= toM)
}

/** The pulled body with its nose at `tipM`, cut off far behind the nose where that changes nothing at the nose. */
export function pulledBody(site: SiteModel, tipM: number, reachM = tipM): BodyCase {
  const whole = bodies.pulled(site, sticksToReach(site, reachM), tipM)
  const behind = site.supports.filter(({ runningM }) => runningM < tipM)
  const cutM = Math.min(tipM - LENGTH_BEHIND_M, behind.at(-SUPPORTS_BEHIND)?.runningM ?? -Infinity)
  return cutM > whole.startM ? { ...whole, startM: cutM - 0.5, isCut: true } : whole
}

export function solveArrival(site: SiteModel, solver: BodySolver, view: SupportView): NoseArrival | null {
  const tipM = view.runningM - SHORT_OF_M
  const solution = solver.solve(pulledBody(site, tipM, view.runningM))
  if (solution === null || solution.result.status !== 'ok' || view.levelM === null) return null
  const tipLevelM = solution.result.ends.levelM[1]
  const groundLevelM = site.groundLevelAt(tipM)
  return {
    key: view.key, view, tipM, solution, groundLevelM,
    pull: sticksToReach(site, view.runningM) - 1,
    droopM: view.levelM - tipLevelM,
    leadInM: view.leadInM ?? 0,
    isOnGround: tipLevelM - groundLevelM < ON_GROUND_M,
  }
}

/** Force that lifts the nose from where it hangs to the top of the support, held at its tip; null where it cannot be solved. */
export function liftAtArrivalN(solver: BodySolver, arrival: NoseArrival): number | null {
  // A support sunk into the ground is no place to lift to: the nose lies on the ground there.
  return holdAtN(solver, arrival, Math.max(arrival.view.levelM!, arrival.groundLevelM))
}

/** Force that holds the tip at a level in front of the support, never below 0; null where it cannot be solved. */
export function holdAtN(solver: BodySolver, arrival: NoseArrival, levelM: number): number | null {
  const held = solver.solve({ ...arrival.solution.body, noseLevelM: levelM })
  return held === null || held.result.status !== 'ok' ? null : Math.max(0, held.noseForceN ?? 0)
}

/**
 * Farthest place short of where it stands at which the support would take the nose in without help, and how far that is
 * from the support before it; null where none does. Bisected on the solver, the support moved level with itself.
 */
export function reachableM(site: SiteModel, solver: BodySolver, arrival: NoseArrival): { runningM: number; spacingM: number } | null {
  const before = site.supports.filter(({ runningM, levelM }) => levelM !== null && runningM < arrival.view.runningM - 0.02).at(-1)
  const nearM = Math.max(before?.runningM ?? site.jaws.outerClampM, 0)
  const droopAt = (runningM: number): number => {
    const body = { ...pulledBody(site, runningM - SHORT_OF_M, runningM), endM: runningM - SHORT_OF_M }
    const solution = solver.solve(body)
    return solution === null || solution.result.status !== 'ok' ? Infinity : arrival.view.levelM! - solution.result.ends.levelM[1]
  }
  let [low, high] = [nearM + 0.3, arrival.view.runningM]
  if (low >= high || droopAt(low) > arrival.leadInM) return null
  for (let pass = 0; pass < 12; pass += 1) {
    const middle = (low + high) / 2
    if (droopAt(middle) <= arrival.leadInM) low = middle
    else high = middle
  }
  return { runningM: low, spacingM: low - nearM }
}

/** Spans of the row in `evenSpacingM`: with this many behind it the nose no longer knows how many there are. */
const ROW_SPANS = 8

/**
 * Spacing of a long level row of supports at which a free nose comes to the next one no lower than `droopM`.
 * Bisected on the contact beam; the closed form 0.245 w S⁴/EI only brackets it. Null while pipe or stiffness are unknown.
 */
export function evenSpacingM(site: SiteModel, droopM: number): number | null {
  const stiffnessNm2 = site.pipe.stiffnessNm2('nose')
  const { properties } = site.pipe
  if (stiffnessNm2 === null || properties === null || !(droopM > 0)) return null
  const droopAt = (spacingM: number): number => evenDroopM(site, spacingM) ?? Infinity
  const guessM = ((droopM * stiffnessNm2) / (0.245 * properties.lineLoadNPerM)) ** 0.25
  let [low, high] = [0.8 * guessM, 1.2 * guessM]
  for (let pass = 0; pass < 30; pass += 1) {
    const middle = (low + high) / 2
    if (droopAt(middle) <= droopM) low = middle
    else high = middle
  }
  return low
}

/** How far a free nose hangs below the next support of a long level row with no ground under it: what held nothing would do. */
export function evenDroopM(site: SiteModel, spacingM: number): number | null {
  const stiffnessNm2 = site.pipe.stiffnessNm2('nose')
  const { properties } = site.pipe
  if (stiffnessNm2 === null || properties === null || !(spacingM > 0)) return null
  const supports = Array.from({ length: ROW_SPANS }, (_, i) => ({ xM: i * spacingM, levelM: 0 }))
  const result = solveContactBeam({ lengthM: ROW_SPANS * spacingM, section: { bendingStiffnessNm2: stiffnessNm2, lineLoadNPerM: properties.lineLoadNPerM }, supports })
  return result.status === 'ok' ? 0 - result.ends.levelM[1] : null
}
