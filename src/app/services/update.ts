import { createStore, type StoreApi } from 'zustand/vanilla'
import type { UpdateState } from '../../ui/services.ts'

/** A new version fetched by the browser: one that is being put in, or waits. */
export interface WorkerPort {
  isInstalled: () => boolean
  /** Calls back whenever its state changes. */
  onState: (change: () => void) => void
  takeOver: () => void
}

/** The part of the browser that new versions come through; tests hand in their own. */
export interface UpdateHost {
  /** Registers the app's worker; null where there is none. `onFound` hears of every version on its way. */
  register: (onFound: (worker: WorkerPort) => void) => Promise<{ waiting: () => WorkerPort | null; look: () => Promise<unknown> } | null>
  /** False before the first version has been put in: that one is no new version. */
  hasVersion: () => boolean
  /** Calls back once the new version answers for this window. */
  onTaken: (taken: () => void) => void
  onVisible: (visible: () => void) => void
  reload: () => void
  nowMs: () => number
}

/** A window that stays open all day looks this often, when it comes into sight. */
const LOOK_EVERY_MS = 60 * 60 * 1000

/**
 * New versions wait until somebody asks. The worker of the new version stands by beside the old one, whose files stay; an
 * open window goes on with what it was loaded with, and is told. `reload` lets the new version in and loads this window
 * anew; other windows keep the version they have until they are reloaded themselves.
 */
export const makeUpdates = (host: UpdateHost): { store: StoreApi<UpdateState>; watch: () => Promise<void>; reload: () => void } => {
  const store = createStore<UpdateState>()(() => ({ isReady: false }))
  let waiting: () => WorkerPort | null = () => null
  const tell = (): void => {
    if (host.hasVersion() && waiting() !== null && !store.getState().isReady) store.setState({ isReady: true })
  }
  const watch = async (): Promise<void> => {
    const registration = await host.register((worker) => worker.onState(() => { if (worker.isInstalled()) tell() })).catch(() => null)
    if (registration === null) return
    waiting = registration.waiting
    tell()
    let lookedMs = host.nowMs()
    host.onVisible(() => {
      if (host.nowMs() - lookedMs < LOOK_EVERY_MS) return
      lookedMs = host.nowMs()
      // Without signal there is nothing to find; the next time it is tried again.
      void registration.look().catch(() => undefined)
    })
  }
  const reload = (): void => {
    const worker = waiting()
    // Another window has let it in already.
    if (worker === null) return host.reload()
    host.onTaken(host.reload)
    worker.takeOver()
  }
  return { store, watch, reload }
}

const portOf = (worker: ServiceWorker): WorkerPort => ({
  isInstalled: () => worker.state === 'installed',
  onState: (change) => worker.addEventListener('statechange', change),
  takeOver: () => worker.postMessage('take over'),
})

export const browserUpdateHost = (): UpdateHost => ({
  register: async (onFound) => {
    if (!('serviceWorker' in navigator)) return null
    const registration = await navigator.serviceWorker.register('./sw.js')
    registration.addEventListener('updatefound', () => { if (registration.installing !== null) onFound(portOf(registration.installing)) })
    // One that was on its way before anybody listened.
    if (registration.installing !== null) onFound(portOf(registration.installing))
    return { waiting: () => (registration.waiting === null ? null : portOf(registration.waiting)), look: () => registration.update() }
  },
  hasVersion: () => navigator.serviceWorker.controller !== null,
  onTaken: (taken) => navigator.serviceWorker.addEventListener('controllerchange', taken, { once: true }),
  onVisible: (visible) => document.addEventListener('visibilitychange', () => { if (document.visibilityState === 'visible') visible() }),
  reload: () => location.reload(),
  nowMs: () => performance.now(),
})
