import { isAfterJoints, type Phase } from '../../scene/parts.ts'
import type { SiteModel, Stage } from '../types.ts'
import type { JobStage, StageStep } from './types.ts'

const fuseSteps: readonly StageStep[] = ['clamp', 'face', 'heat', 'join', 'cool']
const pullSteps: readonly StageStep[] = ['open', 'lift', 'pull']
/** A machine that walks leaves the string and drives on to the next gap. */
const walkSteps: readonly StageStep[] = ['open', 'lift', 'walk']

const stagesBySite = new WeakMap<SiteModel, readonly JobStage[]>()

/**
 * The job's time line: set-up, offload, for each joint k load, fuse, pull, then move, rest, tie-in.
 *
 * Model:  N sticks make N − 1 joints. Before joint k the string has k sticks and its nose at L(k); the pull after it
 *         brings the nose from L(k) to L(k + 1). A job of one stick has no joint. Where the machine walks the string stays
 *         and the machine goes on a stick: the nose is L(k + 1) ahead of it at once, and nothing is pulled.
 * Output: in order; ids unique. Sticks and lengths as `site.sticks` has them, a guessed count included.
 */
export function stagesOf(site: SiteModel): readonly JobStage[] {
  let stages = stagesBySite.get(site)
  if (stages === undefined) stagesBySite.set(site, (stages = build(site)))
  return stages
}

function build({ sticks, job }: SiteModel): JobStage[] {
  const walks = job.method === 'walking'
  const { stickCount, stringLengthM } = sticks
  const stages: Omit<JobStage, 'index'>[] = []
  const still = (noseM: number): { from: number; to: number } => ({ from: noseM, to: noseM })
  const alone = (phase: Phase, count: number): void => {
    stages.push({ id: phase, phase, joint: null, sticks: count, noseM: count === 0 ? null : still(stringLengthM(count)), steps: [] })
  }
  alone('setUp', Math.min(1, stickCount))
  alone('offload', Math.min(1, stickCount))
  for (let joint = 1; joint < stickCount; joint += 1) {
    const [fromM, toM] = [stringLengthM(joint), stringLengthM(joint + 1)]
    stages.push(
      { id: `load:${joint}`, phase: 'load', joint, sticks: joint, noseM: still(fromM), steps: [] },
      { id: `fuse:${joint}`, phase: 'fuse', joint, sticks: joint, noseM: still(fromM), steps: fuseSteps },
      { id: `pull:${joint}`, phase: 'pull', joint, sticks: joint + 1, noseM: walks ? still(toM) : { from: fromM, to: toM }, steps: walks ? walkSteps : pullSteps },
    )
  }
  for (const phase of ['move', 'rest', 'tieIn'] as const) alone(phase, stickCount)
  return stages.map((stage, index) => ({ ...stage, index }))
}

/** What the plan and the side view are asked to show for a stage; `noseM` inside a pull, left out the pull is shown at its end. */
export function shownAt(site: SiteModel, stage: JobStage, noseM?: number): Stage {
  const after = isAfterJoints(stage.phase)
  const joint = stage.joint ?? (after ? Math.max(1, site.sticks.stickCount - 1) : 1)
  return { phase: stage.phase, joint, ...(stage.phase === 'pull' && noseM !== undefined ? { tipM: noseM } : {}) }
}

/** Phase and joint of an id; null where it is none. `pull:12` → pull, 12. */
export function readStageId(id: string): { phase: Phase; joint: number | null } | null {
  const match = /^(?:(setUp|offload|move|rest|tieIn)|(load|fuse|pull):([1-9]\d{0,5}))$/.exec(id)
  if (match === null) return null
  return match[1] === undefined ? { phase: match[2] as Phase, joint: Number(match[3]) } : { phase: match[1] as Phase, joint: null }
}
