import { useMemo, type ReactNode } from 'react'
import { evenShares, madeAt, midJointsOf, parkingRowsOf, restartOf, stringsOf, type StringView } from '../../derive/strings.ts'
import { stringWords as text } from '../../messages/ui/stringWords.ts'
import { dayOf, timeText } from '../../units/timeOfDay.ts'
import { useCommand } from '../command.ts'
import { Figure } from '../common/Figure.tsx'
import { Panel } from '../common/Panel.tsx'
import { useSite, useUi, useWords } from '../context.tsx'
import { fieldName } from '../fields/focus.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { ChoiceField } from '../fields/OtherFields.tsx'

const ROWS_OFFERED = 8

/** The strings of the job: how many sticks each has, where it is parked, when it is made, and the joints between them. */
export const StringsPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const words = useWords()
  const { local, figure } = words
  const run = useCommand()
  const site = useSite((state) => state.site)
  const strings = useMemo(() => stringsOf(site), [site])
  const { setUp } = site
  const { plan, stickCount, stringLengthM, countAssumed } = site.sticks
  const rows = parkingRowsOf(site)
  const setUpId = setUp?.id ?? ''
  const length = (valueM: number): string => figure({ kind: 'length', value: valueM })
  const counts = strings.map(({ sticks }) => sticks)
  const whole = counts.some((count) => count === null) ? null : counts.reduce<number>((sum, count) => sum + count!, 0)
  const isEven = whole === null || evenShares(whole, Math.max(1, strings.length)).every((share, i) => share === counts[i])
  if (setUp === null) return <Panel title={local(text.title)} onClose={onClose} wide><p>{local(text.needsSetUp)}</p></Panel>
  return (
    <Panel title={local(text.title)} onClose={onClose} wide>
      <div className="answer" role="status">
        {strings.length < 2
          ? <span><Figure text={countAssumed ? local(text.oneUnknown) : local(text.one, { sticks: stickCount, length: length(stringLengthM(stickCount)) })} /></span>
          : plan === null ? null : <span><Figure text={local(text.whole, { sticks: plan.sticks, strings: strings.length, length: length(plan.madeLengthM), wanted: length(plan.wantedLengthM) })} /></span>}
        {strings.length < 2 || rows === null ? null : <span className="quiet-text"><Figure text={local(text.rows, { spacing: length(rows.spacingM) })} /></span>}
      </div>
      {strings.length === 0 ? null : <StringList strings={strings} />}
      <p className="buttons">
        <button type="button" onClick={() => run('addString', { setUpId })}>{local(text.add)}</button>
        {strings.length > 1 && whole !== null && !isEven ? <button type="button" onClick={() => run('splitStrings', { setUpId, counts: evenShares(whole, strings.length) })}>{local(text.shareOut)}</button> : null}
        {strings.length > 1 ? (['left', 'right'] as const).map((side) => <button type="button" key={side} onClick={() => run('parkStrings', { setUpId, side })}>{local(text.park, { side: local(text[side]) })}</button>) : null}
      </p>
      {strings.length > 1 ? <MidJointList /> : null}
    </Panel>
  )
}

const StringList = ({ strings }: { strings: readonly StringView[] }): ReactNode => {
  const { local, figure } = useWords()
  const { app } = useUi()
  const run = useCommand()
  const site = useSite((state) => state.site)
  const made = useMemo(() => madeAt(site), [site])
  const show = (id: string): void => app.view.setState({ shownCase: { ...app.view.getState().shownCase, stringId: id } })
  const rowChoices = [
    { value: '', label: local(text.notSaid) }, { value: '0', label: local(text.onLine) },
    ...(['left', 'right'] as const).flatMap((side) => Array.from({ length: ROWS_OFFERED }, (_, i) => ({ value: `${side}${i + 1}`, label: local(side === 'left' ? text.rowLeft : text.rowRight, { row: i + 1 }) }))),
  ]
  const setRow = (id: string, value: string): void => {
    if (value === '') run('setString', { id, parkingRow: null })
    else if (value === '0') run('setString', { id, parkingRow: 0 })
    else run('setString', { id, parkingRow: Number(value.replace(/\D/g, '')), parkingSide: value.startsWith('left') ? 'left' : 'right' })
  }
  return (
    <ol className="plain-list" aria-label={local(text.table)}>
      {strings.map((one, i) => {
        const { record, name, sticks, lengthM, isShown } = one
        const at = made[i] ?? null
        const row = record.parkingRow === null ? '' : record.parkingRow === 0 ? '0' : `${record.parkingSide}${record.parkingRow}`
        const about = [lengthM === null ? '' : figure({ kind: 'length', value: lengthM }), at === null ? '' : `${local(text.made)} ${dayOf(at.day, at.min) > 0 ? `${local(text.day, { n: dayOf(at.day, at.min) + 1 })}, ` : ''}${timeText(at.min)}`].filter(Boolean).join(' · ')
        return (
          <li key={record.id} data-string={record.id} aria-current={isShown ? 'true' : undefined}>
            <h3>{local(text.stringName, { name })} <span className="quiet-text"><Figure text={about} /></span></h3>
            <div className="field-grid">
              <NumberField
                label={local(text.sticksOf, { name })} kind="count" value={record.stickCount} nullable min={1} max={2000} name={fieldName(record.id, 'stickCount')} hideOther
                {...(sticks === null ? {} : { placeholder: String(sticks) })} onCommit={(value) => run('setString', { id: record.id, stickCount: value === null ? null : Math.round(value) })}
              />
              <ChoiceField label={local(text.rowOf, { name })} name={fieldName(record.id, 'parkingRow')} value={row} choices={rowChoices} onCommit={(value) => setRow(record.id, value)} />
            </div>
            <p className="buttons">
              <button type="button" aria-pressed={isShown} onClick={() => show(record.id)}>{isShown ? local(text.shown) : local(text.show, { name })}</button>
              {sticks !== null && sticks > 1 ? <button type="button" onClick={() => run('splitString', { id: record.id, sticks, first: Math.ceil(sticks / 2) })}>{local(text.split, { name })}</button> : null}
              {i < strings.length - 1 ? <button type="button" onClick={() => run('joinString', { id: record.id })}>{local(text.join, { name })}</button> : null}
            </p>
          </li>
        )
      })}
    </ol>
  )
}

const MidJointList = (): ReactNode => {
  const { local, figure } = useWords()
  const site = useSite((state) => state.site)
  const mid = useMemo(() => midJointsOf(site), [site])
  const restart = restartOf(site)
  const time = (at: { day: number; min: number } | null): string => (at === null ? '–' : `${dayOf(at.day, at.min) > 0 ? `${local(text.day, { n: dayOf(at.day, at.min) + 1 })}, ` : ''}${timeText(at.min)}`)
  const duration = (value: number): string => figure({ kind: 'duration', value })
  const force = (value: number): string => figure({ kind: 'force', value })
  return (
    <>
      <h3>{local(text.midTitle)}</h3>
      {mid.eachS === null ? null : <p><Figure text={local(text.midEach, { each: duration(mid.eachS.likely), low: duration(mid.eachS.low), high: duration(mid.eachS.high) })} /></p>}
      <div className="table-scroll" tabIndex={0} role="group" aria-label={local(text.midTitle)}>
        <table className="limits">
          <thead><tr><th scope="col">{local(text.midTitle)}</th><th scope="col">{local(text.midFrom)}</th><th scope="col">{local(text.midTo)}</th></tr></thead>
          <tbody>{mid.joints.map((joint) => <tr key={joint.index}><th scope="row">{local(text.midRow, { a: joint.between[0], b: joint.between[1] })}</th><td>{time(joint.startsAt)}</td><td><strong>{time(joint.doneAt)}</strong></td></tr>)}</tbody>
        </table>
      </div>
      <p className="quiet-text">{local(text.orderNote)}{mid.startAssumed ? ` ${local(text.startAssumed)}` : ''}</p>
      {restart === null ? null : <p><Figure text={local(text.restart, { weight: force(restart.weightN), pull: force(restart.pullN), restart: force(restart.restartN) })} /></p>}
    </>
  )
}
