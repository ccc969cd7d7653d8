import { lazy, Suspense, useState, type ReactNode } from 'react'
import { kindOf, type PlacedRecord } from '../../scene/kinds/index.ts'
import { useCommand } from '../command.ts'
import { Figure } from '../common/Figure.tsx'
import { LevelMark } from '../common/LevelMark.tsx'
import { useLaggingRun, useSite, useUi, useView, useWords } from '../context.tsx'
import { fieldName } from '../fields/focus.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { TextField } from '../fields/OtherFields.tsx'
import { basisAt, sharedFields, valueAt } from '../fields/path.ts'
import { RecordField } from '../fields/RecordField.tsx'
import { levelByItem } from '../findings/order.ts'
import { hasHeight, HeightRuleRow, SaddleRow } from './HeightRow.tsx'
import { itemLabel, kindWords } from './names.ts'
import { ItemBands } from './ItemBands.tsx'
import { RangeBar } from './RangeBar.tsx'
import { rangeOf, resultWords } from './result.ts'
import { TagActions } from './TagActions.tsx'

/** Height as set and what it is held to; fetched with the first support chosen. */
const AsSetRows = lazy(() => import('../asSet/AsSetRows.tsx'))
const measuresHeight = (record: PlacedRecord): boolean => kindOf(record.kind)?.supportsPipe === true || record.kind === 'machine'

/** Rows a tag shows before 'more'. */
const FIRST_ROWS = 3

export const TagHead = ({ records }: { records: readonly PlacedRecord[] }): ReactNode => {
  const words = useWords()
  const { app } = useUi()
  const site = useSite((state) => state.site)
  const isMore = useView((view) => view.tagMore)
  const { run, isStale } = useLaggingRun()
  const [first] = records
  if (first === undefined) return null
  const level = isStale || records.length > 1 ? null : levelByItem(run).get(first.id)
  const label = records.length > 1 ? words.say('chosenCount', { count: records.length }) : itemLabel(site, first, words)
  const about = records.length > 1 ? countsWords(records, words.local) : kindWords(first, words)
  return (
    <header className="tag-head">
      <h2><strong>{label}</strong>{about === label ? null : <span> {about}</span>}</h2>
      {level === undefined || level === null || level === 'met' ? null : <LevelMark level={level} sizePx={15} named />}
      <button type="button" className="link tag-more" aria-expanded={isMore} onClick={() => app.view.setState({ tagMore: !isMore })}>{words.say(isMore ? 'less' : 'more')}</button>
    </header>
  )
}

const countsWords = (records: readonly PlacedRecord[], local: (text: { en: string; es: string }) => string): string => {
  const counts = new Map<string, number>()
  for (const { kind } of records) counts.set(kind, (counts.get(kind) ?? 0) + 1)
  return [...counts].map(([kind, count]) => `${count} × ${local(kindOf(kind)?.name ?? { en: kind, es: kind })}`).join(', ')
}

/** The figures of one item: distance, offset and height first, the rest under 'more'. */
export const OneItem = ({ record }: { record: PlacedRecord }): ReactNode => {
  const words = useWords()
  const { say } = words
  const run = useCommand()
  const isMore = useView((view) => view.tagMore)
  const site = useSite((state) => state.site)
  const profile = useSite((state) => state.profile)
  const placed = site.placed.get(record.id)
  const kind = kindOf(record.kind)
  if (kind === undefined) return null
  const onRun = 'place' in record && placed !== undefined && placed.runningM !== null
  const lead = (onRun ? 2 : 0) + (hasHeight(record) ? 1 : 0)
  const firsts = kind.fields.filter(({ first }) => first === true).slice(0, Math.max(1, FIRST_ROWS - lead))
  const others = kind.fields.filter((field) => !firsts.includes(field))
  const range = rangeOf(site, record.id)
  const result = resultWords(site, profile, record.id, words)
  const set = (path: string) => (value: unknown, mergeKey?: string): void => { run('setField', { ids: [record.id], path, value }, undefined, mergeKey) }
  const row = (field: (typeof kind.fields)[number]): ReactNode => (
    <RecordField key={field.path} field={field} value={valueAt(record, field.path)} basis={basisAt(record, field.path)} name={fieldName(record.id, field.path)} onCommit={set(field.path)} />
  )
  return (
    <>
      {onRun ? (
        <>
          <NumberField layout="row" label={say('distance')} kind="length" manner="running" value={placed.runningM} name={fieldName(record.id, 'runningM')} disabled={record.locked} onCommit={(value, mergeKey) => { if (value !== null) run('setOnRun', { id: record.id, runningM: value }, undefined, mergeKey) }} />
          <NumberField layout="row" label={say('offset')} kind="shortLength" manner="offset" value={placed.offsetM} name={fieldName(record.id, 'offsetM')} disabled={record.locked} onCommit={(value, mergeKey) => { if (value !== null) run('setOnRun', { id: record.id, offsetM: value }, undefined, mergeKey) }} />
        </>
      ) : null}
      {hasHeight(record) ? <SaddleRow record={record} /> : null}
      {firsts.map(row)}
      {range === null ? null : <RangeBar {...range} guessed={basisAt(record, 'figures.lowestSaddleM.value') === 'typical'} />}
      {measuresHeight(record) ? <Suspense><AsSetRows itemId={record.id} /></Suspense> : null}
      {result === null ? null : <p className="tag-result"><Figure text={result} /></p>}
      {isMore ? (
        <div className="tag-rest">
          <ItemBands itemId={record.id} />
          {hasHeight(record) ? <HeightRuleRow record={record} /> : null}
          {onRun && record.kind !== 'machine' ? <NumberField layout="row" label={say('turnAngle')} kind="angle" value={placed.turnRad} min={-7} max={7} disabled={record.locked} hideOther onCommit={(value, mergeKey) => { if (value !== null) run('setOnRun', { id: record.id, turnRad: value }, undefined, mergeKey) }} /> : null}
          {'points' in record ? <SizeRows record={record} /> : null}
          {others.map(row)}
          <TextField layout="row" label={say('note')} value={record.note ?? ''} name={fieldName(record.id, 'note')} onCommit={(value, mergeKey) => set('note')(value === '' ? null : value, mergeKey)} />
          <TagActions records={[record]} />
        </div>
      ) : null}
    </>
  )
}

/** Typed sides of what is drawn point by point: a feature of four corners keeps its first corner and its direction. */
const SizeRows = ({ record }: { record: Extract<PlacedRecord, { points: unknown }> }): ReactNode => {
  const { say } = useWords()
  const run = useCommand()
  const { points } = record
  const [a, b, c, d] = points
  if (points.length !== 4 || a === undefined || b === undefined || c === undefined || d === undefined) return null
  const length = Math.hypot(b.xM - a.xM, b.yM - a.yM)
  const width = Math.hypot(d.xM - a.xM, d.yM - a.yM)
  if (length < 1e-6 || width < 1e-6) return null
  const set = (lengthM: number, widthM: number, mergeKey: string): void => {
    const along = { xM: ((b.xM - a.xM) / length) * lengthM, yM: ((b.yM - a.yM) / length) * lengthM }
    const across = { xM: ((d.xM - a.xM) / width) * widthM, yM: ((d.yM - a.yM) / width) * widthM }
    const next = [a, { xM: a.xM + along.xM, yM: a.yM + along.yM }, { xM: a.xM + along.xM + across.xM, yM: a.yM + along.yM + across.yM }, { xM: a.xM + across.xM, yM: a.yM + across.yM }]
    run('setField', { ids: [record.id], path: 'points', value: next }, undefined, mergeKey)
  }
  return (
    <>
      <NumberField layout="row" label={say('sideLong')} kind="length" value={length} min={0.1} max={1e4} disabled={record.locked} onCommit={(value, key) => { if (value !== null) set(value, width, key) }} />
      <NumberField layout="row" label={say('sideShort')} kind="length" value={width} min={0.1} max={1e4} disabled={record.locked} onCommit={(value, key) => { if (value !== null) set(length, value, key) }} />
    </>
  )
}

/** Several chosen: the fields they share, spacing, and what can be done to all at once. */
export const SeveralItems = ({ records }: { records: readonly PlacedRecord[] }): ReactNode => {
  const words = useWords()
  const { say } = words
  const run = useCommand()
  const isMore = useView((view) => view.tagMore)
  const ids = records.map(({ id }) => id)
  const riders = records.filter((record) => 'place' in record && kindOf(record.kind)?.ridesOnRun === true)
  const site = useSite((state) => state.site)
  const runnings = riders.map(({ id }) => site.placed.get(id)?.runningM ?? null).filter((running) => running !== null).sort((p, q) => p - q)
  const gaps = runnings.slice(1).map((running, i) => running - runnings[i]!)
  const isEven = gaps.length > 0 && gaps.every((gap) => Math.abs(gap - gaps[0]!) < 0.004)
  const shared = sharedFields(records)
  return (
    <>
      {riders.length > 1 && riders.length === records.length ? (
        <>
          <NumberField layout="row" label={say('spacing')} kind="length" value={isEven ? gaps[0]! : null} isMixed={!isEven} min={0.05} max={500} onCommit={(value, mergeKey) => { if (value !== null) run('spaceAt', { ids, spacingM: value }, undefined, mergeKey) }} />
          <div className="buttons"><button type="button" disabled={riders.length < 3} onClick={() => run('spreadEvenly', { ids })}>{say('spreadEvenly')}</button></div>
        </>
      ) : null}
      {records.every(hasHeight) ? <SharedSaddle records={records} /> : null}
      {isMore ? (
        <div className="tag-rest">
          {shared.map(({ field, value, isMixed }) => <RecordField key={field.path} field={field} value={value} isMixed={isMixed} onCommit={(next, mergeKey) => { run('setField', { ids, path: field.path, value: next }, undefined, mergeKey) }} />)}
        </div>
      ) : null}
      <TagActions records={records} />
    </>
  )
}

const SharedSaddle = ({ records }: { records: readonly PlacedRecord[] }): ReactNode => {
  const { say } = useWords()
  const run = useCommand()
  const [open, setOpen] = useState(false)
  const ids = records.map(({ id }) => id)
  const site = useSite((state) => state.site)
  const saddles = ids.map((id) => site.supports.find(({ itemId }) => itemId === id)?.saddleM ?? null)
  const isMixed = saddles.some((saddle) => saddle === null || Math.abs(saddle - (saddles[0] ?? 0)) > 1e-4)
  return (
    <>
      <NumberField layout="row" label={say('saddle')} kind="height" value={isMixed ? null : (saddles[0] ?? null)} isMixed={isMixed} min={-1} max={12} onCommit={(value, mergeKey) => { if (value !== null) run('setHeight', { ids, height: { rule: 'aboveGround', saddleM: value } }, undefined, mergeKey) }} />
      <div className="buttons">
        <button type="button" onClick={() => run('setHeight', { ids, height: { rule: 'onAxis' } })}>{say('heightRule_onAxis')}</button>
        <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>{say('heightBy')}</button>
      </div>
      {open ? <NumberField layout="row" label={say('heightBy')} kind="height" placeholder="" value={null} min={-3} max={3} onCommit={(value, mergeKey) => { if (value !== null) run('dropBy', { ids, dLevelM: value }, undefined, mergeKey) }} /> : null}
    </>
  )
}
