import { commandOf } from '../../src/scene/commands/index.ts'
import { layoutOf, type YardDocument } from '../../src/scene/document.ts'
import { applyEdit, type Env } from '../../src/scene/edit.ts'
import { newDocument } from '../../src/scene/newYard.ts'
import { seededRandom } from '../helpers/seededRandom.ts'

/** A long yard with so many items: supports along the run, the rest trees, notes and levels beside it. Seeded. */
export const manyItems = (count: number): YardDocument => {
  let id = 0
  const env: Env = { newId: (prefix) => `${prefix}:b${id++}`, now: () => '2026-11-24T08:00:00.000Z' }
  const random = seededRandom(7)
  let document = newDocument({ title: 'bench', pipe: { system: 'IPS', size: '12', dr: 17, material: 'PE4710' }, neededLengthM: 300, stickLengthM: 12.192, stripLengthM: 360, stripWidthM: 60, fallRatio: 0.005 }, env, 'feetInches')
  const run = Object.values(document.records).find((record) => record.kind === 'run')!
  const setUp = Object.values(document.records).find((record) => record.kind === 'setUp')!
  const does = (name: string, args: unknown): void => {
    document = applyEdit(document, commandOf(name)!.run(document, args, env))
  }
  does('usualSetUp', { setUpId: setUp.id })
  for (let i = 0; i < 58; i++) does('place', { kind: 'roller', place: { at: 'onRun', runId: run.id, runningM: 15 + i * 5, offsetM: 0, turnRad: 0 } })
  const kinds = ['tree', 'note', 'level'] as const
  while (Object.keys(document.records).length < count) {
    does('place', { kind: kinds[id % kinds.length]!, place: { at: 'free', xM: -20 + random() * 340, yM: (random() < 0.5 ? -1 : 1) * (11 + random() * 16), headingRad: 0 } })
  }
  return { records: { ...document.records, 'layout:this': { ...layoutOf(document), title: 'a thousand items' } } }
}
