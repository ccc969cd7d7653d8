/** The job rehearsed stage by stage (docs/formulas/stages.md, docs/decisions/0008-stages.md). */
import { limitOf, limitParam } from '../../engine/limits.ts'
import { bodies, bodySolverOf, type BodySolution, type BodySolver } from '../bodies.ts'
import { solveFeed, type FeedSolve } from '../feed.ts'
import { solveJoint, type JointSolve } from '../jawSolve.ts'
import { loaderPlateN } from '../loaders.ts'
import type { LimitLookup } from '../mechanics.ts'
import { waysOf } from '../stringPull.ts'
import { jawLineLevelM } from '../supports.ts'
import type { MissingInput, SiteModel, SupportView } from '../types.ts'
import { bodiesAt, jointAlike } from './bodiesAt.ts'
import { carriageDrag } from './carriage.ts'
import { holdOf } from './hold.ts'
import { loadsOf, mostOf } from './loads.ts'
import { createRunMemory, memorySolver, type RunMemory } from './memory.ts'
import { arrivalsByPull, noseOfStage } from './nose.ts'
import { allowableOf, pullOfStage, type PullScene } from './pull.ts'
import { pullerOf } from './puller.ts'
import { stagesOf } from './stagesOf.ts'
import type { JobStage, RunThrough, StageJaws, StageOpening, StageResult } from './types.ts'

export interface RunThroughOptions {
  /** Limits in force; left out: the starting table. */
  limits?: LimitLookup
  /** Solves of earlier runs; what still holds is taken from it, and it is brought up to date. */
  memory?: RunMemory
  /** Index of the stage to begin with: what is looked at comes first, the rest follows from the front. */
  from?: number
  onStage?: (result: StageResult) => void
}

/** All stages at once. `runThroughSteps` gives them one by one. */
export function runThroughOf(site: SiteModel, options: RunThroughOptions = {}): RunThrough {
  const steps = runThroughSteps(site, options)
  for (;;) {
    const step = steps.next()
    if (step.done === true) return step.value
    options.onStage?.(step.value)
  }
}

/**
 * Stages one by one, so that a worker can send them as they come and stop between two.
 *
 * Model:  bodies by stage as in docs/formulas/stages.md; every length, load and gap from the contact beam.
 * Output: yields each StageResult, returns the whole with stages in order. Where an input is missing all stages come
 *         with status 'missing' and `missing` names it; pull needs less than the beam and is given where it can be.
 * Cost:   some hundred small solves for a hundred joints and 250 rollers; a stage left alone costs none with a memory.
 */
export function* runThroughSteps(site: SiteModel, { limits = { limit: limitOf }, memory = createRunMemory(), from = 0 }: RunThroughOptions = {}): Generator<StageResult, RunThrough> {
  const stages = stagesOf(site)
  const scene = sceneOf(site, limits, memory)
  const results: StageResult[] = []
  const order = [...stages.slice(from), ...stages.slice(0, from)]
  for (const stage of order) {
    const result = stageResult(scene, stage)
    results[stage.index] = result
    yield result
  }
  scene.solver.settle()
  return {
    missing: scene.missing,
    stages: results,
    loads: mostOf(results),
    hardestPullId: hardestOf(results),
    hold: holdOf(results, limits),
    counts: { stages: results.length, solves: scene.solver.solveCount(), reused: scene.solver.reusedCount() },
  }
}

function hardestOf(results: readonly StageResult[]): string | null {
  let hardest: { id: string; needN: number } | null = null
  for (const { stage, pull } of results) if (pull !== null && pull.needN > (hardest?.needN ?? -Infinity)) hardest = { id: stage.id, needN: pull.needN }
  return hardest?.id ?? null
}

interface Scene {
  site: SiteModel
  limits: LimitLookup
  solver: ReturnType<typeof memorySolver>
  missing: readonly MissingInput[]
  byPull: ReadonlyMap<number, readonly SupportView[]>
  pull: PullScene | null
  loaderN: number | null
  leverM: number
  feed: FeedSolve | null
  joints: Map<number, JointSolve | null>
}

function sceneOf(site: SiteModel, limits: LimitLookup, memory: RunMemory): Scene {
  const solver = memorySolver(site, bodySolverOf(site), memory)
  // The pull needs pipe, sticks and a run; it does not need the height of the jaws.
  const canPull = site.pipe.properties !== null && site.sticks.stickLengthM !== null && site.setUp !== null && site.run !== null
  return {
    site, limits, solver,
    missing: solver.missing,
    byPull: solver.missing.length > 0 ? new Map() : arrivalsByPull(site),
    pull: canPull ? { site, limits, ways: waysOf(site), puller: pullerOf(site), allowableN: allowableOf(site)?.loadN ?? null } : null,
    loaderN: loaderPlateN(site),
    leverM: limitParam(limits.limit('jaw-effort'), 'leverM'),
    feed: solver.missing.length > 0 ? null : solveFeed(site, solver),
    joints: new Map(),
  }
}

function stageResult(scene: Scene, stage: JobStage): StageResult {
  const { site, solver, pull } = scene
  const isMissing = solver.missing.length > 0
  const nose = noseOfStage(site, solver, stage, scene.byPull.get(stage.phase === 'setUp' ? 0 : stage.phase === 'pull' ? stage.joint! : -1) ?? [], scene.loaderN)
  const isFuse = stage.phase === 'fuse'
  const joint = isFuse || stage.phase === 'pull' ? jointOf(scene, stage.joint!) : null
  const closed = stage.phase === 'setUp' && stage.sticks > 0 ? solver.solve(bodies.exitString(site, 1, 'closed')) : null
  const atRest = stage.phase === 'rest' && stage.sticks > 0 ? solver.solve(bodies.atRest(site)) : null
  const pulled = pull === null ? null : pullOfStage(pull, stage)
  const alone = [closed, atRest].filter((one) => one !== null)
  const atJaws = isFuse && joint !== null ? [{ solution: joint.infeed.closed, isShort: false }, { solution: joint.exit.closed, isShort: joint.joint !== stage.joint }] : []
  const isUnsettled = nose.isUnsettled || (joint === null && (isFuse || stage.phase === 'pull')) || alone.some(({ result }) => result.status !== 'ok')
  return {
    stage,
    status: isMissing ? 'missing' : isUnsettled ? 'unsettled' : 'ok',
    bodies: bodiesAt(site, stage),
    jaws: isFuse && joint !== null ? jawsOf(joint) : null,
    opening: stage.phase === 'pull' && joint !== null ? openingOf(scene, joint, pulled) : null,
    feed: stage.phase === 'load' && scene.feed !== null ? { tipsAtM: scene.feed.tips?.frontM ?? null, meets: scene.feed.frontEnds.map(({ place, runningM, droopM, leadInM }) => ({ place, runningM, droopM, leadInM })) } : null,
    arrivals: nose.arrivals,
    freeEnd: nose.freeEnd,
    tailDropM: stage.phase === 'pull' ? tailDrop(site, solver, stage) : null,
    pull: pulled,
    drag: isFuse && pull !== null ? carriageDrag(site, pull.ways, stage.joint!) : null,
    loads: loadsOf([...atJaws, ...[...alone, ...nose.solutions].map((solution) => ({ solution, isShort: false }))]),
  }
}

/** Joint k as the jaws feel it; past the first joint they cannot tell from a later one, that one. */
function jointOf({ site, solver, leverM, joints }: Scene, joint: number): JointSolve | null {
  const alike = jointAlike(site, joint)
  let solve = joints.get(alike)
  if (solve === undefined) joints.set(alike, (solve = solver.missing.length > 0 ? null : solveJoint(site, solver, alike, leverM)))
  return solve
}

const jawsOf = ({ infeed, exit, effortRatio, faceGapM, offsetM }: JointSolve): StageJaws => ({
  innerInfeedN: infeed.innerN, outerInfeedN: infeed.outerN, innerExitN: exit.innerN, outerExitN: exit.outerN, effortRatio, faceGapM, offsetM,
})

/** A force below this is rounding. */
const NO_FORCE_N = 1

function openingOf({ site, solver }: Scene, joint: JointSolve, pull: StageResult['pull']): StageOpening {
  const lifted = solver.solve(bodies.joined(site, joint.joint, 'lifts'))
  const { innerClampM, outerClampM } = site.jaws
  const heights = lifted === null || lifted.result.status !== 'ok' ? null : [-outerClampM, -innerClampM, innerClampM, outerClampM].map((runningM) => lifted.result.at(runningM).levelM - (jawLineLevelM(site.jaws, runningM) ?? 0))
  const leaves = (forceN: number | undefined): boolean => (forceN ?? 0) > NO_FORCE_N
  return {
    springsByM: joint.springsByM, springN: joint.springN,
    liftedClearM: heights === null ? null : Math.min(...heights),
    holdFirst: [...(leaves(pull?.runAway.exitN) ? (['exit'] as const) : []), ...(leaves(pull?.runAway.infeedN) ? (['infeed'] as const) : [])],
  }
}

const TAIL_PAST_M = 0.0127

/** How far the tail falls when it leaves the last support before the jaws; null without one. */
function tailDrop(site: SiteModel, solver: BodySolver, stage: JobStage): number | null {
  const last = site.supports.findLast(({ runningM, levelM }) => levelM !== null && runningM < 0 - site.jaws.outerClampM)
  if (last === undefined) return null
  const startM = last.runningM + TAIL_PAST_M
  const lengthM = site.sticks.stringLengthM(Math.min(stage.sticks, jointAlike(site, stage.sticks) + 1))
  const solution: BodySolution | null = solver.solve({ name: 'string', startM, endM: startM + lengthM, question: 'nose', infeedJaws: 'out', exitJaws: 'out', lifts: true })
  return solution === null || solution.result.status !== 'ok' ? null : Math.max(0, last.levelM! - solution.result.ends.levelM[0])
}
