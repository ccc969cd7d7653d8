import { lazy, StrictMode, Suspense, type ReactNode } from 'react'
import { createRoot } from 'react-dom/client'
import { profileAt } from '../derive/profile.ts'
import { deriveSite } from '../derive/site.ts'
import { commandOf } from '../scene/commands/index.ts'
import { emptyDocument } from '../scene/newYard.ts'
import { createApp, type App } from '../state/app.ts'
import { createCheckClient, type CheckClient } from '../state/checkClient.ts'
import { createDocumentStore } from '../state/documentStore.ts'
import { createResultsStore } from '../state/resultsStore.ts'
import { createViewStore, viewPersistence, type ViewState } from '../state/viewStore.ts'
import { guessedLanguage, guessedSystem } from '../ui/start/guess.ts'
import { Shell } from '../ui/shell/Shell.tsx'
import { openCheckPort } from './checkPort.ts'
import { browserEnv } from './env.ts'
import './fonts.css'
import { makeServices } from './services/index.ts'
import type { Keeper } from './services/keeper.ts'
import { openKeeper } from './storage/index.ts'
import { makeTestHook, type TestHook } from './testHook.ts'

declare global {
  interface Window {
    stringyard: TestHook
  }
}

const bands = import('./bands.tsx')
const PlanBand = lazy(() => bands.then((part) => ({ default: part.PlanBand })))
const TapeBand = lazy(() => bands.then((part) => ({ default: part.TapeBand })))
const SectionBand = lazy(() => bands.then((part) => ({ default: part.SectionBand })))

const compose = (settings: Partial<ViewState>): { app: App; own: CheckClient['own'] } => {
  const documents = createDocumentStore(emptyDocument(browserEnv, guessedSystem(navigator.languages)))
  const view = createViewStore({ language: guessedLanguage(navigator.languages), ...settings, pseudoLanguage: new URLSearchParams(location.search).has('pseudo') })
  const results = createResultsStore()
  let client: CheckClient
  const port = openCheckPort(() => client)
  client = createCheckClient(port, results)
  const app = createApp({ documents, view, results, env: browserEnv, derive: deriveSite, profile: profileAt, commands: commandOf, check: (stamp, document, shownCase) => client.request(stamp, document, shownCase), ask: (question, shownCase) => client.ask(question, shownCase) })
  return { app, own: (items) => client.own(items) }
}

const keepSettings = (app: App, keeper: Keeper): void => {
  let timer: ReturnType<typeof setTimeout> | undefined
  app.view.subscribe((state, before) => {
    const keys = Object.keys(viewPersistence) as (keyof ViewState)[]
    if (!keys.some((key) => viewPersistence[key] && state[key] !== before[key])) return
    clearTimeout(timer)
    timer = setTimeout(() => void keeper.putSettings(state).catch(() => undefined), 300)
  })
}

const Bands = ({ app, services }: { app: App; services: ReturnType<typeof makeServices> }): ReactNode => (
  <Shell
    app={app}
    services={services}
    plan={(size) => <Suspense><PlanBand app={app} {...size} /></Suspense>}
    tape={(size) => <Suspense><TapeBand app={app} {...size} /></Suspense>}
    section={(size) => <Suspense><SectionBand app={app} {...size} /></Suspense>}
  />
)

const start = async (): Promise<void> => {
  // Fetched while storage is being opened, not after it.
  const lettering = document.fonts.load('16px Stringyard').catch(() => undefined)
  const keeper = await openKeeper()
  const { app, own } = compose(await keeper.settings().catch(() => ({})))
  const services = makeServices(app, keeper, own)
  // What was open when the page was closed or killed is open again, with its undo history.
  await services.reopenLast().catch(() => undefined)
  // Canvas text is drawn once: with the lettering of the app, not a stand-in.
  await lettering
  keepSettings(app, keeper)
  window.stringyard = makeTestHook(app)
  const root = document.getElementById('root')!
  void services.lookAtAddress()
  createRoot(root).render(<StrictMode><Bands app={app} services={services} /></StrictMode>)
  if (import.meta.env.PROD) void services.watchForUpdates()
}

void start()
