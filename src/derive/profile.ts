/** The bent pipe of one stage as the section draws it. */
import { bodies, bodySolverOf, solveBody, type BodyCase, type BodySolution } from './bodies.ts'
import { feedStartM } from './feed.ts'
import type { SectionProfile, SiteModel, Stage } from './types.ts'

/** Points of the drawn curve are no farther apart than this, and at most MOST_POINTS to a body. */
const STEP_M = 0.25
const MOST_POINTS = 1200

/**
 * Pipe bodies of a stage with loads, gaps, jaw forces and sags. One or two solves, shared with the checks.
 *
 * Stages: set-up shows stick 1 in the closed jaws; load k the stick on the rack and the string in the jaws; fuse k both in the jaws;
 * pull k the string of k + 1 sticks (of one where the job has no more) with its nose where the stage says, at the end of the pull else; move, rest and
 * tie-in the finished string. Offload has no pipe on the line. Joint numbers beyond the job are held to it.
 */
export function profileAt(site: SiteModel, stage: Stage): SectionProfile {
  const solver = bodySolverOf(site)
  const empty: SectionProfile = { stage, status: 'missing', missing: solver.missing, bodies: [], loads: new Map(), jaws: null, sags: [], tipM: null, tailM: null }
  if (solver.missing.length > 0) return empty
  // A nose on its way is somewhere else with every frame: none of these is kept.
  const solve = stage.tipM === undefined ? solver.solve : (body: BodyCase): BodySolution | null => solveBody(site, body)
  const solved = bodiesOf(site, stage).map(solve).filter((solution) => solution !== null)
  const tooShort = solved.length === 0
  if (tooShort) return { ...empty, status: 'ok', missing: [] }
  const usable = solved.filter(({ result }) => result.status === 'ok' || result.status === 'notConverged')
  return {
    stage,
    status: statusOf(solved),
    missing: missingHeights(site),
    bodies: usable.map(({ body, result }) => {
      const curve = result.curve(Math.max(STEP_M, (body.endM - body.startM) / MOST_POINTS))
      return { name: body.name, startM: body.startM, endM: body.endM, runningM: curve.xM, levelM: curve.levelM, result }
    }),
    loads: new Map(usable.flatMap(({ supports }) => supports.map(({ view, reactionN, gapM, marginal }) => [view.key, { reactionN, gapM, floats: reactionN <= 0 && !marginal }] as const))),
    jaws: jawsOf(usable),
    sags: usable.flatMap(({ result }) => result.sags.filter(({ sagM }) => sagM > 0).map((sag) => ({ ...sag, levelM: result.at(sag.atM).levelM }))),
    tipM: Math.max(...solved.map(({ body }) => body.endM)),
    tailM: Math.min(...solved.map(({ body }) => body.startM)),
  }
}

function bodiesOf(site: SiteModel, { phase, joint, tipM }: Stage): BodyCase[] {
  const joints = Math.max(1, site.sticks.stickCount - 1)
  const k = Math.min(Math.max(1, Math.round(joint)), joints)
  if (phase === 'offload') return []
  if (phase === 'setUp') return [bodies.exitString(site, 1, 'closed')]
  if (phase === 'load') return [bodies.feeding(site, feedStartM(site)), bodies.exitString(site, k, 'closed')]
  if (phase === 'fuse') return [bodies.infeedStick(site, 'closed'), bodies.exitString(site, k, 'closed')]
  if (phase === 'pull') {
    // A job of one stick has no second one behind it.
    const sticks = Math.min(k + 1, Math.max(1, site.sticks.stickCount))
    const [fromM, toM] = [site.sticks.stringLengthM(k), site.sticks.stringLengthM(sticks)]
    return [bodies.pulled(site, sticks, Math.min(Math.max(tipM ?? toM, fromM), toM))]
  }
  return [bodies.atRest(site)]
}

function statusOf(solved: readonly BodySolution[]): SectionProfile['status'] {
  if (solved.some(({ result }) => result.status === 'unstable' || result.status === 'rejected')) return 'unstable'
  return solved.some(({ result }) => result.status === 'notConverged') ? 'notConverged' : 'ok'
}

/** Supports left out because nobody has said how high they stand. */
function missingHeights(site: SiteModel): SectionProfile['missing'] {
  return site.supports.filter(({ levelM }) => levelM === null).map(({ itemId, label }) => ({ recordId: itemId, path: 'height', label: { en: `height of ${label}`, es: `altura de ${label}` } }))
}

function jawsOf(solved: readonly BodySolution[]): SectionProfile['jaws'] {
  const forces = solved.flatMap(({ jaws }) => jaws)
  if (forces.length === 0) return null
  const side = (which: 'infeed' | 'exit'): { runningM: number; forceN: number }[] => forces.filter((jaw) => jaw.side === which).map(({ runningM, forceN }) => ({ runningM, forceN }))
  return { infeed: side('infeed'), exit: side('exit') }
}
