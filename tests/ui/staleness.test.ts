import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { createStore } from 'zustand/vanilla'
import type { App } from '../../src/state/app.ts'
import { createStaleness } from '../../src/ui/staleness.ts'

beforeEach(() => { vi.useFakeTimers() })
afterEach(() => { vi.useRealTimers() })

const stores = () => {
  const site = createStore<{ stamp: string }>()(() => ({ stamp: '1.0' }))
  const results = createStore<{ stamp: string | null }>()(() => ({ stamp: '1.0' }))
  const { store, connect } = createStaleness({ site, results } as unknown as Pick<App, 'site' | 'results'>)
  return { site, results, isStale: () => store.getState().isStale, connect }
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
