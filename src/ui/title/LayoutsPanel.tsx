import { useEffect, useState, type ReactNode } from 'react'
import { useStore } from 'zustand'
import { keepWords } from '../../messages/ui/keepWords.ts'
import { Panel } from '../common/Panel.tsx'
import { useAsk, useTell, useUi, useWords } from '../context.tsx'
import { TextField } from '../fields/OtherFields.tsx'
import type { LayoutEntry, PointEntry } from '../services.ts'
import { pointName } from '../compare/pointName.ts'
import { KeepPoint } from '../keep/KeepPoint.tsx'
import { megabytes } from '../keep/megabytes.ts'
import { OpenFileButton } from './OpenFileButton.tsx'
import { timeWords } from './timeWords.ts'

/** Layouts on this device, files, points in time, and the way to clear it all. */
export const LayoutsPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const words = useWords()
  const { say, language } = words
  const { services } = useUi()
  const ask = useAsk()
  const tell = useTell()
  const storage = useStore(services.storage)
  const [layouts, setLayouts] = useState<readonly LayoutEntry[]>([])
  const [points, setPoints] = useState<readonly PointEntry[]>([])
  const [renaming, setRenaming] = useState<string | null>(null)
  const [asked, setAsked] = useState(0)
  const refresh = (): void => setAsked((before) => before + 1)
  useEffect(() => {
    let isOpen = true
    void services.layouts().then((found) => { if (isOpen) setLayouts(found) })
    void services.points().then((found) => { if (isOpen) setPoints(found) })
    return () => { isOpen = false }
  }, [services, asked])
  const clear = async (): Promise<void> => {
    const sure = await ask({ title: say('clearTitle'), lines: [say('clearLayouts', { count: layouts.length }), say('clearGone')], yes: say('clearYes'), no: say('cancel'), danger: true })
    if (sure && tell(await services.clearDevice())) onClose()
  }
  const remove = async (entry: LayoutEntry): Promise<void> => {
    const sure = await ask({ title: say('removeLayoutTitle', { title: entry.title }), lines: [say('removeLayoutGone')], yes: say('remove'), no: say('cancel'), danger: true })
    if (sure) {
      tell(await services.removeLayout(entry.layoutId))
      refresh()
    }
  }
  return (
    <Panel title={say('layoutsTitle')} onClose={onClose} wide>
      <p>{storage.saved === 'unsaved' || storage.saved === 'blocked' ? <strong>{storage.reason === null ? say('savedNot') : words.local(storage.reason)}</strong> : say(`stored_${storage.persisted === true ? 'kept' : 'mayGo'}`)}</p>
      <div className="buttons">
        <button type="button" className="primary" onClick={() => void services.saveFile().then(tell)}>{say('saveFile')}</button>
        <OpenFileButton onOpened={onClose} />
        <button type="button" onClick={() => void services.saveEverything().then(tell)}>{say('saveEverything')}</button>
        {storage.isExample ? <button type="button" onClick={() => void services.resetExample().then((outcome) => { if (tell(outcome)) onClose() })}>{say('putBack')}</button> : null}
      </div>
      <h3>{say('layoutsHere')}</h3>
      {layouts.length === 0 ? <p className="quiet-text">{say('layoutsNone')}</p> : (
        <ul className="rows">
          {layouts.map((entry) => (
            <li key={entry.layoutId}>
              {renaming === entry.layoutId
                ? <TextField label={say('layoutTitle')} value={entry.title} onCommit={(value) => { setRenaming(null); void services.renameLayout(entry.layoutId, value).then((outcome) => { tell(outcome); refresh() }) }} />
                : <span className="row-main"><strong>{entry.title === '' ? say('untitled') : entry.title}</strong><span className="quiet-text block">{entry.isOpen ? `${say('openNow')} · ` : ''}{timeWords(entry.changedAt, language)}</span></span>}
              <span className="buttons">
                {entry.isOpen ? null : <button type="button" onClick={() => void services.openLayout(entry.layoutId).then((outcome) => { if (tell(outcome)) onClose() })}>{say('open')}</button>}
                <button type="button" onClick={() => setRenaming(entry.layoutId)}>{say('rename')}</button>
                <button type="button" onClick={() => void remove(entry)}>{say('remove')}</button>
              </span>
            </li>
          ))}
        </ul>
      )}
      <h3>{say('pointsTitle')}</h3>
      {points.length === 0 ? <p className="quiet-text">{say('pointsNone')}</p> : (
        <ul className="rows">
          {points.map((point) => (
            <li key={point.pointId}>
              <span className="row-main">{pointName(point.name, words.local)}<span className="quiet-text block">{timeWords(point.at, language)}</span></span>
              <button type="button" onClick={() => void services.openPoint(point.pointId).then((outcome) => { if (tell(outcome)) onClose() })}>{say('pointOpen')}</button>
            </li>
          ))}
        </ul>
      )}
      <KeepPoint onKept={refresh} />
      <h3>{say('deviceTitle')}</h3>
      {storage.usedBytes === null ? null : <p className="quiet-text">{say('deviceUsed', { used: megabytes(storage.usedBytes), allowed: megabytes(storage.allowedBytes) })}{storage.editsSinceFile === 0 ? '' : ` ${words.local(keepWords.inNoFile, { count: storage.editsSinceFile })}`}</p>}
      <div className="buttons"><button type="button" className="danger" onClick={() => void clear()}>{say('clearDevice')}</button></div>
    </Panel>
  )
}
