import { profileAt } from '../../src/derive/profile.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { commandOf } from '../../src/scene/commands/index.ts'
import type { YardDocument } from '../../src/scene/document.ts'
import { createApp, type App } from '../../src/state/app.ts'
import { createDocumentStore } from '../../src/state/documentStore.ts'
import { createResultsStore } from '../../src/state/resultsStore.ts'
import { createViewStore, type ViewState } from '../../src/state/viewStore.ts'
import { testEnv } from '../helpers/documents.ts'

/** The app without a screen and without checks. */
export const appOf = (document: YardDocument, view: Partial<ViewState> = {}): App =>
  createApp({ documents: createDocumentStore(document), view: createViewStore(view), results: createResultsStore(), env: testEnv(), derive: deriveSite, profile: profileAt, commands: commandOf, check: () => undefined })
