import { memo, useEffect, useRef, type ReactNode } from 'react'
import type { StageFindings } from '../../checks/stageLevels.ts'
import type { JobStage } from '../../derive/stages/types.ts'
import { runThroughWords as text } from '../../messages/ui/runThroughWords.ts'
import { phases, type Phase } from '../../scene/parts.ts'
import { LevelMark } from '../common/LevelMark.tsx'
import { useWords } from '../context.tsx'
import { levelName, shortStageName } from './stageNames.ts'

interface TableProps {
  stages: readonly JobStage[]
  byStage: ReadonlyMap<string, StageFindings>
  index: number
  isOld: boolean
  go: (index: number) => void
}

/** Every stage with its worst mark: a row a phase, a column a joint. A tap goes there. Only the stage shown takes the Tab key; arrows step on from it. */
export const StageTable = memo(({ stages, byStage, index, isOld, go }: TableProps): ReactNode => {
  const words = useWords()
  const box = useRef<HTMLDivElement>(null)
  const joints = stages.reduce((most, { joint }) => Math.max(most, joint ?? 0), 0)
  useEffect(() => {
    const scroller = box.current
    const cell = scroller?.querySelector<HTMLElement>('[aria-current="step"]') ?? null
    if (scroller === null || cell === null) return
    // Across only: the margin itself stays where the reader has it.
    const { left, right } = scroller.getBoundingClientRect()
    const at = cell.getBoundingClientRect()
    if (at.left < left + 70 || at.right > right - 8) scroller.scrollLeft += at.left - (left + right) / 2
  }, [index])
  const rows = phases.filter((phase) => stages.some((stage) => stage.phase === phase))
  return (
    <section className="stage-table" aria-label={words.local(text.all)} data-stale={isOld}>
      <h3>{words.local(text.all)} <span className="quiet-text">{words.local(text.worstOfEach)}</span></h3>
      <div className="stage-scroll" ref={box}>
        {rows.map((phase) => <Row key={phase} phase={phase} stages={stages} byStage={byStage} index={index} go={go} />)}
        {joints === 0 ? null : (
          <div className="stage-row stage-joints" aria-hidden="true">
            <span className="stage-name" />
            {Array.from({ length: joints }, (_, i) => <span key={i} className="stage-cell quiet-text">{joints > 24 && (i + 1) % 5 !== 0 && i !== 0 ? '' : i + 1}</span>)}
          </div>
        )}
      </div>
    </section>
  )
})
StageTable.displayName = 'StageTable'

const Row = ({ phase, stages, byStage, index, go }: Pick<TableProps, 'stages' | 'byStage' | 'index' | 'go'> & { phase: Phase }): ReactNode => {
  const words = useWords()
  return (
    <div className="stage-row" role="group" aria-label={words.say(`phase_${phase}`)}>
      <span className="stage-name" aria-hidden="true">{words.say(`phase_${phase}`)}</span>
      {stages.filter((stage) => stage.phase === phase).map((stage) => {
        const worst = byStage.get(stage.id)?.worst ?? null
        return <Cell key={stage.id} name={words.local(text.cell, { stage: shortStageName(stage, words), level: levelName(worst, words) })} level={worst === 'met' ? null : worst} at={stage.index} isShown={stage.index === index} go={go} />
      })}
    </div>
  )
}

interface CellProps {
  name: string
  level: 'STOP' | 'FIX' | 'CHECK' | 'NOTE' | null
  at: number
  isShown: boolean
  go: (index: number) => void
}
const Cell = memo(({ name, level, at, isShown, go }: CellProps): ReactNode => (
  <button type="button" className="stage-cell" aria-label={name} title={name} aria-current={isShown ? 'step' : undefined} tabIndex={isShown ? 0 : -1} onClick={() => go(at)}>
    {level === null ? <span className="stage-dot" aria-hidden="true" /> : <LevelMark level={level} sizePx={15} />}
  </button>
))
Cell.displayName = 'Cell'
