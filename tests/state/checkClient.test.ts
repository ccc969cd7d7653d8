import { describe, expect, it } from 'vitest'
import type { CheckRun } from '../../src/checks/finding.ts'
import type { YardDocument } from '../../src/scene/document.ts'
import { applyDiff } from '../../src/scene/edit.ts'
import { createCheckClient, type ToWorker } from '../../src/state/checkClient.ts'
import { createResultsStore } from '../../src/state/resultsStore.ts'
import { gearItem } from '../helpers/gear.ts'

const run = (note: number): CheckRun => ({ findings: [], counts: { STOP: 0, FIX: 0, CHECK: 0, NOTE: note, met: 0, toConfirm: 0 } })
const documentOf = (title: string): YardDocument => ({ records: { 'note:a': { id: 'note:a', kind: 'note', text: title } as never } })

const setup = () => {
  const sent: ToWorker[] = []
  let restarts = 0
  const results = createResultsStore()
  const client = createCheckClient({ post: (message) => sent.push(message), restart: () => restarts++ }, results)
  return { sent, results, client, restarts: () => restarts }
}

describe('check client', () => {
  it('keeps one request waiting, the newest, and drops those between', () => {
    const { sent, client } = setup()
    client.request('1.0', documentOf('a'))
    client.request('2.0', documentOf('b'))
    client.request('3.0', documentOf('c'))
    expect(sent.map(({ stamp }) => stamp)).toEqual(['1.0'])
    client.receive({ type: 'done', requestId: 1, stamp: '1.0', run: run(1) })
    expect(sent.map(({ stamp }) => stamp)).toEqual(['1.0', '3.0'])
  })

  it('is not settled while a newer document waits, and an answer keeps the stamp it belongs to', () => {
    const { results, client } = setup()
    client.request('1.0', documentOf('a'))
    client.request('2.0', documentOf('b'))
    client.receive({ type: 'done', requestId: 1, stamp: '1.0', run: run(1) })
    expect(results.getState()).toMatchObject({ stamp: '1.0', status: 'working' })
    client.receive({ type: 'done', requestId: 2, stamp: '2.0', run: run(2) })
    expect(results.getState()).toMatchObject({ stamp: '2.0', status: 'settled' })
  })

  it('ignores an answer to a request it no longer waits for', () => {
    const { results, client } = setup()
    client.request('1.0', documentOf('a'))
    client.receive({ type: 'done', requestId: 1, stamp: '1.0', run: run(1) })
    client.receive({ type: 'done', requestId: 99, stamp: '0.0', run: run(9) })
    expect(results.getState()).toMatchObject({ stamp: '1.0', run: run(1) })
  })

  it('sends differences that rebuild the document on the other side', () => {
    const { sent, client } = setup()
    client.request('1.0', documentOf('a'))
    client.receive({ type: 'done', requestId: 1, stamp: '1.0', run: run(0) })
    client.request('2.0', documentOf('b'))
    const [first, second] = sent
    if (first?.type !== 'check' || second?.type !== 'checkDiff') throw new Error('expected a document, then a difference')
    expect(applyDiff(first.document, second.diff)).toEqual(documentOf('b'))
  })

  it('sends what the crew owns along, and checks the present document again when that changes', () => {
    const { sent, results, client } = setup()
    client.own([])
    client.own([gearItem()])
    expect(sent).toEqual([])
    client.request('1.0', documentOf('a'))
    client.receive({ type: 'done', requestId: 1, stamp: '1.0', run: run(1) })
    client.own([gearItem({ count: 1 })])
    // What was found with the other list no longer holds.
    expect(results.getState()).toMatchObject({ stamp: null, status: 'working' })
    expect(sent.map(({ stamp, owned }) => [stamp, owned?.[0]?.count ?? null])).toEqual([['1.0', 6], ['1.0', 1]])
    client.receive({ type: 'done', requestId: 2, stamp: '1.0', run: run(2) })
    expect(results.getState()).toMatchObject({ stamp: '1.0', status: 'settled', run: run(2) })
    client.own([])
    expect(sent.at(-1)?.owned).toBeNull()
  })

  it('never shows an answer found with another list as current', () => {
    const { sent, results, client } = setup()
    client.request('1.0', documentOf('a'))
    client.own([gearItem()])
    expect(sent).toHaveLength(1)
    client.receive({ type: 'done', requestId: 1, stamp: '1.0', run: run(1) })
    expect(results.getState()).toMatchObject({ stamp: null, status: 'working' })
    client.receive({ type: 'done', requestId: 2, stamp: '1.0', run: run(2) })
    expect(results.getState()).toMatchObject({ stamp: '1.0', status: 'settled' })
  })

  it('says failed when the worker dies, starts another with the whole document, and gives up after three deaths in a row', () => {
    const { sent, results, client, restarts } = setup()
    for (let i = 1; i <= 6; i++) {
      client.request(`${i}.0`, documentOf('a'))
      client.crashed('out of memory')
      expect(results.getState()).toMatchObject({ run: null, status: 'failed', failure: 'out of memory' })
    }
    expect(restarts()).toBe(3)
    expect(sent.every(({ type }) => type === 'check')).toBe(true)
  })

  it('sends the case along, and an answer keeps the stamp of the case it was asked for', () => {
    const { sent, results, client } = setup()
    const document = documentOf('a')
    client.request('1.0', document)
    client.request('1.0~warm', document, { variant: 'planned', whatIf: { warmerC: 11 } })
    client.receive({ type: 'done', requestId: 1, stamp: '1.0', run: run(1) })
    // What came first belongs to the plan; the screen shows the what-if.
    expect(results.getState()).toMatchObject({ stamp: '1.0', status: 'working' })
    expect(sent.map(({ shownCase }) => shownCase.whatIf)).toEqual([{}, { warmerC: 11 }])
    client.receive({ type: 'done', requestId: 2, stamp: '1.0~warm', run: run(2) })
    expect(results.getState()).toMatchObject({ stamp: '1.0~warm', status: 'settled', run: run(2) })
  })

  it('asks a question once no check waits, and the answer leaves the results alone', async () => {
    const { sent, results, client } = setup()
    client.request('1.0', documentOf('a'))
    const answer = client.ask({ name: 'findings', args: null })
    expect(sent.map(({ type }) => type)).toEqual(['check'])
    client.receive({ type: 'done', requestId: 1, stamp: '1.0', run: run(1) })
    expect(sent.map(({ type }) => type)).toEqual(['check', 'ask'])
    client.receive({ type: 'answer', requestId: 2, stamp: '1.0', answer: run(7) })
    expect(await answer).toEqual(run(7))
    expect(results.getState()).toMatchObject({ stamp: '1.0', run: run(1), status: 'settled' })
  })

  it('gives no answer where what is shown changed before it came, and lets the newer check go first', async () => {
    const { sent, results, client } = setup()
    client.request('1.0', documentOf('a'))
    client.receive({ type: 'done', requestId: 1, stamp: '1.0', run: run(1) })
    const running = client.ask({ name: 'findings', args: null })
    const waiting = client.ask({ name: 'findings', args: null })
    client.request('2.0', documentOf('b'))
    expect(await waiting).toBeNull()
    client.receive({ type: 'answer', requestId: 2, stamp: '1.0', answer: run(7) })
    expect(await running).toBeNull()
    expect(sent.map(({ type }) => type)).toEqual(['check', 'ask', 'checkDiff'])
    client.receive({ type: 'done', requestId: 3, stamp: '2.0', run: run(2) })
    expect(results.getState()).toMatchObject({ stamp: '2.0', status: 'settled' })
  })

  it('answers a question with nothing where the worker dies of it, and checks again', async () => {
    const { sent, client } = setup()
    client.request('1.0', documentOf('a'))
    client.receive({ type: 'done', requestId: 1, stamp: '1.0', run: run(1) })
    const asked = client.ask({ name: 'findings', args: null })
    client.crashed('out of memory')
    expect(await asked).toBeNull()
    expect(sent.at(-1)).toMatchObject({ type: 'check', stamp: '1.0' })
  })
})
