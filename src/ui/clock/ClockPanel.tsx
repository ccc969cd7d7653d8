import { useMemo, type ReactNode } from 'react'
import { clockOf, type JobClock } from '../../derive/clock.ts'
import { clockWords as text } from '../../messages/ui/clockWords.ts'
import { jobOf } from '../../scene/document.ts'
import { useCommand } from '../command.ts'
import { Figure } from '../common/Figure.tsx'
import { Panel } from '../common/Panel.tsx'
import { useDocuments, useSite, useWords } from '../context.tsx'
import { fieldName } from '../fields/focus.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { TimeField } from './TimeField.tsx'
import { dayOf, timeText } from '../../units/timeOfDay.ts'

/** When each joint is done: start, breaks and end of the day, the steps of one joint, and every joint on the clock. */
export const ClockPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const words = useWords()
  const { local } = words
  const run = useCommand()
  const job = useDocuments((state) => jobOf(state.document))
  const site = useSite((state) => state.site)
  const clock = useMemo(() => clockOf(site), [site])
  const set = (path: string, value: unknown): void => { run('setJob', { path, value }) }
  const { startMin, endMin, breaks } = job.clock
  const setBreak = (index: number, change: Partial<(typeof breaks)[number]>): void => set('clock.breaks', breaks.map((one, i) => (i === index ? { ...one, ...change } : one)))
  const duration = (valueS: number): string => words.figure({ kind: 'duration', value: valueS })
  const done = (of: JobClock): string => {
    const last = of.rows.at(-1)
    if (last === undefined) return '–'
    const day = dayOf(last.day, last.cooledMin)
    return day > 0 ? `${local(text.day, { n: day + 1 })}, ${timeText(last.cooledMin)}` : timeText(last.cooledMin)
  }
  const { likely, low, high, steps, cycleS } = clock
  const lastRow = likely?.rows.at(-1)
  const lastDay = lastRow === undefined ? 0 : dayOf(lastRow.day, lastRow.cooledMin)
  return (
    <Panel title={local(text.clockTitle)} onClose={onClose} wide>
      <div className="field-grid">
        <TimeField label={local(text.start)} valueMin={startMin} name={fieldName(job.id, 'clock.startMin')} onCommit={(value) => set('clock.startMin', value)} />
        <TimeField label={local(text.end)} valueMin={endMin} name={fieldName(job.id, 'clock.endMin')} onCommit={(value) => set('clock.endMin', value)} />
        {breaks.map((one, index) => (
          <div className="field-pair" key={`${index}-${breaks.length}`}>
            <TimeField label={local(text.breakAt, { n: index + 1 })} valueMin={one.atMin} onCommit={(value) => { if (value !== null) setBreak(index, { atMin: value }) }} />
            <NumberField label={local(text.breakLength)} kind="duration" value={one.lengthMin * 60} min={60} max={36_000} onCommit={(value) => { if (value !== null) setBreak(index, { lengthMin: value / 60 }) }} />
            <button type="button" onClick={() => set('clock.breaks', breaks.filter((_, i) => i !== index))}>{local(text.removeBreak, { n: index + 1 })}</button>
          </div>
        ))}
      </div>
      {breaks.length >= 8 ? null : <p className="buttons"><button type="button" onClick={() => set('clock.breaks', [...breaks, { atMin: 720, lengthMin: 30 }])}>{local(text.addBreak)}</button></p>}
      <div className="answer" role="status">
        {steps === null || cycleS === null || likely === null || low === null || high === null
          ? <span>{local(text.needsPipe)}</span>
          : clock.joints === 0
            ? <span>{local(text.noJoints)}</span>
            : likely.isTooLong
              ? <span><Figure text={local(text.tooLong, { cycle: duration(cycleS.likely) })} /></span>
              : (
                <>
                  <span><Figure text={local(text.summary, { joints: clock.joints, cycle: duration(cycleS.likely), low: duration(cycleS.low), high: duration(cycleS.high), done: done(likely) })} /></span>
                  <span className="quiet-text">{local(text.range, { low: done(low), high: high.isTooLong ? '–' : done(high) })}</span>
                  {likely.lastStartMin === null || endMin === null ? null : <span>{local(text.lastStart, { time: timeText(likely.lastStartMin), end: timeText(endMin) })}</span>}
                </>
              )}
        {startMin === null ? <span className="quiet-text">{local(text.startAssumed)}</span> : null}
        {endMin === null && lastDay > 0 ? <span>{local(text.throughNight)}</span> : null}
        {startMin !== null && endMin !== null && endMin <= startMin ? <span>{local(text.endBeforeStart)}</span> : null}
      </div>
      {steps === null ? null : (
        <>
          <h3>{local(text.steps)}</h3>
          <div className="table-scroll" tabIndex={0} role="group" aria-label={local(text.steps)}>
            <table className="limits limits-sourced">
              <thead><tr><th scope="col">{local(text.step)}</th><th scope="col">{local(text.takes)}</th><th scope="col">{local(text.from)}</th></tr></thead>
              <tbody>
                {steps.map((step) => (
                  <tr key={step.step}>
                    <th scope="row">{local(text[`step_${step.step}`])}</th>
                    <td className="limit-value">{duration(step.likelyS)}{step.lowS === step.highS ? '' : ` (${duration(step.lowS)} – ${duration(step.highS)})`}</td>
                    <td><em>{local(text[`source_${step.source}`])}</em><span className="quiet-text block">{step.cite}</span></td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </>
      )}
      {likely === null || likely.rows.length === 0 ? null : (
        <div className="table-scroll" tabIndex={0} role="group" aria-label={local(text.joint)}>
          <table className="limits">
            <thead><tr><th scope="col">{local(text.joint)}</th><th scope="col">{local(text.takeUp)}</th><th scope="col">{local(text.faceFrom)}</th><th scope="col">{local(text.cooled)}</th><th scope="col">{local(text.pulled)}</th></tr></thead>
            <tbody>
              {likely.rows.map((row) => (
                <tr key={row.joint}>
                  <th scope="row">{row.joint}{lastDay > 0 ? <span className="quiet-text nowrap"> {local(text.day, { n: dayOf(row.day, row.loadMin) + 1 })}</span> : null}</th>
                  <td>{timeText(row.loadMin)}</td><td>{timeText(row.fuseMin)}</td><td><strong>{timeText(row.cooledMin)}</strong></td><td>{timeText(row.pulledMin)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <p className="quiet-text">{local(text.caution)}</p>
    </Panel>
  )
}
