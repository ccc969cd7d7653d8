import type { ReactNode } from 'react'
import type { PlacedRecord } from '../../scene/kinds/index.ts'
import { useCommand } from '../command.ts'
import { Icon } from '../common/Icon.tsx'
import { useUi, useWords } from '../context.tsx'
import { useRemove } from './removeAsked.ts'

/** Copies land this far beside what they were made from, towards the reader of the sheet. */
const COPY_AWAY_M = 1.2

/** Lock, duplicate, attach, delete: for one item and for several alike. */
export const TagActions = ({ records }: { records: readonly PlacedRecord[] }): ReactNode => {
  const { say } = useWords()
  const { app } = useUi()
  const run = useCommand()
  const remove = useRemove()
  const ids = records.map(({ id }) => id)
  const isLocked = records.every(({ locked }) => locked)
  const items = records.filter((record) => 'place' in record)
  const isAttached = items.length > 0 && items.every((record) => record.place.at !== 'free')
  const duplicate = (): void => {
    const before = new Set(Object.keys(app.documents.getState().document.records))
    const headingRad = app.site.getState().site.setUp?.headingRad ?? 0
    if (!run('duplicate', { ids, dxM: COPY_AWAY_M * Math.cos(headingRad), dyM: COPY_AWAY_M * Math.sin(headingRad) })) return
    app.view.setState({ selection: Object.keys(app.documents.getState().document.records).filter((id) => !before.has(id)) })
  }
  return (
    <div className="tag-actions">
      <button type="button" aria-pressed={isLocked} onClick={() => run('lock', { ids, locked: !isLocked })}><Icon name={isLocked ? 'lock' : 'unlock'} sizePx={16} />{say(isLocked ? 'locked' : 'lock')}</button>
      {items.length === 0 ? null : <button type="button" disabled={isLocked} onClick={() => run(isAttached ? 'detach' : 'attach', { ids })}><Icon name="attach" sizePx={16} />{say(isAttached ? 'detach' : 'attach')}</button>}
      <button type="button" onClick={duplicate}><Icon name="copy" sizePx={16} />{say('duplicate')}</button>
      <button type="button" disabled={isLocked} onClick={() => void remove(ids)}><Icon name="remove" sizePx={16} />{say('remove')}</button>
    </div>
  )
}
