/** Pipe bodies as cases of the contact beam: what lies where, on what, in each phase (docs/formulas/jaws.md). */
import { solveContactBeam } from '../engine/beam/solveContactBeam.ts'
import type { BowShape, ContactBeamResult, ContactPattern, PointSupport } from '../engine/beam/types.ts'
import type { LoadQuestion } from '../engine/pipe/tables.ts'
import { jawLineLevelM } from './supports.ts'
import type { MissingInput, SiteModel, SupportView } from './types.ts'

/** Closed: the clamps hold and may pull. Open: the lower halves only push. Out: the pipe does not touch the jaws. */
export type JawState = 'closed' | 'open' | 'out'

/** One body of pipe and what holds it. Distances along the run from the datum. */
export interface BodyCase {
  name: 'string' | 'stick'
  startM: number
  endM: number
  question: LoadQuestion
  infeedJaws: JawState
  exitJaws: JawState
  /** Pipe lifts raised under the body. */
  lifts: boolean
  /** A support set higher (+) or lower than planned, by key. */
  shift?: { key: string; byM: number }
  /** A support that has gone missing, by key. */
  without?: string
  /** The nose held at this level, by a sling or by hand. */
  noseLevelM?: number
  /** The tail is cut off far behind the nose: its first supports carry what they would not in the whole string. */
  isCut?: boolean
  /** Its sticks come bowed and lie turned like this; only the upright part bends it here (derive/bow.ts has the rest). Left out: straight. */
  bow?: BowShape
}

export interface JawForce {
  side: 'infeed' | 'exit'
  at: 'inner' | 'outer'
  runningM: number
  /** On the pipe, up positive. */
  forceN: number
  gapM: number
}

export interface BodySolution {
  body: BodyCase
  result: ContactBeamResult
  /** In the order of the site's supports, only those under the body with a known level. */
  supports: readonly { view: SupportView; reactionN: number; gapM: number; marginal: boolean }[]
  jaws: readonly JawForce[]
  lifts: readonly { runningM: number; reactionN: number; gapM: number }[]
  /** Force that holds the nose where the case says so, up positive. */
  noseForceN: number | null
}

/** Supports this near to each other along the pipe count as one: no crew sets two rollers closer. */
const MERGE_M = 0.02
/** A support this far beyond the end of a body still counts as under it. */
const END_SLACK_M = 1e-9

export interface BodySolver {
  /** Inputs without which no body can be solved. */
  missing: readonly MissingInput[]
  /** Null while `missing` is not empty, or the body has no length. Solved once a site. */
  solve: (body: BodyCase) => BodySolution | null
  /** Solves spent so far, for the budgets. */
  solveCount: () => number
  /** Bodies asked for so far whose solve did not come out. */
  unsettled: () => readonly BodySolution[]
}

/** A solver that keeps all its answers. */
export interface SiteSolver extends BodySolver {
  /** Bodies solved so far. */
  solved: () => readonly BodySolution[]
}

const solvers = new WeakMap<SiteModel, SiteSolver>()

/** The solver of a site; profile, mechanics and checks share its answers. */
export function bodySolverOf(site: SiteModel): SiteSolver {
  const known = solvers.get(site)
  if (known !== undefined) return known
  const made = createBodySolver(site)
  solvers.set(site, made)
  return made
}

function createBodySolver(site: SiteModel): SiteSolver {
  const missing = missingFor(site)
  const solutions = new Map<string, BodySolution | null>()
  const solved = (): BodySolution[] => [...solutions.values()].filter((solution) => solution !== null)
  let count = 0
  return {
    missing,
    solveCount: () => count,
    solved,
    unsettled: () => solved().filter(({ result }) => result.status !== 'ok'),
    solve: (body) => {
      const key = keyOf(body)
      let solution = solutions.get(key)
      if (solution === undefined) {
        if (missing.length === 0) count += 1
        // A support set a little off its height changes few contacts: the planned case is where to start from.
        const { shift, ...planned } = body
        const near = shift === undefined ? undefined : solutions.get(keyOf(planned))
        solution = missing.length > 0 ? null : solveBody(site, body, near?.result.status === 'ok' ? near.result.pattern : null)
        solutions.set(key, solution)
      }
      return solution
    },
  }
}

const keyOf = (b: BodyCase): string =>
  `${b.startM},${b.endM},${b.question},${b.infeedJaws},${b.exitJaws},${b.lifts},${b.shift === undefined ? '' : `${b.shift.key}:${b.shift.byM}`},${b.noseLevelM ?? ''},${b.without ?? ''},${b.bow === undefined ? '' : `${b.bow.curvaturePerM}@${b.bow.angleRad}`}`

/** What the beam cannot do without: pipe, stick length, jaw height. A support without a height is left out and named by its own check. */
function missingFor(site: SiteModel): MissingInput[] {
  const missing: MissingInput[] = site.pipe.properties === null ? site.pipe.missing.filter(({ path }) => path === 'pipe') : []
  if (site.job.stickLengthM === null) missing.push(...site.sticks.missing.filter(({ path }) => path === 'stickLengthM'))
  if (site.setUp === null || site.run === null) {
    missing.push({ recordId: site.layout.id, path: 'setUp', label: { en: 'datum and axis', es: 'origen y eje' } })
  } else if (site.jaws.machineId === null) {
    missing.push({ recordId: site.setUp.id, path: 'machine', label: { en: 'fusion machine', es: 'máquina de fusión' } })
  } else if (site.pipe.properties !== null && site.jaws.bopLevelM === null) {
    missing.push({ recordId: site.jaws.machineId, path: 'figures.jawHeightM.value', label: { en: 'jaw centreline above ground', es: 'eje de mordazas sobre el suelo' } })
  }
  return missing
}

/** One body by itself, kept nowhere: for cases that are tried and not drawn. Null where pipe or stiffness are unknown or it has no length. */
export function solveBody(site: SiteModel, body: BodyCase, warmStart: ContactPattern | null = null): BodySolution | null {
  const { properties } = site.pipe
  const stiffnessNm2 = site.pipe.stiffnessNm2(body.question)
  const lengthM = body.endM - body.startM
  if (properties === null || stiffnessNm2 === null || !(lengthM > 0)) return null
  const points: PointSupport[] = []
  const under = site.supports.filter((support) => support.levelM !== null && support.key !== body.without && isUnder(body, support.runningM))
  for (const view of under) points.push({ xM: view.runningM, levelM: view.levelM! + (body.shift?.key === view.key ? body.shift.byM : 0), id: view.key })
  const jawPlaces = jawPlacesOf(site, body)
  for (const { runningM, state } of jawPlaces) points.push({ xM: runningM, levelM: jawLineLevelM(site.jaws, runningM)!, twoWay: state === 'closed' })
  const lifts = body.lifts ? [-site.jaws.liftAtM, site.jaws.liftAtM].filter((runningM) => isUnder(body, runningM)) : []
  for (const runningM of lifts) points.push({ xM: runningM, levelM: jawLineLevelM(site.jaws, runningM)! + site.jaws.liftTravelM })
  if (body.noseLevelM !== undefined) points.push({ xM: body.endM, levelM: body.noseLevelM, twoWay: true })
  const result = solveContactBeam({
    startM: body.startM,
    lengthM,
    section: { bendingStiffnessNm2: stiffnessNm2, lineLoadNPerM: properties.lineLoadNPerM, outerDiameterM: properties.odM, secondMomentM4: properties.inertiaM4 },
    supports: points,
    ground: { xM: site.ground.runningM, levelM: site.ground.levelM },
    ...(body.bow === undefined ? {} : { bow: body.bow }),
    mergeToleranceM: MERGE_M,
    warmStart,
  })
  return read(body, result, under, jawPlaces, lifts)
}

const isUnder = (body: BodyCase, runningM: number): boolean => runningM >= body.startM - END_SLACK_M && runningM <= body.endM + END_SLACK_M

function jawPlacesOf(site: SiteModel, body: BodyCase): { side: 'infeed' | 'exit'; at: 'inner' | 'outer'; runningM: number; state: JawState }[] {
  const { innerClampM, outerClampM } = site.jaws
  return [
    { side: 'infeed' as const, at: 'outer' as const, runningM: -outerClampM, state: body.infeedJaws },
    { side: 'infeed' as const, at: 'inner' as const, runningM: -innerClampM, state: body.infeedJaws },
    { side: 'exit' as const, at: 'inner' as const, runningM: innerClampM, state: body.exitJaws },
    { side: 'exit' as const, at: 'outer' as const, runningM: outerClampM, state: body.exitJaws },
  ].filter(({ runningM, state }) => state !== 'out' && isUnder(body, runningM))
}

function read(body: BodyCase, result: ContactBeamResult, under: readonly SupportView[], jawPlaces: ReturnType<typeof jawPlacesOf>, lifts: readonly number[]): BodySolution {
  const at = (index: number): { reactionN: number; gapM: number; marginal: boolean } => {
    const support = result.supports[index]
    return support === undefined ? { reactionN: 0, gapM: 0, marginal: true } : { reactionN: support.reactionN, gapM: support.gapM, marginal: support.marginal }
  }
  const afterJaws = under.length + jawPlaces.length
  return {
    body,
    result,
    supports: under.map((view, i) => ({ view, ...at(i) })),
    jaws: jawPlaces.map(({ side, at: place, runningM }, i) => ({ side, at: place, runningM, forceN: at(under.length + i).reactionN, gapM: at(under.length + i).gapM })),
    lifts: lifts.map((runningM, i) => ({ runningM, reactionN: at(afterJaws + i).reactionN, gapM: at(afterJaws + i).gapM })),
    noseForceN: body.noseLevelM === undefined ? null : at(afterJaws + lifts.length).reactionN,
  }
}

/** Natural curvature of a stick with this arc height over its chord, 1/m: 8 b/S². Null where either is unknown. */
export function bowCurvaturePerM(bowM: number | null, stickLengthM: number | null): number | null {
  return bowM === null || stickLengthM === null ? null : (8 * bowM) / stickLengthM ** 2
}

/**
 * Bow of the bodies at the machine as the job says: every stick turned alike, so that the string is one even arc.
 * Nothing where the bow is unknown or nobody turns the sticks: no one turn can then be drawn (check `stick-bow`).
 */
function jobBow({ job, sticks }: SiteModel): { bow?: BowShape } {
  const curvaturePerM = bowCurvaturePerM(job.stickBowM.value, sticks.stickLengthM)
  return curvaturePerM === null || curvaturePerM === 0 || job.stickBowTurnRad === null ? {} : { bow: { curvaturePerM, angleRad: job.stickBowTurnRad } }
}

/** Stick k + 1 in the infeed while the string of k sticks lies on the exit, and the other bodies by phase (docs/formulas/jaws.md). */
export const bodies = {
  infeedStick: (site: SiteModel, jaws: JawState): BodyCase => ({ name: 'stick', startM: 0 - (site.sticks.stickLengthM ?? 0), endM: 0, question: 'jaws', infeedJaws: jaws, exitJaws: 'out', lifts: false, ...jobBow(site) }),
  exitString: (site: SiteModel, joint: number, jaws: JawState): BodyCase => ({ name: 'string', startM: 0, endM: site.sticks.stringLengthM(joint), question: 'jaws', infeedJaws: 'out', exitJaws: jaws, lifts: false, ...jobBow(site) }),
  /** The joined body after joint k, jaws open: pushing halves only, or up on the lifts. */
  joined: (site: SiteModel, joint: number, on: 'halves' | 'lifts'): BodyCase => ({
    name: 'string', startM: 0 - (site.sticks.stickLengthM ?? 0), endM: site.sticks.stringLengthM(joint), question: on === 'lifts' ? 'pull' : 'jaws',
    infeedJaws: on === 'lifts' ? 'out' : 'open', exitJaws: on === 'lifts' ? 'out' : 'open', lifts: on === 'lifts', ...jobBow(site),
  }),
  /** The fed stick with its front end at `frontM` (≤ 0). */
  feeding: (site: SiteModel, frontM: number): BodyCase => ({ name: 'stick', startM: frontM - (site.sticks.stickLengthM ?? 0), endM: frontM, question: 'jaws', infeedJaws: 'open', exitJaws: 'out', lifts: true, ...jobBow(site) }),
  /** A string of `sticks` with its nose at `tipM`, on lifts and rollers. */
  pulled: (site: SiteModel, sticks: number, tipM: number): BodyCase => ({ name: 'string', startM: tipM - site.sticks.stringLengthM(sticks), endM: tipM, question: 'nose', infeedJaws: 'out', exitJaws: 'out', lifts: true }),
  atRest: (site: SiteModel): BodyCase => ({ name: 'string', startM: 0, endM: site.sticks.stringLengthM(site.sticks.stickCount), question: 'rest', infeedJaws: 'out', exitJaws: 'closed', lifts: false }),
}
