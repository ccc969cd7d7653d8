import { describe, expect, it } from 'vitest'
import { runThroughOf } from '../../src/derive/stages/runThrough.ts'
import type { RunThrough } from '../../src/derive/stages/types.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { applyDiff } from '../../src/scene/edit.ts'
import { createRunThroughClient, type ToRunThrough } from '../../src/state/runThroughClient.ts'
import { createRunThroughStore } from '../../src/state/runThroughStore.ts'
import { fusionYard } from '../helpers/fusionYard.ts'

const yardOf = (neededFt: number) => fusionYard({ neededFt })
const runOf = (neededFt: number): RunThrough => runThroughOf(deriveSite(yardOf(neededFt)))

const setup = () => {
  const sent: ToRunThrough[] = []
  let stops = 0
  const store = createRunThroughStore()
  const client = createRunThroughClient({ post: (message) => sent.push(message), stop: () => stops++ }, store)
  return { sent, store, client, stops: () => stops, at: () => store.getState() }
}

describe('run-through client', () => {
  it('is idle until somebody asks', () => {
    const { sent, at } = setup()
    expect(sent).toEqual([])
    expect(at()).toMatchObject({ status: 'idle', stamp: null, run: null })
  })

  it('takes stages as they come, under the stamp of the document they belong to', () => {
    const { client, at } = setup()
    const run = runOf(75)
    client.request('1.0', yardOf(75), 2)
    client.receive({ type: 'partial', requestId: 1, stamp: '1.0', stages: [run.stages[2]!], count: run.stages.length })
    client.receive({ type: 'progress', requestId: 1, stamp: '1.0', share: 0.125 })
    expect(at()).toMatchObject({ stamp: '1.0', status: 'working', share: 0.125, run: null })
    expect(at().stages.map((stage) => stage?.stage.id ?? '')).toEqual(['', '', 'load:1', '', '', '', '', ''])
    client.receive({ type: 'done', requestId: 1, stamp: '1.0', run })
    expect(at()).toMatchObject({ status: 'settled', share: 1, run })
    expect(at().stages).toEqual(run.stages)
  })

  it('cancels what runs for a newer document, and the late answer to the old one changes nothing', () => {
    const { sent, client, at } = setup()
    client.request('1.0', yardOf(75))
    client.request('2.0', yardOf(110))
    expect(sent.map(({ type, requestId }) => [type, requestId])).toEqual([['run', 1], ['cancel', 1], ['runDiff', 2]])
    client.receive({ type: 'done', requestId: 1, stamp: '1.0', run: runOf(75) })
    client.receive({ type: 'cancelled', requestId: 1, stamp: '1.0' })
    expect(at()).toMatchObject({ stamp: null, status: 'working' })
    client.receive({ type: 'done', requestId: 2, stamp: '2.0', run: runOf(110) })
    expect(at()).toMatchObject({ stamp: '2.0', status: 'settled' })
  })

  it('sends differences that rebuild the document on the other side', () => {
    const { sent, client } = setup()
    client.request('1.0', yardOf(75))
    client.request('2.0', yardOf(110))
    const [first, , second] = sent
    if (first?.type !== 'run' || second?.type !== 'runDiff') throw new Error('expected a document, then a difference')
    expect(applyDiff(first.document, second.diff)).toEqual(yardOf(110))
  })

  it('never shows stages of two documents beside each other', () => {
    const { client, at } = setup()
    const [old, next] = [runOf(75), runOf(110)]
    client.request('1.0', yardOf(75))
    client.receive({ type: 'done', requestId: 1, stamp: '1.0', run: old })
    client.request('2.0', yardOf(110))
    expect(at()).toMatchObject({ stamp: '1.0', status: 'working', run: old })
    client.receive({ type: 'partial', requestId: 2, stamp: '2.0', stages: [next.stages[0]!], count: next.stages.length })
    expect(at()).toMatchObject({ stamp: '2.0', run: null })
    expect(at().stages.filter((stage) => stage !== undefined)).toEqual([next.stages[0]])
  })

  it('asks once for what is there or under way', () => {
    const { sent, client } = setup()
    client.request('1.0', yardOf(75))
    client.request('1.0', yardOf(75))
    client.receive({ type: 'done', requestId: 1, stamp: '1.0', run: runOf(75) })
    client.request('1.0', yardOf(75))
    expect(sent).toHaveLength(1)
  })

  it('gives up what runs when nobody looks any more', () => {
    const { sent, client, at } = setup()
    client.request('1.0', yardOf(75))
    client.cancel()
    expect(sent.at(-1)).toEqual({ type: 'cancel', requestId: 1 })
    expect(at().status).toBe('idle')
    client.request('1.0', yardOf(75))
    expect(sent.at(-1)).toMatchObject({ type: 'runDiff', requestId: 2 })
  })

  it('says why it failed, and starts again with the whole document after the worker has died, three times', () => {
    const { sent, client, at, stops } = setup()
    client.request('1.0', yardOf(75))
    client.receive({ type: 'failed', requestId: 1, stamp: '1.0', message: 'no' })
    expect(at()).toMatchObject({ status: 'failed', failure: 'no' })
    client.request('2.0', yardOf(110))
    for (let death = 0; death < 5; death += 1) client.crashed('gone')
    expect(stops()).toBe(5)
    expect(sent.filter(({ type }) => type === 'run')).toHaveLength(1 + 3)
    expect(at()).toMatchObject({ status: 'failed', failure: 'gone' })
  })
})
