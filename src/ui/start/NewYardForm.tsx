import { useState, type ReactNode } from 'react'
import type { UnitSystem } from '../../units/format.ts'
import { Figure } from '../common/Figure.tsx'
import { Panel } from '../common/Panel.tsx'
import { useTell, useUi, WordsProvider, type Words } from '../context.tsx'
import { NumberField } from '../fields/NumberField.tsx'
import { TextField } from '../fields/OtherFields.tsx'
import type { NewYardForm as Form } from '../services.ts'
import { PipeFields } from '../title/PipeFields.tsx'
import { stickSentences } from '../title/pipeWords.ts'

const emptyForm = (system: UnitSystem): Form => ({
  title: '', displayUnits: system, profile: system === 'feetInches' ? 'US' : 'metric-generic', pipe: null,
  neededLengthM: null, stickLengthM: null, stripLengthM: null, stripWidthM: null, fallRatio: null,
})

interface NewYardProps {
  system: UnitSystem
  words: Words
  onClose: () => void
  onDrawn: () => void
}

/** One short form, every field skippable; the first two answer at once in words. */
export const NewYardForm = ({ system, words, onClose, onDrawn }: NewYardProps): ReactNode => {
  const { services, panels } = useUi()
  const tell = useTell()
  const [form, setForm] = useState<Form>(() => emptyForm(system))
  const [isDrawing, setIsDrawing] = useState(false)
  const { say } = words
  const put = (over: Partial<Form>): void => setForm((before) => ({ ...before, ...over }))
  const answer = services.facts.sticks({ pipe: form.pipe, neededLengthM: form.neededLengthM, stickLengthM: form.stickLengthM, tailsM: 0, jointLossM: null })
  const draw = async (): Promise<void> => {
    setIsDrawing(true)
    panels.setState({ opensFirst: true })
    const outcome = await services.newYard(form)
    setIsDrawing(false)
    if (tell(outcome)) onDrawn()
    else panels.setState({ opensFirst: false })
  }
  return (
    <WordsProvider words={words}>
      <Panel
        title={say('startNew')} onClose={onClose} wide
        foot={<><button type="button" className="primary" disabled={isDrawing} onClick={() => void draw()}>{say('drawIt')}</button><button type="button" onClick={onClose}>{say('cancel')}</button></>}
      >
        <p className="quiet-text">{say('newYardAbout')}</p>
        <PipeFields value={form.pipe} onChange={(pipe) => put({ pipe })} />
        <div className="field-grid">
          <NumberField label={say('neededLength')} kind="length" value={form.neededLengthM} nullable min={0.1} max={1e5} name="form|neededLengthM" onCommit={(neededLengthM) => put({ neededLengthM })} />
          <NumberField label={say('stickLength')} kind="length" value={form.stickLengthM} nullable min={0.5} max={400} name="form|stickLengthM" onCommit={(stickLengthM) => put({ stickLengthM })} />
        </div>
        <div className="answer" role="status" aria-live="polite">
          {answer === null ? <p className="quiet-text">{say('sticksNeed')}</p> : stickSentences(answer, words).map((sentence) => <p key={sentence}><Figure text={sentence} /></p>)}
        </div>
        <div className="field-grid">
          <NumberField label={say('stripLength')} kind="length" value={form.stripLengthM} nullable min={1} max={1e5} name="form|stripLengthM" onCommit={(stripLengthM) => put({ stripLengthM })} />
          <NumberField label={say('stripWidth')} kind="length" value={form.stripWidthM} nullable min={0.5} max={1e4} name="form|stripWidthM" onCommit={(stripWidthM) => put({ stripWidthM })} />
          <NumberField label={say('fallAlong')} kind="slope" value={form.fallRatio} nullable min={-0.5} max={0.5} name="form|fallRatio" onCommit={(fallRatio) => put({ fallRatio })} />
          <TextField label={say('layoutTitle')} value={form.title} name="form|title" onCommit={(title) => put({ title })} />
        </div>
      </Panel>
    </WordsProvider>
  )
}
