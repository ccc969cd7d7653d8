import type { YardDocument } from '../../src/scene/document.ts'
import { commandOf } from '../../src/scene/commands/index.ts'
import { applyEdit, type Env } from '../../src/scene/edit.ts'
import { kinds } from '../../src/scene/kinds/index.ts'
import { seededRandom } from '../helpers/seededRandom.ts'
import { redstemGood } from '../helpers/makeExamples.ts'

/** What a big yard has many of: gear with zones, obstacles, crew. */
const many = ['roller', 'stack', 'tree', 'barrier', 'generator', 'plateHolder', 'stand', 'fuel', 'shelter', 'fence', 'crew', 'level', 'note', 'walkway', 'trailer', 'vent'] as const

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
