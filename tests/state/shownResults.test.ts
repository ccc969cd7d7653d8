import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { createStore } from 'zustand/vanilla'
import type { App } from '../../src/state/app.ts'
import type { CheckRun } from '../../src/checks/finding.ts'
import { createShownResults } from '../../src/state/shownResults.ts'

beforeEach(() => { vi.useFakeTimers() })
afterEach(() => { vi.useRealTimers() })

const runs = new Map<string, CheckRun>()
/** A run is told from another by being another object; nothing here looks inside. */
const runNamed = (name: string): CheckRun => {
  const run = runs.get(name) ?? ({ findings: [], counts: {} } as unknown as CheckRun)
  runs.set(name, run)
  return run
}

const stores = () => {
  const site = createStore<{ stamp: string }>()(() => ({ stamp: '1.0' }))
  const results = createStore<{ stamp: string | null; run: CheckRun | null }>()(() => ({ stamp: '1.0', run: runNamed('first') }))
  const { store, connect } = createShownResults({ site, results } as unknown as Pick<App, 'site' | 'results'>)
  return { site, results, isStale: () => store.getState().isStale, shown: () => store.getState(), connect }
}

it('results of another layout than the one shown are old at once', () => {
  const { site, isStale, connect } = stores()
  connect()
  expect(isStale()).toBe(false)
  site.setState({ stamp: '2.0' })
  expect(isStale()).toBe(true)
})

it('they are current again only after the stamps have agreed for a moment, so a drag does not flicker', () => {
  const { site, results, isStale, connect } = stores()
  connect()
  for (let frame = 1; frame <= 10; frame += 1) {
    site.setState({ stamp: `1.${frame}` })
    results.setState({ stamp: `1.${frame}` })
    vi.advanceTimersByTime(16)
    expect(isStale()).toBe(true)
  }
  vi.advanceTimersByTime(60)
  expect(isStale()).toBe(false)
})

it('an answer for an older layout never makes it current', () => {
  const { site, results, isStale, connect } = stores()
  connect()
  site.setState({ stamp: '3.0' })
  results.setState({ stamp: '2.0' })
  vi.advanceTimersByTime(1000)
  expect(isStale()).toBe(true)
})

it('nothing is heard after letting go', () => {
  const { site, isStale, connect } = stores()
  connect()()
  site.setState({ stamp: '9.0' })
  expect(isStale()).toBe(false)
})

it('old findings follow a drag at most every 150 ms, grey all the while, and the current ones come with the end of it', () => {
  const { site, results, shown, connect } = stores()
  connect()
  let changes = 0
  let last = shown().run
  for (let frame = 1; frame <= 30; frame += 1) {
    site.setState({ stamp: `1.${frame}` })
    // The worker is always one frame behind.
    results.setState({ stamp: `1.${frame - 1}`, run: runNamed(`frame ${frame - 1}`) })
    vi.advanceTimersByTime(16)
    expect(shown().isStale).toBe(true)
    if (shown().run !== last) changes += 1
    last = shown().run
  }
  // 30 frames of 16 ms = 480 ms: three times 150 ms.
  expect(changes).toBe(3)
  results.setState({ stamp: '1.30', run: runNamed('frame 30') })
  expect(shown().run).not.toBe(runNamed('frame 30'))
  vi.advanceTimersByTime(50)
  expect(shown()).toEqual({ isStale: false, run: runNamed('frame 30') })
  expect(shown().run).toBe(runNamed('frame 30'))
})

it('the first findings are shown without waiting, and so is that they could not be worked out', () => {
  const { site, results, shown, connect } = stores()
  results.setState({ stamp: null, run: null })
  connect()
  site.setState({ stamp: '2.0' })
  expect(shown().run).toBe(null)
  results.setState({ stamp: '1.0', run: runNamed('first') })
  expect(shown()).toEqual({ isStale: true, run: runNamed('first') })
  results.setState({ stamp: '2.0', run: null })
  expect(shown().run).toBe(null)
})
