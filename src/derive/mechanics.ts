/** Everything the checks ask of the contact beam, solved when asked and once a site. */
import { limitParam, type Limit } from '../engine/limits.ts'
import { bodies, bodySolverOf, type BodySolution } from './bodies.ts'
import { solveFeed, type FeedSolve } from './feed.ts'
import { effortOf, solveJoint, type JointSolve, type Side } from './jawSolve.ts'
import { arrivingSupports, evenDroopM, evenSpacingM, holdAtN, liftAtArrivalN, pulledBody, reachableM, solveArrival, type NoseArrival } from './noseArrivals.ts'
import { sideForcesOf, type SideForces } from './sideForces.ts'
import { jawLineLevelM } from './supports.ts'
import type { MissingInput, SiteModel, SupportView } from './types.ts'

/** Where limits come from: the table with the layout's changes laid over it. */
export interface LimitLookup {
  limit: (id: string) => Limit
}

export interface SpanSagAt {
  fromM: number
  toM: number
  sagM: number
  atM: number
  levelM: number
  ratio: number
  joint: number
}

export interface SupportLoad {
  view: SupportView
  loadN: number
  /** When it is that much: fusing a joint, pulling, feeding. */
  when: 'fuse' | 'pull' | 'feed'
  joint: number
}

export interface SinkChange {
  view: SupportView
  side: Side
  joint: number
  /** Change of offset at the joint when the support sinks. */
  changeM: number
}

export interface SetOutTolerance {
  view: SupportView
  /** Height error that changes C by the limit's step, held between its least and most. */
  toleranceM: number
}

export interface LiftClearance {
  joint: number
  /** Least height of the pipe on its lifts over a lower half. */
  clearM: number
  runningM: number
}

export interface Mechanics {
  site: SiteModel
  missing: readonly MissingInput[]
  /** Joints judged: the first four and the last; between them nothing at the jaws changes any more. */
  joints: readonly number[]
  joint: (joint: number) => JointSolve | null
  /** All judged joints that could be solved. */
  solvedJoints: () => readonly JointSolve[]
  worstEffortRatio: () => number | null
  /** C of one side at a joint by one solve, for trying changes; null where it cannot be solved. */
  sideEffort: (side: Side, joint: number) => number | null
  /** Spans at jaws, rack and stands while fusing, largest sag over span of each span over all joints. */
  sags: () => readonly SpanSagAt[]
  /** First support the nose arrives on; no solve needed. */
  firstArrival: () => SupportView | null
  arrivals: () => readonly NoseArrival[]
  liftN: (arrival: NoseArrival) => number | null
  /** Force that holds the nose at a level of its tip where it arrives, never below 0. */
  heldN: (arrival: NoseArrival, levelM: number) => number | null
  /** Where the support would have to stand to take the nose in by itself. */
  reachable: (arrival: NoseArrival) => { runningM: number; spacingM: number } | null
  /** Even spacing of a long level row that takes a free nose in at a droop. */
  evenSpacing: (droopM: number) => number | null
  /** Droop of a free nose past such a row, no ground under it. */
  evenDroop: (spacingM: number) => number | null
  loads: () => ReadonlyMap<string, SupportLoad>
  sinkChanges: () => readonly SinkChange[]
  tolerances: () => readonly SetOutTolerance[]
  /** Largest C over the judged joints with a support set off its height, of both sides or of one. */
  effortWithShift: (key: string, byM: number, side?: Side) => number | null
  feed: () => FeedSolve | null
  /** Of the fed stick, and of the string at each judged joint. */
  sideForces: () => readonly SideForces[]
  liftClearances: () => readonly LiftClearance[]
  atRest: () => BodySolution | null
  solveCount: () => number
}

/** A support farther from the joint than this, set wrong by ½ in, changes C by less than the step that counts, in every size tried. */
const JAWS_REACH_M = 40
const SIDES: readonly Side[] = ['infeed', 'exit']
const BISECTIONS = 7
/** Heights nearer to each other than this are one: what is left of the solver's sums. */
const SAME_HEIGHT_M = 1e-9

const once = <T>(make: () => T): (() => T) => {
  let made: { value: T } | null = null
  return () => (made ??= { value: make() }).value
}

/**
 * Lazily memoised solves of a site.
 *
 * Model:  bodies by phase as in docs/formulas/jaws.md; every number from the contact beam, none from a closed form.
 * Output: null or empty where an input is missing (`missing` names it) or a solve did not settle (the checks say so).
 */
export function createMechanics(site: SiteModel, limits: LimitLookup): Mechanics {
  const solver = bodySolverOf(site)
  const leverM = limitParam(limits.limit('jaw-effort'), 'leverM')
  // A job of one stick has no joint.
  const lastJoint = site.sticks.stickCount - 1
  const joints = [...new Set([1, 2, 3, 4, lastJoint].filter((joint) => joint >= 1 && joint <= lastJoint))]
  const infeedJoints = joints.slice(0, 1)
  const jointSolves = new Map<number, JointSolve | null>()
  const joint = (number: number): JointSolve | null => {
    let solve = jointSolves.get(number)
    if (solve === undefined) jointSolves.set(number, (solve = solver.missing.length > 0 ? null : solveJoint(site, solver, number, leverM)))
    return solve
  }
  const solvedJoints = once(() => joints.map(joint).filter((solve) => solve !== null))
  const near = once(() => site.supports.filter(({ runningM, levelM }) => levelM !== null && Math.abs(runningM) <= JAWS_REACH_M))
  const shiftedEffort = (key: string, byM: number, side: Side, number: number): number | null => {
    const body = side === 'infeed' ? bodies.infeedStick(site, 'closed') : bodies.exitString(site, number, 'closed')
    const solution = solver.solve({ ...body, shift: { key, byM } })
    return solution === null || solution.result.status !== 'ok' ? null : effortOf(site, solution, leverM)
  }
  /** Bodies in which a support takes part: the fed stick, or the string at each judged joint that reaches it. */
  const casesOf = (view: SupportView): { side: Side; joint: number }[] =>
    view.runningM < 0 ? infeedJoints.map((number) => ({ side: 'infeed', joint: number })) : joints.filter((number) => site.sticks.stringLengthM(number) >= view.runningM).map((number) => ({ side: 'exit', joint: number }))

  const arrivals = once(() => (solver.missing.length > 0 ? [] : arrivingSupports(site).map((view) => solveArrival(site, solver, view)).filter((one) => one !== null)))
  // A lone stick that the loader sets is never fed.
  const feed = once(() => (joints.length === 0 && site.job.firstStick === 'setByLoader' ? null : solveFeed(site, solver)))

  return {
    site,
    missing: solver.missing,
    joints,
    joint,
    solvedJoints,
    sideEffort: (side, number) => {
      const solution = solver.solve(side === 'infeed' ? bodies.infeedStick(site, 'closed') : bodies.exitString(site, number, 'closed'))
      return solution === null || solution.result.status !== 'ok' ? null : effortOf(site, solution, leverM)
    },
    worstEffortRatio: () => (solvedJoints().length === 0 ? null : Math.max(...solvedJoints().map(({ effortRatio }) => effortRatio))),
    sags: once(() => sagsOf(solvedJoints())),
    firstArrival: () => (solver.missing.length > 0 ? null : (arrivingSupports(site)[0] ?? null)),
    arrivals,
    liftN: (arrival) => liftAtArrivalN(solver, arrival),
    heldN: (arrival, levelM) => holdAtN(solver, arrival, levelM),
    reachable: (arrival) => reachableM(site, solver, arrival),
    evenSpacing: (droopM) => evenSpacingM(site, droopM),
    evenDroop: (spacingM) => evenDroopM(site, spacingM),
    loads: once(() => loadsOf(site, solvedJoints(), arrivals(), solver)),
    sinkChanges: once(() => {
      const sinkM = limitParam(limits.limit('offset-change'), 'sinkM')
      return near().flatMap((view) => casesOf(view).flatMap(({ side, joint: number }): SinkChange[] => {
        const base = joint(number)?.[side].closed
        const sunk = base === undefined ? null : solver.solve({ ...base.body, shift: { key: view.key, byM: -sinkM } })
        if (base === undefined || sunk === null || sunk.result.status !== 'ok') return []
        return [{ view, side, joint: number, changeM: Math.abs(sunk.result.at(0).levelM - base.result.at(0).levelM) }]
      }))
    }),
    tolerances: once(() => {
      const limit = limits.limit('set-out-tolerance')
      const [step, leastM, mostM] = [limitParam(limit, 'effortChange'), limitParam(limit, 'leastM'), limitParam(limit, 'mostM')]
      if (solvedJoints().length === 0) return []
      return near().map((view) => {
        const tries = casesOf(view).flatMap(({ side, joint: number }) => {
          const base = joint(number)?.[side].effortRatio
          if (base === undefined) return []
          return [1, -1].map((sign) => (errorM: number): number => Math.abs((shiftedEffort(view.key, sign * errorM, side, number) ?? base) - base))
        })
        return { view, toleranceM: largestError(tries, step, leastM, mostM) }
      })
    }),
    effortWithShift: (key, byM, only) => {
      const efforts = SIDES.filter((side) => only === undefined || side === only).flatMap((side) => (side === 'infeed' ? infeedJoints : joints).map((number) => shiftedEffort(key, byM, side, number)))
      return efforts.length === 0 || efforts.some((effort) => effort === null) ? null : Math.max(...efforts.map((effort) => effort ?? 0))
    },
    feed,
    sideForces: once(() => sideForcesOf(site, solvedJoints(), { guide: limits.limit('guide-hold'), jaws: limits.limit('side-force') })),
    liftClearances: once(() => (solver.missing.length > 0 ? [] : [...new Set([...infeedJoints, ...joints.slice(-1)])].flatMap((number) => clearanceOn(site, solver.solve(bodies.joined(site, number, 'lifts')), number)))),
    atRest: once(() => solver.solve(bodies.atRest(site))),
    solveCount: solver.solveCount,
  }
}

/** Largest error that changes C by no more than the step in any of the cases tried; the change grows with the error. */
function largestError(tries: readonly ((errorM: number) => number)[], step: number, leastM: number, mostM: number): number {
  const atMost = tries.map((changeAt) => ({ changeAt, mostChange: changeAt(mostM) })).toSorted((a, b) => b.mostChange - a.mostChange)
  if (!(atMost[0] !== undefined && atMost[0].mostChange > step)) return mostM
  // The case that changes most is asked first: it settles most questions alone.
  if (atMost.some(({ changeAt }) => changeAt(leastM) >= step)) return leastM
  let [low, high] = [leastM, mostM]
  for (let pass = 0; pass < BISECTIONS; pass += 1) {
    const middle = (low + high) / 2
    if (atMost.every(({ changeAt }) => changeAt(middle) <= step)) low = middle
    else high = middle
  }
  return low
}

function sagsOf(solves: readonly JointSolve[]): SpanSagAt[] {
  const worst = new Map<string, SpanSagAt>()
  for (const solve of solves) {
    for (const side of SIDES) {
      const { closed } = solve[side]
      for (const { fromM, toM, sagM, atM } of closed.result.sags) {
        if (!(toM > fromM) || !isAtStands(closed, fromM, toM)) continue
        const ratio = sagM / (toM - fromM)
        const key = `${fromM.toFixed(3)}-${toM.toFixed(3)}`
        const before = worst.get(key)
        if (before === undefined || ratio > before.ratio) worst.set(key, { fromM, toM, sagM, atM, levelM: closed.result.at(atM).levelM, ratio, joint: solve.joint })
      }
    }
  }
  return [...worst.values()]
}

/** Spans between jaws, rack beams and stands; ground rollers let the pipe down on purpose. */
function isAtStands({ jaws, supports }: BodySolution, fromM: number, toM: number): boolean {
  const isEnd = (runningM: number): boolean =>
    jaws.some((jaw) => Math.abs(jaw.runningM - runningM) < 1e-6) || supports.some(({ view }) => view.kind !== 'roller' && Math.abs(view.runningM - runningM) < 1e-6)
  return isEnd(fromM) && isEnd(toM)
}

function loadsOf(site: SiteModel, solves: readonly JointSolve[], arrivals: readonly NoseArrival[], solver: ReturnType<typeof bodySolverOf>): ReadonlyMap<string, SupportLoad> {
  const loads = new Map<string, SupportLoad>()
  const take = (solution: BodySolution | null, when: SupportLoad['when'], joint: number): void => {
    if (solution === null || solution.result.status !== 'ok') return
    for (const { view, reactionN } of solution.supports) {
      const before = loads.get(view.key)
      if (before === undefined || reactionN > before.loadN) loads.set(view.key, { view, loadN: reactionN, when, joint })
    }
  }
  for (const solve of solves) for (const side of SIDES) take(solve[side].closed, 'fuse', solve.joint)
  // A body cut off behind the nose is free at the cut; its first supports carry too much or too little and are not judged by it.
  for (const { solution, pull } of arrivals) take(trusted(solution), 'pull', pull)
  if (solver.missing.length === 0 && site.sticks.stickCount > 1) {
    const endM = site.sticks.stringLengthM(site.sticks.stickCount)
    const atEnd = solver.solve(pulledBody(site, endM))
    if (atEnd !== null) take(trusted(atEnd), 'pull', site.sticks.stickCount - 1)
  }
  return loads
}

function trusted(solution: BodySolution): BodySolution {
  const { startM, endM, isCut } = solution.body
  if (isCut !== true) return solution
  return { ...solution, supports: solution.supports.filter(({ view }) => view.runningM >= startM + (endM - startM) / 3) }
}

function clearanceOn(site: SiteModel, solution: BodySolution | null, joint: number): LiftClearance[] {
  if (solution === null || solution.result.status !== 'ok') return []
  const { innerClampM, outerClampM } = site.jaws
  const clearances = [-outerClampM, -innerClampM, innerClampM, outerClampM].map((runningM) => ({ joint, runningM, clearM: solution.result.at(runningM).levelM - (jawLineLevelM(site.jaws, runningM) ?? 0) }))
  // Of places equally clear the first is named, whatever rounding says.
  return [clearances.reduce((least, one) => (one.clearM < least.clearM - SAME_HEIGHT_M ? one : least))]
}
