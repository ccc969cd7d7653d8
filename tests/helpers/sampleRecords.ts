import { kindOf } from '../../src/scene/kinds/index.ts'
import type { PlacedKind, PlacedRecord } from '../../src/scene/kinds/index.ts'

const rings = { boundary: [[0, 0], [10, 0], [10, 4], [0, 4]], building: [[0, -1], [8, -1], [8, 3], [0, 3]], water: [[0, 0], [4, -1], [9, 0.5], [8, 3], [3, 4]], zone: [[0, -1], [9, -1], [9, 3], [0, 3]], radioDead: [[0, -1], [9, -1], [9, 3], [0, 3]] } as const
const line = [[0, 0], [9, 0]] as const

/** A record of any kind with typical figures at the origin; features near it. `over` replaces fields of the record. */
export const sampleOf = (kind: PlacedKind, over: Record<string, unknown> = {}): PlacedRecord => {
  const definition = kindOf(kind)
  if (definition === undefined) throw new Error(`no kind ${kind}`)
  const points = (rings as Partial<Record<PlacedKind, readonly (readonly [number, number])[]>>)[kind] ?? line
  const record = definition.create(`${definition.idPrefix}:sample`, {
    place: { at: 'free', xM: 0, yM: 0, headingRad: 0 }, points: points.map(([xM, yM]) => ({ xM, yM })), setUpId: 'setUp:1', runId: 'run:1',
  })
  return definition.schema.parse({ ...record, ...over })
}
