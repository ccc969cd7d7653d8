/** Which pipe lies where in a stage (docs/formulas/stages.md), and the short strings that stand in for long ones. */
import { bodies, type BodyCase } from '../bodies.ts'
import { feedStartM } from '../feed.ts'
import { LENGTH_BEHIND_M, SUPPORTS_BEHIND } from '../noseArrivals.ts'
import type { SiteModel } from '../types.ts'
import type { JobStage, StageBody } from './types.ts'

const shown = ({ name, startM, endM, infeedJaws, exitJaws, lifts }: BodyCase, at: StageBody['at']): StageBody => ({ name, startM, endM, infeedJaws, exitJaws, lifts, at })

/** Whole bodies of a stage as they are, for the strip and the side view. */
export function bodiesAt(site: SiteModel, { phase, joint, sticks, noseM }: JobStage): StageBody[] {
  if (site.sticks.stickLengthM === null || sticks === 0 || phase === 'offload') return []
  const k = joint ?? 1
  switch (phase) {
    case 'setUp': return [shown(bodies.exitString(site, 1, 'open'), 'start'), shown(bodies.exitString(site, 1, 'closed'), 'end')]
    case 'load': return [shown(bodies.feeding(site, feedStartM(site)), 'start'), shown(bodies.infeedStick(site, 'open'), 'end'), shown(bodies.exitString(site, k, 'closed'), 'whole')]
    case 'fuse': return [shown(bodies.infeedStick(site, 'closed'), 'whole'), shown(bodies.exitString(site, k, 'closed'), 'whole')]
    case 'pull': return [shown(bodies.joined(site, k, 'halves'), 'opened'), shown(bodies.joined(site, k, 'lifts'), 'lifted'), shown(bodies.pulled(site, k + 1, noseM!.to), 'end')]
    default: return [shown(bodies.atRest(site), 'whole')]
  }
}

const nearJoints = new WeakMap<SiteModel, number>()

/**
 * First joint whose string reaches so far out that the jaws feel no more of its nose: past 14 supports and 60 m. Any later
 * joint lies there as this one does; tests/derive/stages holds both against each other.
 */
export function jointAlike(site: SiteModel, joint: number): number {
  let near = nearJoints.get(site)
  if (near === undefined) nearJoints.set(site, (near = firstFarJoint(site)))
  return Math.min(joint, near)
}

function firstFarJoint({ sticks, supports }: SiteModel): number {
  const exit = supports.filter(({ runningM, levelM }) => runningM > 0 && levelM !== null)
  const last = Math.max(1, sticks.stickCount - 1)
  const beyondM = Math.max(LENGTH_BEHIND_M, exit[SUPPORTS_BEHIND - 1]?.runningM ?? Infinity)
  for (let joint = 1; joint < last; joint += 1) if (sticks.stringLengthM(joint) > beyondM) return joint
  return last
}
