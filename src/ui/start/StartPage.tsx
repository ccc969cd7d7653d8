import { useEffect, useMemo, useRef, useState, type ReactNode } from 'react'
import { useStore } from 'zustand'
import type { UnitSystem } from '../../units/format.ts'
import { Panel } from '../common/Panel.tsx'
import { useTell, useUi, useView, useWords, wordsFor } from '../context.tsx'
import { ChoiceField } from '../fields/OtherFields.tsx'
import type { LayoutEntry } from '../services.ts'
import { OpenFileButton } from '../title/OpenFileButton.tsx'
import { timeWords } from '../title/timeWords.ts'
import { guessedSystem } from './guess.ts'
import { NewYardForm } from './NewYardForm.tsx'
import { StartPicture } from './StartPicture.tsx'

/** Three plain choices, what is kept here, and the caution. */
export const StartPage = (): ReactNode => {
  const { app, services } = useUi()
  const words = useWords()
  const { say, language } = words
  const tell = useTell()
  const isPseudo = useView((view) => view.pseudoLanguage)
  const storage = useStore(services.storage)
  const [system, setSystem] = useState<UnitSystem>(() => guessedSystem(navigator.languages))
  const [opened, setOpened] = useState<'new' | 'examples' | null>(null)
  const [layouts, setLayouts] = useState<readonly LayoutEntry[] | null>(null)
  const isHere = useRef(true)
  useEffect(() => {
    isHere.current = true
    void services.layouts().then((found) => { if (isHere.current) setLayouts(found) })
    return () => { isHere.current = false }
  }, [services])
  const formWords = useMemo(() => wordsFor(language, system, isPseudo), [language, system, isPseudo])
  const toYard = (): void => app.view.setState({ screen: 'yard', panel: null })
  return (
    <main className="start">
      <div className="start-sheet">
        <header className="start-head">
          <h1>Stringyard</h1>
          <p>{say('startWhat')}</p>
        </header>
        <StartPicture />
        <div className="start-choices">
          <button type="button" className="start-choice start-new" onClick={() => setOpened('new')}><strong>{say('startNew')}</strong><span>{say('startNewAbout')}</span></button>
          <button type="button" className="start-choice" onClick={() => setOpened('examples')}><strong>{say('startExample')}</strong><span>{say('startExampleAbout')}</span></button>
          <OpenFileButton className="start-choice" label={say('startOpen')} onOpened={toYard} />
        </div>
        <section aria-label={say('layoutsHere')}>
          <h2>{say('layoutsHere')}</h2>
          {layouts === null ? <p className="quiet-text">{say('working')}</p> : layouts.length === 0 ? <p className="quiet-text">{say('layoutsNone')}</p> : (
            <ul className="rows">
              {layouts.map((entry) => (
                <li key={entry.layoutId}>
                  <span className="row-main"><strong>{entry.title === '' ? say('untitled') : entry.title}</strong><span className="quiet-text block">{timeWords(entry.changedAt, language)}{entry.isExample ? ` · ${say('exampleCopy')}` : ''}</span></span>
                  <button type="button" aria-label={say('openNamed', { title: entry.title })} onClick={() => void services.openLayout(entry.layoutId).then((outcome) => { if (tell(outcome)) toYard() })}>{say('open')}</button>
                </li>
              ))}
            </ul>
          )}
        </section>
        <div className="field-grid start-settings">
          <ChoiceField label={say('units')} value={system} choices={(['feetInches', 'metric'] as const).map((value) => ({ value, label: say(`units_${value}`) }))} onCommit={setSystem} />
          <ChoiceField label={say('language')} value={language} choices={[{ value: 'en', label: 'English' }, { value: 'es', label: 'Español' }]} onCommit={(value) => app.view.setState({ language: value, pseudoLanguage: false })} />
        </div>
        <p className="start-local">{say('startLocal')}</p>
        <p className="caution">{say('caution')}</p>
        {storage.saved === 'blocked' ? <p className="state-bar state-bar-bad" role="alert">{storage.reason === null ? say('savedBlockedLong') : words.local(storage.reason)}</p> : null}
        <div className="buttons"><button type="button" className="link" onClick={() => app.view.setState({ panel: 'about' })}>{say('aboutTitle')}</button></div>
      </div>
      {opened === 'new' ? <NewYardForm system={system} words={formWords} onClose={() => setOpened(null)} onDrawn={() => { setOpened(null); toYard() }} /> : null}
      {opened === 'examples' ? (
        <Panel title={say('startExample')} onClose={() => setOpened(null)}>
          <p className="quiet-text">{say('examplesAbout')}</p>
          <ul className="rows">
            {services.examples.map((example) => (
              <li key={example.name}>
                <span className="row-main"><strong>{words.local(example.title)}</strong><span className="quiet-text block">{words.local(example.about)}</span></span>
                <button type="button" aria-label={say('openNamed', { title: words.local(example.title) })} onClick={() => void services.openExample(example.name).then((outcome) => { if (tell(outcome)) { setOpened(null); toYard() } })}>{say('open')}</button>
              </li>
            ))}
          </ul>
        </Panel>
      ) : null}
    </main>
  )
}
