import { createStore } from 'zustand/vanilla'
import { runAction } from '../../canvas/actions.ts'
import { keyRows } from '../../canvas/keys.ts'
import { emptyDocument } from '../../scene/newYard.ts'
import { layoutOf } from '../../scene/document.ts'
import type { GearItem } from '../../scene/gear.ts'
import type { App } from '../../state/app.ts'
import { initialView } from '../../state/viewStore.ts'
import type { GearState, Services } from '../../ui/services.ts'
import { aboutInfo } from './about.ts'
import { browserBattery, watchBattery } from './battery.ts'
import { compareWith } from './compare.ts'
import { examples } from './examples.ts'
import { makeFiles } from './files.ts'
import { pipeFacts } from './facts.ts'
import { saveImage } from './image.ts'
import { saveSheet } from './sheet.ts'
import { createProposalDesk } from '../../state/proposalDesk.ts'
import { searchInWorker } from './proposals.ts'
import type { Keeper } from './keeper.ts'
import { makeLinks } from './links.ts'
import { releasePlan } from './release.ts'
import { whyPage } from './pages.ts'
import { runThroughOnce } from './runThrough.ts'
import { browserUpdateHost, makeUpdates } from './update.ts'
import { browserVoice, makeVoice } from './voice.ts'
import { browserWakeLock, makeKeepAwake } from './wakeLock.ts'
import { makeYards } from './yards.ts'

/** How long a write under way is waited for. */
const SAVE_WAIT_MS = 3000

/** Waits for a write under way; false where the open layout could not be written. */
const isAllSaved = (keeper: Keeper): Promise<boolean> => new Promise((resolve) => {
  const isDone = (): boolean => keeper.state.getState().saved !== 'saving'
  const answer = (): void => {
    stop()
    clearTimeout(timer)
    resolve(['saved', 'readOnly', 'blocked'].includes(keeper.state.getState().saved))
  }
  const stop = keeper.state.subscribe(() => { if (isDone()) answer() })
  const timer = setTimeout(answer, SAVE_WAIT_MS)
  if (isDone()) answer()
})

/** Everything the screen asks of the program around it. `own` hears what the crew owns, on opening and whenever it changes. */
export const makeServices = (app: App, keeper: Keeper, own: (items: readonly GearItem[]) => void): Services & { reopenLast: () => Promise<void>; lookAtAddress: () => Promise<void>; watchForUpdates: () => Promise<void> } => {
  const gear = createStore<GearState>()(() => ({ items: [] }))
  gear.subscribe(({ items }) => own(items))
  void keeper.gear().then((items) => gear.setState({ items }))
  const yards = makeYards(app, keeper)
  const files = makeFiles(app, keeper, gear)
  const links = makeLinks(app, keeper, yards)
  const updates = makeUpdates(browserUpdateHost())
  watchBattery(browserBattery(), keeper.state)
  const openId = (): string => layoutOf(app.documents.getState().document).layoutId
  return {
    newYard: yards.newYard, openExample: yards.openExample, resetExample: yards.resetExample, openFile: yards.openFile, openLayout: yards.openLayout, openPoint: yards.openPoint, pointDocument: (pointId) => keeper.loadPoint(pointId).catch(() => null),
    examples,
    saveFile: files.saveFile, shareFile: files.shareFile, saveEverything: files.saveEverything, exportGear: files.exportGear, importGear: files.importGear,
    clearDevice: async () => {
      await keeper.clear()
      gear.setState({ items: [] })
      app.documents.getState().load(emptyDocument(app.env, layoutOf(app.documents.getState().document).displayUnits))
      app.view.setState({ ...initialView, form: app.view.getState().form, tapeVertical: app.view.getState().tapeVertical, bandSizePx: app.view.getState().bandSizePx })
      return { ok: true, said: { en: 'Nothing of this app is left on this device.', es: 'No queda nada de esta aplicación en este equipo.' } }
    },
    saveImage: (scale) => saveImage(app, scale),
    saveSheet: (wish, hooks) => saveSheet(app, keeper, wish, hooks),
    release: (what) => releasePlan(app, keeper, what),
    makeLink: links.makeLink, shareLink: links.shareLink, copyLink: links.copyLink,
    incoming: links.incoming, openIncoming: links.openIncoming, compareIncoming: links.compareIncoming, forgetIncoming: links.forgetIncoming,
    compareWith: (what) => compareWith(app, keeper, what),
    lookAtAddress: links.lookAtAddress,
    runThrough: runThroughOnce(app),
    layouts: async () => {
      const isShown = app.view.getState().screen === 'yard'
      return (await keeper.layouts()).map((entry) => ({ ...entry, isOpen: isShown && entry.layoutId === openId() }))
    },
    renameLayout: async (layoutId, title) => {
      if (layoutId === openId() && app.view.getState().screen === 'yard') app.command('setLayout', { path: 'title', value: title })
      else await keeper.rename(layoutId, title)
      return { ok: true }
    },
    removeLayout: async (layoutId) => {
      const wasOpen = layoutId === openId()
      await keeper.remove(layoutId)
      if (wasOpen) {
        await keeper.setLastOpen(null)
        app.view.setState({ screen: 'start', panel: null })
      }
      return { ok: true }
    },
    points: () => keeper.points(openId()),
    keepPoint: async (name) => {
      await keeper.keepPoint(openId(), name, app.documents.getState().document)
      return { ok: true }
    },
    keepAwake: makeKeepAwake(browserWakeLock()),
    voice: makeVoice(browserVoice()),
    gear,
    putGear: (item) => {
      const { items } = gear.getState()
      void files.putGearList(items.some(({ id }) => id === item.id) ? items.map((known) => (known.id === item.id ? item : known)) : [...items, item])
    },
    removeGear: (id) => void files.putGearList(gear.getState().items.filter((item) => item.id !== id)),
    newId: app.env.newId,
    proposals: createProposalDesk(app, searchInWorker(), () => gear.getState().items),
    whyPage,
    storage: keeper.state,
    update: updates.store,
    reload: async () => {
      if (!(await isAllSaved(keeper))) return { ok: false, reason: { en: 'The last change is not saved yet: save a copy first.', es: 'El último cambio aún no está guardado: guarde antes una copia.' } }
      updates.reload()
      return { ok: true }
    },
    watchForUpdates: updates.watch,
    takeOver: async () => ((await keeper.takeOver()) ? { ok: true } : { ok: false, reason: { en: 'The other window does not let go. Close it and try again.', es: 'La otra ventana no suelta el plano. Ciérrela e intente otra vez.' } }),
    about: aboutInfo,
    facts: pipeFacts,
    keyMap: () => keyRows(app.view.getState().language),
    act: (name) => runAction(app, name),
    reopenLast: async () => {
      const layoutId = await keeper.lastOpen()
      if (layoutId !== null) await yards.openLayout(layoutId)
    },
  }
}
