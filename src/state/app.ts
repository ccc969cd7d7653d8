import { createStore, type StoreApi } from 'zustand/vanilla'
import type { SectionProfile, SiteModel, Stage } from '../derive/types.ts'
import { caseMark, type DeriveOptions, type ShownCase } from '../derive/whatIf.ts'
import type { Edit, Env, StepLabel } from '../scene/edit.ts'
import type { YardDocument } from '../scene/document.ts'
import type { CheckClient } from './checkClient.ts'
import { createCritical, type Critical } from './critical.ts'
import { shownDocument, stampOf, type DocumentStore } from './documentStore.ts'
import { createPlannedLevels, type PlannedLevelsStore } from './plannedLevels.ts'
import type { ResultsStore } from './resultsStore.ts'
import { stageOf, type ViewStore } from './viewStore.ts'

/** Geometry and the bent pipe of what is shown, rebuilt in the same frame as the document or its preview changes. */
export interface SiteState {
  /** Names document, preview and case shown; results with another stamp are old. */
  stamp: string
  site: SiteModel
  profile: SectionProfile
}
export type SiteStore = StoreApi<SiteState>

/** What the screen is made of; canvas and ui take it as one prop. */
export interface App {
  documents: DocumentStore
  view: ViewStore
  results: ResultsStore
  site: SiteStore
  env: Env
  /** Runs a named command of the registry as one undoable step. False where nothing changed or the command refused. */
  command: (name: string, args: unknown, label?: StepLabel, mergeKey?: string) => boolean
  /** The edit a command would make, for a preview while a gesture runs. */
  edit: (name: string, args: unknown) => Edit
  /** Asks the worker something beside the checks (state/questions.ts). Null where nobody answers, or what is shown changed meanwhile. */
  ask: CheckClient['ask']
  /** Each support missing or sunk in turn, kept up while it is wanted. */
  critical: Critical
  /** What the plan says, while heights as set are shown. */
  planned: PlannedLevelsStore
}

export interface AppParts {
  documents: DocumentStore
  view: ViewStore
  results: ResultsStore
  env: Env
  derive: (document: YardDocument, options: DeriveOptions) => SiteModel
  profile: (site: SiteModel, stage: Stage) => SectionProfile
  /** Name → pure command and the label it gives. */
  commands: (name: string) => { run: (document: YardDocument, args: unknown, env: Env) => Edit; label: (document: YardDocument, args: unknown) => StepLabel } | undefined
  /** Starts the checks for what is shown; answers arrive in the results store with their stamp. */
  check: (stamp: string, document: YardDocument, shownCase: ShownCase) => void
  /** Left out: nobody answers. */
  ask?: CheckClient['ask']
}

/** Wires the stores: one way in (commands), one way out (document → site → results). */
export const createApp = (parts: AppParts): App => {
  const { documents, view, results, env } = parts
  const stampNow = (): string => stampOf(documents.getState()) + caseMark(view.getState().shownCase)
  const build = (): SiteState => {
    const state = documents.getState()
    const site = parts.derive(shownDocument(state), view.getState().shownCase)
    return { stamp: stampNow(), site, profile: parts.profile(site, stageOf(view.getState())) }
  }
  const ask = (): void => parts.check(stampNow(), shownDocument(documents.getState()), view.getState().shownCase)
  const site = createStore<SiteState>()(() => build())
  documents.subscribe((state, before) => {
    if (shownDocument(state) === shownDocument(before)) {
      // A preview that becomes the document is the same document under another name: results must carry the new one.
      if (stampOf(state) === stampOf(before)) return
      site.setState({ stamp: stampNow() })
      ask()
      return
    }
    site.setState(build())
    ask()
  })
  view.subscribe((state, before) => {
    if (state.shownCase !== before.shownCase && caseMark(state.shownCase) !== caseMark(before.shownCase)) {
      site.setState(build())
      ask()
      return
    }
    if (state.phase === before.phase && state.joint === before.joint && state.noseM === before.noseM) return
    const current = site.getState()
    site.setState({ profile: parts.profile(current.site, stageOf(state)) })
  })
  // Selection never names what is gone; undo moves neither camera nor anything else of the view.
  documents.subscribe((state) => {
    const { selection } = view.getState()
    const kept = selection.filter((id) => state.document.records[id] !== undefined)
    if (kept.length !== selection.length) view.setState({ selection: kept })
  })
  const edit = (name: string, args: unknown): Edit => {
    const command = parts.commands(name)
    if (command === undefined) throw new Error(`no command is called ${name}`)
    return command.run(documents.getState().document, args, env)
  }
  ask()
  const question: CheckClient['ask'] = parts.ask ?? (() => Promise.resolve(null))
  const stamp = (): string => site.getState().stamp
  return {
    critical: createCritical({ stamp, results, ask: question }),
    planned: createPlannedLevels({ stamp, shownCase: () => view.getState().shownCase, results, ask: question }),
    documents, view, results, site, env, edit,
    ask: question,
    command: (name, args, label, mergeKey) => {
      const command = parts.commands(name)
      if (command === undefined) throw new Error(`no command is called ${name}`)
      const { document } = documents.getState()
      return documents.getState().commit(label ?? command.label(document, args), command.run(document, args, env), mergeKey)
    },
  }
}
