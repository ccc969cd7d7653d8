import { useRef, useState, type ReactNode } from 'react'
import { sheetPrintWords as words } from '../../messages/ui/sheetPrintWords.ts'
import { layoutOf } from '../../scene/document.ts'
import { useDocuments, useIsStale, useTell, useUi, useView, useWords } from '../context.tsx'
import { ChoiceField } from '../fields/OtherFields.tsx'
import type { SheetProgress, SheetWish } from '../services.ts'
import '../styles/sheet.css'

const papers: readonly { value: SheetWish['paper']; label: string }[] = [{ value: 'letter', label: 'Letter' }, { value: 'tabloid', label: 'Tabloid' }, { value: 'a4', label: 'A4' }, { value: 'a3', label: 'A3' }]

/** The crew sheet and its kin: paper, language and units to choose, then one button a form. */
export const SheetPrint = (): ReactNode => {
  const { local } = useWords()
  const { services } = useUi()
  const tell = useTell()
  const isStale = useIsStale()
  const system = useDocuments((state) => layoutOf(state.document).displayUnits)
  const language = useView((view) => view.language)
  const [wish, setWish] = useState<Omit<SheetWish, 'as'>>({ paper: system === 'metric' ? 'a4' : 'letter', orientation: 'landscape', language, system })
  const [progress, setProgress] = useState<SheetProgress | null>(null)
  const cancel = useRef<AbortController | null>(null)
  const choose = (part: Partial<Omit<SheetWish, 'as'>>): void => setWish((now) => ({ ...now, ...part }))
  const make = async (as: SheetWish['as']): Promise<void> => {
    const controller = new AbortController()
    cancel.current = controller
    setProgress({ step: 'checks', done: 0, of: 1 })
    tell(await services.saveSheet({ ...wish, as }, { onProgress: setProgress, signal: controller.signal }))
    setProgress(null)
  }
  const button = (as: SheetWish['as'], text: string, isPrimary = false): ReactNode => <button type="button" key={as} className={isPrimary ? 'primary' : ''} disabled={progress !== null} onClick={() => void make(as)}>{text}</button>
  return (
    <section className="sheet-print" aria-label={local(words.title)}>
      <h3>{local(words.title)}</h3>
      <p>{local(words.about)}</p>
      <div className="field-grid">
        <ChoiceField label={local(words.paper)} value={wish.paper} choices={papers} onCommit={(paper) => choose({ paper })} />
        <ChoiceField label={local(words.orientation)} value={wish.orientation} choices={(['landscape', 'portrait'] as const).map((value) => ({ value, label: local(words[value]) }))} onCommit={(orientation) => choose({ orientation })} />
        <ChoiceField label={local(words.language)} value={wish.language} choices={[{ value: 'en', label: 'English' }, { value: 'es', label: 'Español' }, { value: 'both', label: local(words.both) }]} onCommit={(value) => choose({ language: value })} />
        <ChoiceField label={local(words.units)} value={wish.system} choices={[{ value: 'feetInches', label: local(words.feet) }, { value: 'metric', label: local(words.metric) }]} onCommit={(value) => choose({ system: value })} />
      </div>
      {isStale ? <p><strong>{local(words.stale)}</strong></p> : null}
      <div className="buttons">
        {button('pdf', local(words.sheetIn, { form: 'PDF' }), true)}
        {button('png', local(words.sheetIn, { form: 'PNG' }))}
        {button('svg', local(words.sheetIn, { form: 'SVG' }))}
      </div>
      <h3>{local(words.others)}</h3>
      <div className="buttons">
        {button('csv', local(words.tableIn, { form: 'CSV' }))}
        {button('dxf', local(words.planIn, { form: 'DXF' }))}
        {button('geojson', local(words.planIn, { form: 'GeoJSON' }))}
      </div>
      <div role="status" className="sheet-progress">
        {progress === null ? null : (
          <>
            <progress value={progress.step === 'checks' ? undefined : progress.done} max={progress.of} aria-label={local(words.title)} />
            <span>{local(words[`step_${progress.step}`], progress.step === 'checks' ? {} : { done: progress.done, of: progress.of })}</span>
            <button type="button" onClick={() => cancel.current?.abort()}>{local(words.cancel)}</button>
          </>
        )}
      </div>
    </section>
  )
}
