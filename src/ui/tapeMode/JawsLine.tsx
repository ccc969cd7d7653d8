import type { ReactNode } from 'react'
import { tapeModeWords as text } from '../../messages/ui/tapeModeWords.ts'
import { Figure } from '../common/Figure.tsx'
import { LevelMark } from '../common/LevelMark.tsx'
import { useWords } from '../context.tsx'
import type { JawsAsSet } from './useJaws.ts'

/** What has come of the heights typed so far, in one line: C at the jaws now, and what it is in the plan. */
export const JawsLine = ({ jaws }: { jaws: JawsAsSet }): ReactNode => {
  const { local, figure } = useWords()
  const { isWorking, planned, asSet, isMeasured } = jaws
  const now = isMeasured ? asSet : planned
  const ratio = (value: number): string => figure({ kind: 'ratio', value })
  const said = now === null
    ? local(isWorking ? text.working : text.jawsUnknown)
    : local(isMeasured ? text.jawsNow : text.jawsPlan, { effort: ratio(now.effortRatio), side: local(text[now.side]) })
  return (
    <p className="tapemode-jaws" role="status" data-stale={isWorking}>
      {now === null || now.level === 'met' ? null : <LevelMark level={now.level} sizePx={26} named />}
      <span><strong><Figure text={said} /></strong>{isMeasured && now !== null && planned !== null ? <>{', '}<Figure text={local(text.inPlan, { effort: ratio(planned.effortRatio) })} /></> : null}</span>
    </p>
  )
}
