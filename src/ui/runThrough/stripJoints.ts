/** The strip along the tape: which stages share a tick, and where it stands. Pure. */
import type { Level } from '../../checks/finding.ts'
import { levelOrder } from '../../checks/finding.ts'
import type { StageFindings } from '../../checks/stageLevels.ts'
import type { JobStage } from '../../derive/stages/types.ts'
import { isAfterJoints } from '../../scene/parts.ts'

/** Stages that stand over one stretch of the tape: those of a joint, or of several where joints lie close. */
export interface StripPiece {
  key: string
  fromM: number
  toM: number
  stages: readonly JobStage[]
}

/**
 * Set-up and offload over the first stick, the stages of joint k over the way of its pull, what follows the last joint over one
 * more stick. Joints nearer together than `leastM` share a piece.
 */
export function stripPieces(stages: readonly JobStage[], leastM: number): StripPiece[] {
  const pulls = stages.filter((stage) => stage.phase === 'pull' && stage.noseM !== null)
  const firstM = pulls[0]?.noseM?.from ?? stages.find(({ noseM }) => noseM !== null)?.noseM?.to ?? 0
  const lastM = pulls.at(-1)?.noseM?.to ?? firstM
  const before = stages.filter(({ phase }) => phase === 'setUp' || phase === 'offload')
  const after = stages.filter(({ phase }) => isAfterJoints(phase))
  const joints: { fromM: number; toM: number; stages: JobStage[] }[] = []
  for (const pull of pulls) {
    const ofJoint = stages.filter(({ joint }) => joint === pull.joint)
    const open = joints.at(-1)
    if (open !== undefined && open.toM - open.fromM < leastM) {
      open.toM = pull.noseM!.to
      open.stages.push(...ofJoint)
    } else joints.push({ fromM: pull.noseM!.from, toM: pull.noseM!.to, stages: ofJoint })
  }
  const stickM = Math.max(firstM, leastM)
  return [{ fromM: firstM - stickM, toM: firstM, stages: before }, ...joints, { fromM: lastM, toM: lastM + stickM, stages: after }]
    .filter((piece) => piece.stages.length > 0 && piece.toM > piece.fromM)
    .map((piece) => ({ ...piece, key: piece.stages[0]!.id }))
}

/** Worst of some stages, and the first of them that has it: where a tap goes; without any the first of all. */
export function worstStage(stages: readonly JobStage[], byStage: ReadonlyMap<string, StageFindings>): { stage: JobStage; level: Exclude<Level, 'met'> | null } {
  for (const level of levelOrder) {
    if (level === 'met') break
    const stage = stages.find(({ id }) => byStage.get(id)?.worst === level)
    if (stage !== undefined) return { stage, level }
  }
  return { stage: stages[0]!, level: null }
}
