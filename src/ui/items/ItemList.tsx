import { useMemo, useRef, useState, type KeyboardEvent, type ReactNode } from 'react'
import { placedOf } from '../../scene/document.ts'
import { kindOf, kinds, type PlacedKind, type PlacedRecord } from '../../scene/kinds/index.ts'
import { useCommand } from '../command.ts'
import { Icon } from '../common/Icon.tsx'
import { LevelMark } from '../common/LevelMark.tsx'
import { useIsStale, useResults, useSite, useShownDocument, useUi, useView, useWords } from '../context.tsx'
import { showPlace } from '../findings/actions.ts'
import { levelByItem, numberedFindings } from '../findings/order.ts'
import { levelKey, sentenceWords } from '../findings/words.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { ChoiceField } from '../fields/OtherFields.tsx'
import { spokenName } from '../tag/names.ts'
import { useRemove } from '../tag/removeAsked.ts'

/**
 * Every item of the plan in document order: the same scene for those who do not see the drawing or do not use a pointer.
 * Arrows go from item to item, Space chooses, Shift or Ctrl with it adds, Enter opens the figures, Delete takes away.
 */
export const ItemList = (): ReactNode => {
  const words = useWords()
  const { say } = words
  const { app } = useUi()
  const document_ = useShownDocument()
  const site = useSite((state) => state.site)
  const run = useResults((state) => state.run)
  const isStale = useIsStale()
  const selection = useView((view) => view.selection)
  const [at, setAt] = useState<string | null>(null)
  const [filter, setFilter] = useState('')
  const list = useRef<HTMLUListElement>(null)
  const remove = useRemove()
  const levels = useMemo(() => levelByItem(run), [run])
  const sayings = useMemo(() => new Map(numberedFindings(run).flatMap(({ finding }) => finding.itemIds.map((id) => [id, sentenceWords(finding.what, words)] as const)).toReversed()), [run, words])
  const records = placedOf(document_)
  const named = records.map((record) => ({ record, name: spokenName(site, record, words) })).filter(({ name }) => name.toLowerCase().includes(filter.trim().toLowerCase()))
  const focusedId = named.some(({ record }) => record.id === at) ? at : (named[0]?.record.id ?? null)
  const choose = (record: PlacedRecord, add: boolean): void => {
    const next = add ? (selection.includes(record.id) ? selection.filter((id) => id !== record.id) : [...selection, record.id]) : [record.id]
    app.view.setState({ selection: next })
    const placed = site.placed.get(record.id)
    if (placed !== undefined) showPlace(app, placed)
  }
  const onKeyDown = (event: KeyboardEvent<HTMLUListElement>): void => {
    const index = named.findIndex(({ record }) => record.id === focusedId)
    const entry = named[index]
    if (entry === undefined) return
    const to = { ArrowDown: index + 1, ArrowUp: index - 1, Home: 0, End: named.length - 1 }[event.key]
    if (to !== undefined) {
      const next = named[Math.min(named.length - 1, Math.max(0, to))]
      if (next === undefined) return
      setAt(next.record.id)
      list.current?.querySelector<HTMLElement>(`[data-id="${CSS.escape(next.record.id)}"]`)?.focus()
    } else if (event.key === ' ') choose(entry.record, event.shiftKey || event.ctrlKey || event.metaKey)
    else if (event.key === 'Enter') {
      choose(entry.record, false)
      focusTag()
    } else if (event.key === 'Delete' || event.key === 'Backspace') void remove(selection.includes(entry.record.id) ? selection : [entry.record.id])
    else if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'a') app.view.setState({ selection: named.map(({ record }) => record.id) })
    else return
    event.preventDefault()
    event.stopPropagation()
  }
  return (
    <section className="item-list" aria-label={say('itemsTitle')} onKeyDown={(event) => { if (event.key === 'Escape') app.view.setState({ panel: null }) }}>
      <header className="panel-head"><h2>{say('itemsTitle')}</h2><button type="button" className="quiet square" aria-label={say('close')} onClick={() => app.view.setState({ panel: null })}><Icon name="close" /></button></header>
      <div className="field field-stacked"><label htmlFor="item-filter">{say('itemsFind')}</label><input id="item-filter" type="search" value={filter} autoComplete="off" onChange={(event) => setFilter(event.currentTarget.value)} onKeyDown={(event) => { if (event.key !== 'Escape') event.stopPropagation() }} /></div>
      {named.length === 0 ? <p className="quiet-text">{say(records.length === 0 ? 'itemsNone' : 'itemsNotFound')}</p> : (
        <ul ref={list} role="listbox" aria-label={say('itemsTitle')} aria-multiselectable="true" onKeyDown={onKeyDown}>
          {named.map(({ record, name }) => {
            const level = isStale ? undefined : levels.get(record.id)
            return (
              <li
                key={record.id} role="option" data-id={record.id} tabIndex={record.id === focusedId ? 0 : -1} aria-selected={selection.includes(record.id)} onFocus={() => setAt(record.id)}
                onClick={(event) => choose(record, event.shiftKey || event.ctrlKey || event.metaKey)}
              >
                {level === undefined || level === 'met' ? <span className="no-mark" /> : <LevelMark level={level} sizePx={15} />}
                <span>{name}{level === undefined || level === 'met' ? '' : `, ${say(levelKey(level))}`}{level === undefined || sayings.get(record.id) === undefined ? null : <span className="quiet-text block">{sayings.get(record.id)}</span>}</span>
              </li>
            )
          })}
        </ul>
      )}
      <MoveByDistance />
      <PlaceByDistance />
      <ShowAndHide />
    </section>
  )
}

const focusTag = (): void => {
  requestAnimationFrame(() => document.querySelector<HTMLElement>('.tag input, .tag select')?.focus())
}

/** Moves what is chosen by typed distances, along and across. */
const MoveByDistance = (): ReactNode => {
  const { say } = useWords()
  const run = useCommand()
  const selection = useView((view) => view.selection)
  if (selection.length === 0) return null
  return (
    <fieldset>
      <legend>{say('moveBy')}</legend>
      <NumberField layout="row" label={say('moveAlong')} kind="length" manner="running" placeholder="" value={null} onCommit={(value, mergeKey) => { if (value !== null) run('slideBy', { ids: selection, dRunningM: value, dOffsetM: 0 }, undefined, `${mergeKey}+${value}`) }} />
      <NumberField layout="row" label={say('moveAcross')} kind="shortLength" manner="offset" placeholder="" value={null} onCommit={(value, mergeKey) => { if (value !== null) run('slideBy', { ids: selection, dRunningM: 0, dOffsetM: value }, undefined, `${mergeKey}+${value}`) }} />
    </fieldset>
  )
}

/** A half width drawn for an area placed by a typed distance; its size is typed afterwards in the tag. */
const AREA_HALF_M = 3

/** Places anything of the shelf by typed distance and offset from the datum, without a pointer. */
export const PlaceByDistance = (): ReactNode => {
  const words = useWords()
  const { say } = words
  const { app } = useUi()
  const run = useCommand()
  const site = useSite((state) => state.site)
  const [kind, setKind] = useState<PlacedKind>('stand')
  // A tap on an empty place of the tape has said where.
  const tapped = useView((view) => (view.panel === 'placeAt' ? view.placeAtRunningM : null))
  const [runningM, setRunningM] = useState<number | null>(tapped)
  const [offsetM, setOffsetM] = useState<number | null>(0)
  const definition = kindOf(kind)
  const put = (): void => {
    if (runningM === null || definition === undefined) return
    const known = new Set(Object.keys(app.documents.getState().document.records))
    const offset = offsetM ?? 0
    const at = site.atRunning(runningM, offset)
    const corner = (along: number, across: number): { xM: number; yM: number } => {
      const point = site.atRunning(runningM + along, offset + across)
      return { xM: point.xM, yM: point.yM }
    }
    const args = definition.placing === 'item'
      ? { kind, place: definition.ridesOnRun === true && site.run !== null ? { at: 'onRun', runId: site.run.id, runningM, offsetM: offset, turnRad: 0 } : { at: 'free', xM: at.xM, yM: at.yM, headingRad: at.headingRad } }
      : { kind, points: definition.placing === 'polygon' ? [corner(-AREA_HALF_M, -AREA_HALF_M), corner(AREA_HALF_M, -AREA_HALF_M), corner(AREA_HALF_M, AREA_HALF_M), corner(-AREA_HALF_M, AREA_HALF_M)] : [corner(-AREA_HALF_M, 0), corner(AREA_HALF_M, 0)] }
    if (!run('place', args)) return
    const added = Object.keys(app.documents.getState().document.records).filter((id) => !known.has(id))
    if (app.view.getState().panel === 'placeAt') app.view.setState({ panel: null })
    app.view.setState({ selection: added.filter((id) => kindOf(app.documents.getState().document.records[id]!.kind) !== undefined) })
  }
  return (
    <fieldset>
      <legend>{say('placeNew')}</legend>
      <ChoiceField<PlacedKind> layout="row" label={say('placeWhat')} value={kind} choices={kinds.filter(({ placing }) => placing !== 'none').map((entry) => ({ value: entry.kind, label: words.local(entry.name) }))} onCommit={setKind} />
      <NumberField layout="row" label={say('distance')} kind="length" manner="running" placeholder="" value={runningM} nullable onCommit={(value) => setRunningM(value)} />
      <NumberField layout="row" label={say('offset')} kind="shortLength" manner="offset" value={offsetM} nullable onCommit={(value) => setOffsetM(value)} />
      <div className="buttons"><button type="button" className="primary" disabled={runningM === null} onClick={put}>{say('placeIt')}</button></div>
    </fieldset>
  )
}

/** What is drawn, by kind. Hidden things still count in every check. */
const ShowAndHide = (): ReactNode => {
  const words = useWords()
  const { app } = useUi()
  const hidden = useView((view) => view.hiddenKinds)
  const present = new Set(placedOf(useShownDocument()).map(({ kind }) => kind))
  return (
    <details>
      <summary>{words.say('showAndHide')}</summary>
      <p className="quiet-text">{words.say('showAndHideAbout')}</p>
      <ul className="check-list">
        {kinds.filter(({ kind }) => present.has(kind)).map(({ kind, name }) => (
          <li key={kind}><label><input type="checkbox" checked={!hidden.includes(kind)} onChange={(event) => app.view.setState({ hiddenKinds: event.currentTarget.checked ? hidden.filter((other) => other !== kind) : [...hidden, kind] })} />{words.local(name)}</label></li>
        ))}
      </ul>
    </details>
  )
}
