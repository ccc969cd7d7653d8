import { describe, expect, it } from 'vitest'
import { createRehearsal } from '../../src/app/rehearsal.ts'
import { runThroughOf } from '../../src/derive/stages/runThrough.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { diffDocuments } from '../../src/scene/edit.ts'
import type { FromRunThrough, ToRunThrough } from '../../src/state/runThroughClient.ts'
import { stringAt } from '../helpers/documents.ts'
import { fusionYard } from '../helpers/fusionYard.ts'

const document = fusionYard({ neededFt: 280, rollers: Array.from({ length: 20 }, (_, i) => 60 + 12 * i) })
const run = (requestId: number, over: Partial<Extract<ToRunThrough, { type: 'run' }>> = {}): ToRunThrough => ({ type: 'run', requestId, stamp: `${requestId}.0`, document, from: 0, ...over })

/** A worker whose clock goes on by `stepMs` at every look, and into which `atBreath` puts messages. */
const worker = (stepMs: number, atBreath: (count: number) => void = () => undefined) => {
  const answers: FromRunThrough[] = []
  let [nowMs, breaths] = [0, 0]
  const take = createRehearsal({
    answer: (message) => answers.push(message),
    breath: async () => atBreath(++breaths),
    nowMs: () => (nowMs += stepMs),
  })
  return { answers, take, breaths: () => breaths }
}
const setUpIn = ({ records }: typeof document): string => Object.values(records).find(({ kind }) => kind === 'setUp')!.id
const runIn = ({ records }: typeof document): string => Object.values(records).find(({ kind }) => kind === 'run')!.id
const stagesIn = (answers: readonly FromRunThrough[]): string[] => answers.flatMap((answer) => (answer.type === 'partial' ? answer.stages.map(({ stage }) => stage.id) : []))

describe('the run-through’s worker', () => {
  it('sends the stage looked at first and alone, then the others as they come, then all of them', async () => {
    const { answers, take } = worker(1)
    await take(run(1, { from: 6 }))
    const first = answers[0]
    expect(first).toMatchObject({ type: 'partial', requestId: 1, stamp: '1.0', count: 26, stages: [{ stage: { index: 6 } }] })
    expect(answers[1]).toEqual({ type: 'progress', requestId: 1, stamp: '1.0', share: 1 / 26 })
    expect(answers.filter(({ type }) => type === 'partial').length).toBeGreaterThan(2)
    expect(answers.at(-1)).toEqual({ type: 'done', requestId: 1, stamp: '1.0', run: runThroughOf(deriveSite(document), { from: 6 }) })
  })

  it('rehearses the string that is shown of several', async () => {
    const put = (number: number, stickCount: number) => ({ [`string:${number}`]: stringAt(number, { stickCount, setUpId: setUpIn(document), runId: runIn(document) }) })
    const strings = { records: { ...document.records, ...put(1, 5), ...put(2, 3) } }
    const stagesOfRun = async (over: { stringId?: string }): Promise<number> => {
      const { answers, take } = worker(1)
      await take(run(1, { document: strings, ...over }))
      const last = answers.at(-1)
      return last?.type === 'done' ? last.run.stages.length : 0
    }
    // Set-up, offload, three stages a joint, move, rest, tie-in: 5 + 3 × 4 and 5 + 3 × 2.
    expect([await stagesOfRun({}), await stagesOfRun({ stringId: 'string:2' })]).toEqual([17, 11])
  })

  it('gives up for a newer request at its next breath, and answers that one', async () => {
    const second: Promise<void>[] = []
    const { answers, take } = worker(20, (count) => {
      if (count === 2) second.push(take(run(2)))
    })
    await take(run(1))
    await Promise.all(second)
    expect(answers.filter(({ type }) => type === 'cancelled' || type === 'done').map(({ type, requestId }) => `${type} ${requestId}`)).toEqual(['cancelled 1', 'done 2'])
    expect(stagesIn(answers.filter(({ requestId }) => requestId === 1))).toHaveLength(2)
  })

  it('stops when nobody looks any more; a cancel of an older request stops nothing', async () => {
    const one = worker(20, (count) => count === 3 && void one.take({ type: 'cancel', requestId: 1 }))
    await one.take(run(1))
    expect(one.answers.at(-1)).toMatchObject({ type: 'cancelled' })
    const two = worker(20, (count) => count === 3 && void two.take({ type: 'cancel', requestId: 1 }))
    await two.take(run(2))
    expect(two.answers.at(-1)).toMatchObject({ type: 'done' })
  })

  it('rebuilds a changed document from its difference and solves only what changed', async () => {
    const { answers, take } = worker(1)
    await take(run(1))
    const roller = document.records['roller:20']!
    const changed = { records: { ...document.records, 'roller:20': { ...roller, height: { rule: 'aboveGround', saddleM: 0.2 } } as never } }
    await take({ type: 'runDiff', requestId: 2, stamp: '2.0', diff: diffDocuments(document, changed), from: 0 })
    const [first, second] = answers.flatMap((answer) => (answer.type === 'done' ? [answer.run] : []))
    expect({ ...second!, counts: 0 }).toEqual({ ...runThroughOf(deriveSite(changed)), counts: 0 })
    expect(second!.counts.solves).toBeLessThan(first!.counts.solves / 2)
  })

  it('says what went wrong and stays ready', async () => {
    const { answers, take } = worker(1)
    await take({ type: 'runDiff', requestId: 1, stamp: '1.0', diff: diffDocuments(document, document), from: 0 })
    expect(answers.at(-1)).toMatchObject({ type: 'failed', requestId: 1 })
    await take(run(2))
    expect(answers.at(-1)).toMatchObject({ type: 'done', requestId: 2 })
  })
})
