import { memo, type ReactNode } from 'react'
import type { StageFindings } from '../../checks/stageLevels.ts'
import type { JobStage } from '../../derive/stages/types.ts'
import { LevelMark } from '../common/LevelMark.tsx'
import { worstStage } from './stripJoints.ts'
import type { Run } from './useRun.ts'

/** More marks than this run together on a phone. */
const MOST_MARKS = 24

/** Stages in their order over the slider, where the tape stands upright and has no strip of its own; several share a mark in a long job. The slider beside it does the same by hand and by keys. */
export const MiniStrip = ({ run: { stages, byStage, stage, go } }: { run: Run }): ReactNode => <Marks stages={stages} byStage={byStage} index={stage.index} go={go} />

const Marks = memo(({ stages, byStage, index, go }: { stages: readonly JobStage[]; byStage: ReadonlyMap<string, StageFindings>; index: number; go: (index: number) => void }): ReactNode => {
  const share = Math.ceil(stages.length / MOST_MARKS)
  const groups = Array.from({ length: Math.ceil(stages.length / share) }, (_, i) => stages.slice(i * share, (i + 1) * share))
  return (
    <div className="run-ministrip" aria-hidden="true">
      {groups.map((group, i) => {
        const { stage, level } = worstStage(group, byStage)
        return (
          <span key={group[0]!.id} style={{ left: `${(100 * (i + 0.5)) / groups.length}%` }} data-shown={group.some((one) => one.index === index)} onClick={() => go(stage.index)}>
            {level === null ? <i className="stage-dot" /> : <LevelMark level={level} sizePx={11} />}
          </span>
        )
      })}
    </div>
  )
})
Marks.displayName = 'Marks'
