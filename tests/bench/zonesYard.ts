import type { YardDocument } from '../../src/scene/document.ts'
import { commandOf } from '../../src/scene/commands/index.ts'
import { applyEdit, type Env } from '../../src/scene/edit.ts'
import { kinds } from '../../src/scene/kinds/index.ts'
import { seededRandom } from '../helpers/seededRandom.ts'
import { redstemGood } from '../helpers/makeExamples.ts'

/** What a big yard has many of, by share of 40: rollers, levels and trees first, gear with a zone of its own and crew spots one each (25 of each kind at 1,000 records). */
const shares = { roller: 10, level: 8, tree: 6, note: 3, barrier: 3, stand: 1, fence: 1, stack: 1, trailer: 1, generator: 1, fuel: 1, plateHolder: 1, shelter: 1, walkway: 1, crew: 1 } as const
const many = Object.entries(shares).flatMap(([kind, share]) => Array.from({ length: share }, () => kind))

/** The good 500 ft yard with gear of every sort round it until it has so many records. Seeded. */
export function zonesYard(count: number): YardDocument {
  let id = 0
  const env: Env = { newId: (prefix) => `${prefix}:z${id++}`, now: () => '2026-11-24T08:00:00.000Z' }
  const random = seededRandom(11)
  let document = redstemGood()
  const run = Object.values(document.records).find(({ kind }) => kind === 'run')!
  while (Object.keys(document.records).length < count) {
    const kind = many[id % many.length]!
    const [runningM, offsetM] = [2 + random() * 150, (random() < 0.5 ? -1 : 1) * (6 + random() * 40)]
    const definition = kinds.find((one) => one.kind === kind)!
    const at = kind === 'roller' || kind === 'stand' ? { at: 'onRun', runId: run.id, runningM, offsetM: 0, turnRad: 0 } : { at: 'free', xM: runningM, yM: offsetM, headingRad: 0 }
    const points = [{ xM: runningM, yM: offsetM }, { xM: runningM + 8, yM: offsetM + 2 }]
    document = applyEdit(document, commandOf('place')!.run(document, definition.placing === 'item' ? { kind, place: at } : { kind, points }, env))
  }
  return document
}
