import { memo, useMemo, type ReactNode } from 'react'
import type { StageArrival, StageResult } from '../../derive/stages/types.ts'
import { runThroughWords as text } from '../../messages/ui/runThroughWords.ts'
import { arrivalNoseM, needsHand } from '../../state/runThroughView.ts'
import { Figure } from '../common/Figure.tsx'
import { LevelMark } from '../common/LevelMark.tsx'
import { useLaggingRun, useSite, useWords } from '../context.tsx'
import { Note } from '../findings/Note.tsx'
import { levelByItem, numberedFindings } from '../findings/order.ts'
import { StageTable } from './StageTable.tsx'
import { plain, sentence } from './stageNames.ts'
import { arrivalWords, happens, toDo } from './toDo.ts'
import type { Run } from './useRun.ts'

/** What is so at the stage shown: what to do, arrivals of the nose, all stages at a glance, findings. */
export const RunMargin = ({ run }: { run: Run }): ReactNode => {
  const { stages, byStage, stage, isOld, go } = run
  return (
    <div className="run-margin">
      <RunState run={run} />
      <Place run={run} />
      <StageTable stages={stages} byStage={byStage} index={stage.index} isOld={isOld} go={go} />
      <StageNotes stageId={stage.id} run={run} />
    </div>
  )
}

/** How far the stages are worked out; a long job can be stopped, what has come stays. */
const RunState = ({ run: { results, stop, goOn, stages } }: { run: Run }): ReactNode => {
  const words = useWords()
  const { status, share, failure } = results
  if (status === 'failed') return <p role="alert" className="run-state">{words.local(text.failed)} <span className="quiet-text">{failure}</span></p>
  if (status === 'working') {
    const percent = words.figure({ kind: 'percent', value: share })
    return (
      <div className="run-state">
        <label className="run-progress"><span>{words.local(text.working, { share: percent })}</span><progress max={1} value={share} /></label>
        <button type="button" onClick={stop}>{words.local(text.stop)}</button>
      </div>
    )
  }
  const done = results.stages.filter((one) => one !== undefined).length
  if (results.run !== null || (status === 'idle' && done === 0 && stages.length === 0)) return null
  return done === 0 && status === 'idle' ? null : <div className="run-state"><span>{words.local(text.stopped, { done, count: stages.length })}</span><button type="button" onClick={goOn}>{words.local(text.goOn)}</button></div>
}

const Place = ({ run }: { run: Run }): ReactNode => {
  const words = useWords()
  const { stage, result, onWayM, isOld, goNose } = run
  const now = sentence(happens(stage), words)
  const tasks = result === undefined ? [] : toDo(result, onWayM)
  const missing = useSite((state) => state.profile.missing)
  return (
    <section className="run-place" aria-label={words.local(text.place)} data-stale={isOld}>
      <h3>{words.local(text.place)}</h3>
      {isOld ? <p className="quiet-text run-old">{words.local(text.old)}</p> : null}
      <p className="run-now"><Figure text={now} /></p>
      {tasks.length === 0 ? null : <ol className="run-tasks" aria-label={words.local(text.doNow)}>{tasks.map((task, at) => <li key={at}><Figure text={sentence(task, words)} /></li>)}</ol>}
      {result?.status === 'missing' ? <p className="run-unknown">{words.local(text.stageMissing, { what: [...new Set(missing.map(({ label }) => words.local(label)))].join(', ') })}</p> : null}
      {result?.status === 'unsettled' ? <p className="run-unknown">{words.local(text.unsettled)}</p> : null}
      {result === undefined ? null : <Arrivals result={result} atM={onWayM} goNose={goNose} />}
    </section>
  )
}

/** Arrivals of the stage in order; a tap takes the nose there. */
const Arrivals = memo(({ result, atM, goNose }: { result: StageResult; atM: number | null; goNose: Run['goNose'] }): ReactNode => {
  const words = useWords()
  const { run } = useLaggingRun()
  const itemOf = useSite((state) => state.site.supports)
  const levels = useMemo(() => levelByItem(run), [run])
  const { arrivals, freeEnd, tailDropM, stage } = result
  if (arrivals.length === 0 && stage.phase !== 'pull') return null
  const levelOf = (arrival: StageArrival): 'STOP' | 'FIX' | 'CHECK' | 'NOTE' | null => {
    const level = needsHand(arrival) ? (levels.get(itemOf.find(({ key }) => key === arrival.key)?.itemId ?? '') ?? null) : null
    return level === 'met' ? null : level
  }
  return (
    <>
      <h4>{words.local(text.arrivals)}</h4>
      {arrivals.length === 0 ? <p className="quiet-text">{words.local(text.noArrivals)}</p> : (
        <ol className="run-arrivals">
          {arrivals.map((arrival) => {
            const level = levelOf(arrival)
            const isHere = atM !== null && Math.abs(arrivalNoseM(arrival) - atM) < 0.002
            return (
              <li key={arrival.key}>
                <button type="button" aria-current={isHere ? 'location' : undefined} onClick={() => goNose(arrivalNoseM(arrival))}>
                  <span className="run-arrival-mark">{level === null ? <span className="stage-dot" /> : <LevelMark level={level} sizePx={15} named />}</span>
                  <strong>{arrival.label}</strong>
                  <span className="quiet-text"><Figure text={words.running(arrival.runningM)} /></span>
                  <span className="run-arrival-how">
                    <Figure text={plain(arrivalWords(arrival), words)} />
                    {arrival.isOnGround && needsHand(arrival) ? `; ${words.local(text.onGround)}` : ''}
                    {arrival.loaderN !== null && (arrival.liftN ?? 0) > arrival.loaderN ? <>; <Figure text={words.local(text.ofLoader, { force: { kind: 'force', value: arrival.loaderN } })} /></> : null}
                  </span>
                </button>
              </li>
            )
          })}
        </ol>
      )}
      {freeEnd === null || freeEnd.overhangM < 0.05 ? null : <p className="quiet-text run-figure"><Figure text={words.local(text.freeEnd, { reach: { kind: 'length', value: freeEnd.overhangM }, drop: { kind: 'shortLength', value: freeEnd.dropM } })} /></p>}
      {tailDropM === null || tailDropM < 0.001 ? null : <p className="quiet-text run-figure"><Figure text={words.local(text.tailDrop, { drop: { kind: 'shortLength', value: tailDropM } })} /></p>}
    </>
  )
})
Arrivals.displayName = 'Arrivals'

/** Open findings of a stage as margin notes, by their numbers. */
const StageNotes = memo(({ stageId, run: { byStage, isOld } }: { stageId: string; run: Pick<Run, 'byStage' | 'isOld'> }): ReactNode => {
  const words = useWords()
  const { run, isStale } = useLaggingRun()
  const numbered = useMemo(() => numberedFindings(run), [run])
  const keys = new Set((byStage.get(stageId)?.findings ?? []).map(({ key }) => key))
  const here = numbered.filter(({ finding }) => keys.has(finding.key))
  const aboutAll = numbered.filter(({ finding }) => finding.phases.length === 0).length
  return (
    <section className="notes run-notes" aria-label={words.local(text.findings)} data-stale={isStale || isOld}>
      <h3>{words.local(text.findings)}</h3>
      {here.length === 0 ? <p className="quiet-text">{words.local(text.noFindings)}</p> : <ol className="note-list">{here.map((entry) => <Note key={entry.finding.key} numbered={entry} />)}</ol>}
      {aboutAll === 0 ? null : <p className="quiet-text">{words.local(text.moreFindings, { count: aboutAll })}</p>}
    </section>
  )
}, (before, after) => before.stageId === after.stageId && before.run.byStage === after.run.byStage && before.run.isOld === after.run.isOld)
StageNotes.displayName = 'StageNotes'
