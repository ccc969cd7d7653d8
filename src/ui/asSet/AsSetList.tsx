import { useEffect, type KeyboardEvent, type ReactNode } from 'react'
import { asSetWords as words } from '../../messages/ui/asSetWords.ts'
import { Figure } from '../common/Figure.tsx'
import { Icon } from '../common/Icon.tsx'
import { useResults, useSite, useUi, useView, useWords } from '../context.tsx'
import { showPlace } from '../findings/actions.ts'
import { bringBesideList } from '../items/besideList.ts'
import { AsSetField } from './AsSetField.tsx'
import { heightRows, type HeightRow } from './measured.ts'

/** Enter in a field goes on to the next one down the line. */
const onToTheNext = (event: KeyboardEvent<HTMLElement>): void => {
  if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return
  const fields = [...event.currentTarget.querySelectorAll<HTMLInputElement>('input')]
  const field = event.target
  // The field itself takes the value first; where it could not be read, one stays.
  requestAnimationFrame(() => {
    if (field.getAttribute('aria-invalid') === null) fields[fields.indexOf(field) + 1]?.focus()
  })
}

/** Heights as measured, one after the other down the line, beside the sheet. */
const AsSetList = (): ReactNode => {
  const reader = useWords()
  const { local, system } = reader
  const { app } = useUi()
  const site = useSite((state) => state.site)
  const run = useResults((state) => state.run)
  const isShown = useView((view) => view.shownCase.variant === 'asSet')
  const rows = heightRows(site, run, system)
  useEffect(() => {
    const { site: first } = app.site.getState()
    bringBesideList(app, first.supports.map(({ runningM }) => runningM))
  }, [app])
  const close = (): void => app.view.setState({ panel: null })
  const turn = (): void => app.view.setState({ shownCase: { ...app.view.getState().shownCase, variant: isShown ? 'planned' : 'asSet' } })
  return (
    <section className="item-list as-set-list" aria-label={local(words.title)} onKeyDown={(event) => { if (event.key === 'Escape') close() }}>
      <header className="panel-head"><h2>{local(words.title)}</h2><button type="button" className="quiet square" aria-label={reader.say('close')} onClick={close}><Icon name="close" /></button></header>
      {rows.length === 0 ? <p className="quiet-text">{local(words.none)}</p> : (
        <>
          <p className="quiet-text">{local(words.about)}</p>
          <div className="buttons">
            <button type="button" className="primary" aria-pressed={isShown} onClick={turn}>{local(isShown ? words.showing : words.show)}</button>
            <span className="quiet-text">{local(words.count, { done: rows.filter(({ measuredM }) => measuredM !== null).length, all: rows.length })}</span>
          </div>
          <ol className="as-set-rows" onKeyDown={onToTheNext}>{rows.map((row) => <AsSetRow key={row.key} row={row} />)}</ol>
        </>
      )}
    </section>
  )
}
export default AsSetList

const AsSetRow = ({ row }: { row: HeightRow }): ReactNode => {
  const reader = useWords()
  const { local, figure } = reader
  const { app } = useUi()
  const isChosen = useView((view) => view.selection.includes(row.itemId))
  const name = row.label ?? local(words.jaws)
  const show = (): void => {
    app.view.setState({ selection: [row.itemId] })
    const placed = app.site.getState().site.placed.get(row.itemId)
    if (placed !== undefined) showPlace(app, placed)
  }
  return (
    <li data-chosen={isChosen}>
      <button type="button" className="quiet as-set-name" aria-pressed={isChosen} onClick={show}>
        <strong>{name}</strong>
        <span className="quiet-text"><Figure text={`${reader.running(row.runningM)} · ${local(words.planned)} ${row.plannedM === null ? local(words.notKnown) : figure({ kind: 'height', value: row.plannedM })}${row.toleranceM === null ? '' : ` ± ${figure({ kind: 'shortLength', value: row.toleranceM })}`}`} /></span>
      </button>
      <AsSetField row={row} label={local(words.fieldNear, { label: name })} />
    </li>
  )
}
