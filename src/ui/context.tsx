import { createContext, useContext, useDeferredValue, useMemo, type ReactNode } from 'react'
import { useStore } from 'zustand'
import { createStore, type StoreApi } from 'zustand/vanilla'
import type { CheckRun, Level } from '../checks/finding.ts'
import type { Localized } from '../messages/localized.ts'
import { localText, uiText, type TextOptions, type UiKey, type UiValues } from '../messages/ui/text.ts'
import { layoutOf, type YardDocument } from '../scene/document.ts'
import type { App, SiteState } from '../state/app.ts'
import { shownDocument, type DocumentState } from '../state/documentStore.ts'
import type { ResultsState } from '../state/resultsStore.ts'
import { shownResultsOf, type ShownResults } from '../state/shownResults.ts'
import type { ViewState } from '../state/viewStore.ts'
import { formatOffset, formatQuantity, formatRunning, type FormatOptions, type UnitSystem } from '../units/format.ts'
import type { Quantity, QuantityKind } from '../units/quantity.ts'
import type { Services } from './services.ts'

/** A question put before something that is hard to take back. */
export interface Question {
  title: string
  lines: readonly string[]
  yes: string
  /** Left out: one button only. */
  no?: string
  danger: boolean
  answer: (yes: boolean) => void
}

/** What only the panels need to know of each other; gone on reload. */
export interface PanelState {
  question: Question | null
  /** Check whose page is open. */
  whyCheckId: string | null
  /** Finding unfolded over a narrow margin. */
  openNoteKey: string | null
  metOpen: boolean
  confirmOpen: boolean
  /** Levels of which every note is drawn, however many. */
  allNotesOf: readonly Level[]
  /** A new yard was drawn and its first finding has not been shown yet. */
  opensFirst: boolean
}

interface Ui {
  app: App
  services: Services
  panels: StoreApi<PanelState>
  shown: StoreApi<ShownResults>
}

const UiContext = createContext<Ui | null>(null)

export const UiProvider = ({ app, services, children }: { app: App; services: Services; children: ReactNode }): ReactNode => {
  const ui = useMemo<Ui>(() => ({
    app, services, shown: shownResultsOf(app),
    panels: createStore<PanelState>()(() => ({ question: null, whyCheckId: null, openNoteKey: null, metOpen: false, confirmOpen: false, allNotesOf: [], opensFirst: false })),
  }), [app, services])
  return <UiContext value={ui}>{children}</UiContext>
}

export const useUi = (): Ui => {
  const ui = useContext(UiContext)
  if (ui === null) throw new Error('a part of the screen was drawn outside UiProvider')
  return ui
}

export const useView = <T,>(select: (view: ViewState) => T): T => useStore(useUi().app.view, select)
export const useDocuments = <T,>(select: (state: DocumentState) => T): T => useStore(useUi().app.documents, select)
export const useSite = <T,>(select: (state: SiteState) => T): T => useStore(useUi().app.site, select)
export const useResults = <T,>(select: (state: ResultsState) => T): T => useStore(useUi().app.results, select)
export const usePanels = <T,>(select: (state: PanelState) => T): T => useStore(useUi().panels, select)
export const useShownDocument = (): YardDocument => useDocuments(shownDocument)

/** True while what the checks say belongs to an older document than the one on screen, and a moment longer. */
export const useIsStale = (): boolean => useStore(useUi().shown, (state) => state.isStale)

/** The run of the checks as the screen shows it, lagging behind a drag, with whether it is old. */
export const useLaggingRun = (): { run: CheckRun | null; isStale: boolean } => {
  const run = useStore(useUi().shown, (state) => state.run)
  const shown = useDeferredValue(run)
  const isStale = useIsStale()
  return { run: shown, isStale: isStale || shown !== run }
}

/** Words and figures in the reader's language and units. */
export interface Words {
  language: ViewState['language']
  system: UnitSystem
  options: TextOptions
  /** System a kind of quantity is written and read in: the layout's, or its override. */
  systemOf: (kind: QuantityKind) => UnitSystem
  say: (key: UiKey, values?: UiValues) => string
  local: (text: Localized, values?: UiValues) => string
  figure: (quantity: Quantity, over?: Partial<FormatOptions>) => string
  /** The same in the other system, for the second reading. */
  otherFigure: (quantity: Quantity) => string
  running: (runningM: number | null) => string
  offset: (offsetM: number | null) => string
}

export const wordsFor = (language: ViewState['language'], system: UnitSystem, pseudo: boolean, overrides: Readonly<Record<string, UnitSystem>> = {}): Words => {
  const options: TextOptions = { language, system, pseudo }
  // A change of temperature is read in the scale of temperatures.
  const systemOf = (kind: QuantityKind): UnitSystem => overrides[kind === 'temperatureChange' ? 'temperature' : kind] ?? system
  const systemFor = (quantity: Quantity): UnitSystem => systemOf(quantity.kind)
  return {
    language, system, options, systemOf,
    say: (key, values) => uiText(key, options, values),
    local: (text, values) => localText(text, options, values),
    figure: (quantity, over) => formatQuantity(quantity, { ...options, system: systemFor(quantity), ...over }),
    otherFigure: (quantity) => formatQuantity(quantity, { ...options, system: systemFor(quantity) === 'metric' ? 'feetInches' : 'metric' }),
    running: (runningM) => formatRunning(runningM, options),
    offset: (offsetM) => formatOffset(offsetM, options),
  }
}

const WordsContext = createContext<Words | null>(null)

/** Other units than the open layout's, for a form that makes a new one. */
export const WordsProvider = ({ words, children }: { words: Words; children: ReactNode }): ReactNode => <WordsContext value={words}>{children}</WordsContext>

export const useWords = (): Words => {
  const given = useContext(WordsContext)
  const language = useView((view) => view.language)
  const pseudo = useView((view) => view.pseudoLanguage)
  const system = useDocuments((state) => layoutOf(state.document).displayUnits)
  const overrides = useDocuments((state) => layoutOf(state.document).unitOverrides)
  const own = useMemo(() => wordsFor(language, system, pseudo, overrides), [language, system, pseudo, overrides])
  return given ?? own
}

/** Puts a question in a dialog and waits for the answer. */
export const useAsk = (): ((question: Omit<Question, 'answer'>) => Promise<boolean>) => {
  const { panels } = useUi()
  return useMemo(() => (question) => new Promise((resolve) => {
    panels.setState({ question: { ...question, answer: (yes) => { panels.setState({ question: null }); resolve(yes) } } })
  }), [panels])
}

/** Says what came of a service in the notice line; nothing for a plain success. */
export const useTell = (): ((outcome: { ok: true; said?: Localized } | { ok: false; reason: Localized }) => boolean) => {
  const { app } = useUi()
  const words = useWords()
  return (outcome) => {
    const text = outcome.ok ? outcome.said : outcome.reason
    if (text !== undefined) app.view.setState({ notice: { text: words.local(text), undo: false, atRevision: app.documents.getState().revision } })
    return outcome.ok
  }
}
