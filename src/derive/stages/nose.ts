/** The nose at every support it meets inside a stage, and how far the free end hangs (docs/formulas/stages.md). */
import type { BodySolution, BodySolver } from '../bodies.ts'
import { arrivingSupports, holdAtN, liftAtArrivalN, pulledBody, solveArrival, sticksToReach, type NoseArrival } from '../noseArrivals.ts'
import type { SiteModel, SupportView } from '../types.ts'
import type { FreeEnd, JobStage, NoseOutcome, StageArrival } from './types.ts'

/** Nobody sets a stand finer than this: a nose that much lower still counts as taken in. */
const SLACK_M = 0.0005

/** Supports the nose meets by the pull they are met in; 0: while stick 1 is fed through. */
export function arrivalsByPull(site: SiteModel): ReadonlyMap<number, readonly SupportView[]> {
  const byPull = new Map<number, SupportView[]>()
  for (const view of arrivingSupports(site)) {
    const pull = sticksToReach(site, view.runningM) - 1
    const open = byPull.get(pull)
    if (open === undefined) byPull.set(pull, [view])
    else open.push(view)
  }
  return byPull
}

export interface NoseOfStage {
  arrivals: readonly StageArrival[]
  freeEnd: FreeEnd | null
  /** Bodies solved, for the loads. */
  solutions: readonly BodySolution[]
  isUnsettled: boolean
}

/** Arrivals of a stage in order, with the stage's end as one more place where the end hangs free. */
export function noseOfStage(site: SiteModel, solver: BodySolver, stage: JobStage, views: readonly SupportView[], loaderN: number | null): NoseOfStage {
  if (solver.missing.length > 0 || stage.noseM === null) return { arrivals: [], freeEnd: null, solutions: [], isUnsettled: false }
  const solved = views.map((view) => solveArrival(site, solver, view))
  const arrivals = solved.filter((one) => one !== null)
  const end = stage.phase === 'pull' ? solver.solve(pulledBody(site, stage.noseM.to)) : null
  const settledEnd = end !== null && end.result.status === 'ok' ? end : null
  const solutions = [...arrivals.map(({ solution }) => solution), ...(settledEnd === null ? [] : [settledEnd])]
  return {
    arrivals: arrivals.map((arrival) => judged(site, solver, arrival, loaderN)),
    freeEnd: solutions.map(freeEndOf).reduce<FreeEnd | null>((worst, one) => (worst === null || one.dropM > worst.dropM ? one : worst), null),
    solutions,
    isUnsettled: arrivals.length < views.length || (end !== null && settledEnd === null),
  }
}

/** Slung or carried, the nose is held over the support; free, on a sled or unknown how, it comes as it hangs. */
function judged(site: SiteModel, solver: BodySolver, arrival: NoseArrival, loaderN: number | null): StageArrival {
  const { view, droopM, leadInM, isOnGround, tipM } = arrival
  const topLevelM = view.levelM!
  const common = { key: view.key, label: view.label, runningM: view.runningM, topLevelM, tipLevelM: topLevelM - droopM, droopM, leadInM, loaderN, isOnGround }
  const hold = site.job.noseHold ?? 'slung'
  if (hold === 'slung' || hold === 'lifted') {
    const slungM = hold === 'slung' ? site.job.slingHeightM.value : null
    // A sling hung at a height of its own may be too low for a support, or lift the nose far over it.
    const heldLevelM = slungM === null ? Math.max(topLevelM, arrival.groundLevelM) : site.groundLevelAt(tipM) + slungM
    const liftM = Math.max(0, heldLevelM - common.tipLevelM)
    const isTooLow = topLevelM - Math.max(heldLevelM, common.tipLevelM) > leadInM + SLACK_M
    return { ...common, outcome: isTooLow ? 'hits' : 'held', liftM, liftN: liftM === 0 ? 0 : holdAtN(solver, arrival, heldLevelM) }
  }
  const outcome = freeOutcome(arrival)
  const needsLift = outcome === 'lifted' || outcome === 'hits'
  return { ...common, outcome, liftM: needsLift ? Math.max(0, droopM) : 0, liftN: needsLift ? liftAtArrivalN(solver, arrival) : 0 }
}

function freeOutcome({ view, droopM, leadInM }: NoseArrival): NoseOutcome {
  if (droopM <= leadInM + SLACK_M) return 'ridesOn'
  if (view.landingAid !== 'none') return 'lifted'
  return view.rollerRadiusM !== null && droopM <= view.rollerRadiusM ? 'ridesUp' : 'hits'
}

/** From the last thing that carries the pipe to its nose. */
function freeEndOf({ body, result, supports, lifts, jaws }: BodySolution): FreeEnd {
  const carriers = [
    ...supports.filter(({ reactionN }) => reactionN > 0).map(({ view }) => view.runningM),
    ...lifts.filter(({ reactionN }) => reactionN > 0).map(({ runningM }) => runningM),
    ...jaws.filter(({ forceN }) => forceN > 0).map(({ runningM }) => runningM),
    ...result.groundContacts.map(({ endM }) => endM),
  ]
  const lastM = carriers.reduce((last, at) => Math.max(last, at), body.startM)
  return { tipM: body.endM, overhangM: Math.max(0, body.endM - lastM), dropM: Math.max(0, result.at(lastM).levelM - result.ends.levelM[1]) }
}
