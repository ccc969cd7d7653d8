import { describe, expect, it } from 'vitest'
import { answerTo } from '../../src/app/answers.ts'
import type { CriticalRanking } from '../../src/derive/critical.ts'
import { thePlan } from '../../src/derive/whatIf.ts'
import { createCritical, isOldRanking, type Critical } from '../../src/state/critical.ts'
import { createPlannedLevels } from '../../src/state/plannedLevels.ts'
import { createResultsStore, type ResultsStore } from '../../src/state/resultsStore.ts'
import { runChecks } from '../../src/checks/runner.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { fusionYard, inch } from '../helpers/fusionYard.ts'

interface Asking {
  critical: Critical
  results: ResultsStore
  asked: { sinkM: number; answer: (ranking: CriticalRanking | null) => Promise<void> }[]
  show: (stamp: string) => void
  settle: () => void
}

const ranking = (sinkM: number): CriticalRanking => ({ sinkM, missing: [], base: 'met', supports: [], beyondCount: 0, reachM: 0 })

const asking = (): Asking => {
  let shown = '1.0'
  const results = createResultsStore()
  const asked: Asking['asked'] = []
  const ask = ((question: { args: { sinkM: number } }) => new Promise((resolve) => {
    asked.push({ sinkM: question.args.sinkM, answer: async (made) => { resolve(made); await Promise.resolve(); await Promise.resolve() } })
  })) as unknown as Parameters<typeof createCritical>[0]['ask']
  const critical = createCritical({ stamp: () => shown, results, ask })
  return {
    critical, results, asked,
    show: (stamp) => { shown = stamp; results.setState({ status: 'working' }) },
    settle: () => results.setState({ status: 'settled', stamp: shown }),
  }
}

describe('the ranking of the supports', () => {
  it('is asked for once wanted and settled, and once only', async () => {
    const { critical, asked, settle } = asking()
    settle()
    expect(asked).toHaveLength(0)
    critical.turn(true)
    settle()
    expect(asked.map(({ sinkM }) => sinkM)).toEqual([inch(0.5)])
    await asked[0]!.answer(ranking(inch(0.5)))
    settle()
    expect(asked).toHaveLength(1)
    expect(isOldRanking(critical.store.getState(), '1.0')).toBe(false)
  })
  it('is old from the edit on until the new answer is there, and never takes an answer to the old layout', async () => {
    const { critical, asked, show, settle } = asking()
    settle()
    critical.turn(true)
    await asked[0]!.answer(ranking(inch(0.5)))
    show('2.0')
    expect(isOldRanking(critical.store.getState(), '2.0')).toBe(true)
    settle()
    expect(asked).toHaveLength(2)
    show('3.0')
    await asked[1]!.answer(ranking(inch(0.5)))
    expect(critical.store.getState().stamp).toBe('1.0')
    settle()
    await asked[2]!.answer(ranking(inch(0.5)))
    expect(critical.store.getState().stamp).toBe('3.0')
  })
  it('is asked for again with another amount, and refuses none or less', async () => {
    const { critical, asked, settle } = asking()
    settle()
    critical.turn(true)
    await asked[0]!.answer(ranking(inch(0.5)))
    critical.sinkBy(0)
    critical.sinkBy(-1)
    expect(asked).toHaveLength(1)
    critical.sinkBy(inch(1))
    expect(asked.map(({ sinkM }) => sinkM)).toEqual([inch(0.5), inch(1)])
    expect(isOldRanking(critical.store.getState(), '1.0')).toBe(true)
  })
  it('a worker that gives no answer is told, not asked for ever', async () => {
    const { critical, asked, settle } = asking()
    settle()
    critical.turn(true)
    await asked[0]!.answer(null)
    expect(asked).toHaveLength(1)
    expect(critical.store.getState().hasFailed).toBe(true)
  })
  it('turned off forgets it', async () => {
    const { critical, asked, settle } = asking()
    settle()
    critical.turn(true)
    critical.turn(false)
    await asked[0]!.answer(ranking(inch(0.5)))
    expect(critical.store.getState()).toMatchObject({ isOn: false, ranking: null })
  })
  it('comes out of the worker with the supports of the case shown', () => {
    const document = fusionYard()
    const asPlanned = answerTo({ name: 'critical', args: { sinkM: inch(0.5) } }, { document, shownCase: thePlan, owned: null }) as CriticalRanking
    expect(asPlanned.supports.map(({ label }) => label).toSorted()).toEqual(['E1', 'E2', 'R1', 'R2'])
    const without = answerTo({ name: 'critical', args: { sinkM: inch(0.5) } }, { document, shownCase: { variant: 'planned', whatIf: { missing: ['stand:e2'] } }, owned: null }) as CriticalRanking
    expect(without.supports.map(({ label }) => label).toSorted()).toEqual(['E1', 'R1', 'R2'])
  })
})

describe('levels of the plan beside those as set', () => {
  it('are asked for in the as-set case only, and name what no longer holds', async () => {
    const document = fusionYard({ exits: [[12, 6], [35, 6]] })
    const planned = runChecks(deriveSite(document))
    const results = createResultsStore()
    let shownCase = thePlan
    const asked: unknown[] = []
    const store = createPlannedLevels({ stamp: () => `1.0~${shownCase.variant}`, shownCase: () => shownCase, results, ask: ((question: unknown, about: unknown) => { asked.push([question, about]); return Promise.resolve(planned) }) as never })
    results.setState({ status: 'settled', stamp: '1.0~planned', run: planned })
    expect(asked).toEqual([])
    shownCase = { variant: 'asSet', whatIf: {} }
    // As set nothing is wrong.
    results.setState({ status: 'settled', stamp: '1.0~asSet', run: { ...planned, findings: [] } })
    await Promise.resolve()
    await Promise.resolve()
    expect(asked).toEqual([[{ name: 'findings', args: null }, { variant: 'planned', whatIf: {} }]])
    const { levels, gone, stamp } = store.getState()
    expect(stamp).toBe('1.0~asSet')
    expect(levels.size).toBeGreaterThan(10)
    expect(gone.map(({ level }) => level)).toContain('FIX')
    expect(gone.every(({ level, isUnknown }) => level !== 'met' && !isUnknown)).toBe(true)
    shownCase = thePlan
    results.setState({ stamp: '1.0~planned' })
    expect(store.getState().stamp).toBeNull()
  })
})
