import { describe, expect, it } from 'vitest'
import { makeUpdates, type UpdateHost, type WorkerPort } from '../../src/app/services/update.ts'

/** A browser by hand: versions are found, installed and let in when the test says so. */
const browser = (over: { hasVersion?: boolean; waiting?: boolean } = {}) => {
  let [found, taken, visible]: [((worker: WorkerPort) => void) | null, (() => void) | null, (() => void) | null] = [null, null, null]
  const log: string[] = []
  let state = 'installing'
  let changed: (() => void) | null = null
  const worker: WorkerPort = { isInstalled: () => state === 'installed', onState: (change) => { changed = change }, takeOver: () => { log.push('take over') } }
  let waiting: WorkerPort | null = over.waiting === true ? worker : null
  const clock = { ms: 0 }
  const host: UpdateHost = {
    register: (onFound) => {
      found = onFound
      return Promise.resolve({ waiting: () => waiting, look: () => { log.push('look'); return Promise.reject(new Error('no signal')) } })
    },
    hasVersion: () => over.hasVersion ?? true, onTaken: (call) => { taken = call }, onVisible: (call) => { visible = call }, reload: () => { log.push('reload') }, nowMs: () => clock.ms,
  }
  const install = (): void => {
    found?.(worker)
    state = 'installed'
    waiting = worker
    changed?.()
  }
  return { host, log, clock, install, letIn: () => taken?.(), comesIntoSight: () => visible?.(), othersLetItIn: () => { waiting = null } }
}

describe('a new version', () => {
  it('waits and is told, and nothing is loaded until somebody asks', async () => {
    const { host, log, install, letIn } = browser()
    const { store, watch, reload } = makeUpdates(host)
    await watch()
    expect(store.getState().isReady).toBe(false)
    install()
    expect([store.getState().isReady, log]).toEqual([true, []])
    reload()
    expect(log).toEqual(['take over'])
    letIn()
    expect(log).toEqual(['take over', 'reload'])
  })
  it('that waited before this window was opened is told at once', async () => {
    const { host } = browser({ waiting: true })
    const { store, watch } = makeUpdates(host)
    await watch()
    expect(store.getState().isReady).toBe(true)
  })
  it('is none where it is the first one put in', async () => {
    const { host, install } = browser({ hasVersion: false })
    const { store, watch } = makeUpdates(host)
    await watch()
    install()
    expect(store.getState().isReady).toBe(false)
  })
  it('that another window let in is loaded without waiting for it', async () => {
    const { host, log, install, othersLetItIn } = browser()
    const { watch, reload } = makeUpdates(host)
    await watch()
    install()
    othersLetItIn()
    reload()
    expect(log).toEqual(['reload'])
  })
  it('is looked for when the window comes into sight, at most once an hour, and no signal is no fault', async () => {
    const { host, log, clock, comesIntoSight } = browser()
    await makeUpdates(host).watch()
    comesIntoSight()
    expect(log).toEqual([])
    clock.ms = 3_600_001
    comesIntoSight()
    comesIntoSight()
    expect(log).toEqual(['look'])
  })
  it('never comes where the browser has no worker or refuses it', async () => {
    const { host } = browser()
    const { store, watch } = makeUpdates({ ...host, register: () => Promise.reject(new Error('blocked')) })
    await watch()
    expect(store.getState().isReady).toBe(false)
  })
})
