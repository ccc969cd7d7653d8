/** Findings put to the stages they hold in: what the strip shows. */
import type { JobStage } from '../derive/stages/types.ts'
import { levelOrder, type Finding, type Level } from './finding.ts'

export interface StageFindings {
  /** Worst level among them; null where none belongs here. */
  worst: Level | null
  /** In the order of the run. */
  findings: readonly Finding[]
}

/**
 * Findings by stage id.
 *
 * Model:  a finding belongs to the stages of its phases, and of its joints where it names some (joint 0: stick 1 fed through
 *         while setting up). One without phases is about the plan as a whole and belongs to no stage.
 */
export function levelsByStage(stages: readonly JobStage[], findings: readonly Finding[]): ReadonlyMap<string, StageFindings> {
  return new Map(stages.map((stage) => {
    const here = findings.filter((finding) => belongs(finding, stage))
    return [stage.id, { worst: worstOf(here), findings: here }]
  }))
}

/** Whether a finding holds in a stage; `joint` null: the stage belongs to none. */
export function belongs({ phases, joints }: Finding, { phase, joint }: Pick<JobStage, 'phase' | 'joint'>): boolean {
  if (phase === 'setUp' && joints !== undefined && joints.includes(0)) return true
  if (!phases.includes(phase)) return false
  return joints === undefined || joint === null || joints.includes(joint)
}

const worstOf = (findings: readonly Finding[]): Level | null => levelOrder.find((level) => findings.some((one) => one.level === level)) ?? null
