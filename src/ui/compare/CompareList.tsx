import { useEffect, useRef, useState, type ReactNode } from 'react'
import { changesBetween, type Change } from '../../scene/changeWords.ts'
import { changeGroups } from '../../scene/changeLine.ts'
import { changeGroupWords, compareWords as words } from '../../messages/ui/compareWords.ts'
import { comparisonOf } from '../../state/comparison.ts'
import { Figure } from '../common/Figure.tsx'
import { Icon } from '../common/Icon.tsx'
import { useDocuments, useTell, useUi, useView, useWords } from '../context.tsx'
import { showPlace } from '../findings/actions.ts'
import { bringBesideList } from '../items/besideList.ts'
import type { CompareWith, LayoutEntry, PointEntry } from '../services.ts'
import { KeepPoint } from '../keep/KeepPoint.tsx'
import { timeWords } from '../title/timeWords.ts'
import { useComparison } from './changes.ts'
import { pointName } from './pointName.ts'
import { ReleaseLog } from './ReleaseLog.tsx'
import '../styles/share.css'

/** Lines of one group shown before the rest is only counted. */
const MOST_LINES = 200

/** Two plans held against each other, beside the sheet: first with which, then what differs in words. */
const CompareList = (): ReactNode => {
  const { say, local } = useWords()
  const { app } = useUi()
  const comparison = useComparison()
  const form = useView((view) => view.form)
  const compared = comparison?.compared ?? null
  useEffect(() => {
    if (compared === null) return
    // What differs comes out from under the list; once a comparison, for an edit made meanwhile leaves the sheet where it is.
    const changes = changesBetween(compared.document, app.documents.getState().document)
    bringBesideList(app, changes.flatMap(({ recordId }) => app.site.getState().site.placed.get(recordId)?.runningM ?? []))
  }, [app, compared])
  const close = (): void => app.view.setState({ panel: null })
  const end = (): void => comparisonOf(app).setState({ compared: null })
  return (
    <section className="item-list compare-list" aria-label={local(words.title)} onKeyDown={(event) => { if (event.key === 'Escape') close() }}>
      <header className="panel-head"><h2>{local(words.title)}</h2><button type="button" className="quiet square" aria-label={say('close')} onClick={close}><Icon name="close" /></button></header>
      {comparison === null ? <Chooser /> : (
        <>
          <p><span className="quiet-text">{local(words.with)}</span> <strong>{pointName(comparison.compared.name, local)}</strong></p>
          <p role="status">{comparison.changes.length === 0 ? local(words.none) : local(comparison.changes.length === 1 ? words.one : words.count, { count: comparison.changes.length })}</p>
          <div className="buttons">
            {form === 'desktop' ? null : <button type="button" className="primary" onClick={() => app.view.setState({ panel: null, leaf: 'plan' })}>{local(words.onDrawing)}</button>}
            <button type="button" onClick={end}>{local(words.other)}</button>
            <button type="button" onClick={() => { end(); close() }}>{local(words.done)}</button>
          </div>
          {changeGroups.map((group) => <Group key={group} group={group} changes={comparison.changes.filter((change) => change.group === group)} />)}
        </>
      )}
    </section>
  )
}
export default CompareList

const Group = ({ group, changes }: { group: Change['group']; changes: readonly Change[] }): ReactNode => {
  const { local } = useWords()
  if (changes.length === 0) return null
  return (
    <section>
      <h3>{local(changeGroupWords[group])}</h3>
      <ul className="compare-changes">{changes.slice(0, MOST_LINES).map((change, i) => <Line key={`${change.recordId} ${i}`} change={change} />)}</ul>
      {changes.length > MOST_LINES ? <p className="quiet-text">{local(words.more, { count: changes.length - MOST_LINES })}</p> : null}
    </section>
  )
}

const Line = ({ change }: { change: Change }): ReactNode => {
  const { local } = useWords()
  const { app } = useUi()
  const isChosen = useView((view) => view.selection.includes(change.recordId))
  const text = <Figure text={local(change.text, change.values)} />
  if (!app.site.getState().site.placed.has(change.recordId)) return <li><span className="plain">{text}</span></li>
  const choose = (): void => {
    app.view.setState({ selection: [change.recordId] })
    const placed = app.site.getState().site.placed.get(change.recordId)
    if (placed !== undefined) showPlace(app, placed)
  }
  return <li><button type="button" aria-pressed={isChosen} onClick={choose}>{text}</button></li>
}

const Chooser = (): ReactNode => {
  const { local, say, language } = useWords()
  const { services } = useUi()
  const tell = useTell()
  const input = useRef<HTMLInputElement>(null)
  const document = useDocuments((state) => state.document)
  const [points, setPoints] = useState<readonly PointEntry[] | null>(null)
  const [layouts, setLayouts] = useState<readonly LayoutEntry[]>([])
  useEffect(() => {
    let isOpen = true
    void services.points().then((found) => { if (isOpen) setPoints(found) })
    void services.layouts().then((found) => { if (isOpen) setLayouts(found.filter((entry) => !entry.isOpen)) })
    return () => { isOpen = false }
  }, [services, document])
  const take = (what: CompareWith): void => void services.compareWith(what).then(tell)
  return (
    <>
      <p className="quiet-text">{local(words.about)}</p>
      <h3>{local(words.choose)}</h3>
      {points !== null && points.length === 0 ? <p className="quiet-text">{local(words.noPoints)}</p> : null}
      <ul className="rows">
        {(points ?? []).map(({ pointId, name, at }) => (
          <li key={pointId}><button type="button" className="row-main" onClick={() => take({ pointId, name })}><strong>{pointName(name, local)}</strong><span className="quiet-text block">{timeWords(at, language)}</span></button></li>
        ))}
      </ul>
      <KeepPoint onKept={() => void services.points().then(setPoints)} />
      <div className="buttons">
        <button type="button" onClick={() => input.current?.click()}>{local(words.file)}</button>
        <input
          ref={input} type="file" accept=".json,.yard,application/json" className="visually-hidden" tabIndex={-1} aria-label={local(words.file)}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0]
            event.currentTarget.value = ''
            if (file !== undefined) take({ file })
          }}
        />
      </div>
      {layouts.length === 0 ? null : (
        <>
          <h3>{local(words.chooseLayout)}</h3>
          <ul className="rows">
            {layouts.map(({ layoutId, title, changedAt }) => <li key={layoutId}><button type="button" className="row-main" onClick={() => take({ layoutId, name: title })}><strong>{title === '' ? say('untitled') : title}</strong><span className="quiet-text block">{timeWords(changedAt, language)}</span></button></li>)}
          </ul>
        </>
      )}
      <ReleaseLog />
    </>
  )
}
