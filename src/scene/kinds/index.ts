import type { z } from 'zod'
import type { KindDefinition } from '../kindDefinition.ts'
import { anchor } from './anchor.ts'
import { boundary } from './boundary.ts'
import { building } from './building.ts'
import { crew } from './crew.ts'
import { fence } from './fence.ts'
import { lane } from './lane.ts'
import { level } from './level.ts'
import { loader } from './loader.ts'
import { machine } from './machine.ts'
import { note } from './note.ts'
import { offload } from './offload.ts'
import { overheadLine } from './overheadLine.ts'
import { puller } from './puller.ts'
import { rack } from './rack.ts'
import { road } from './road.ts'
import { roller } from './roller.ts'
import { stand } from './stand.ts'
import { tree } from './tree.ts'
import { trench } from './trench.ts'
import { walkway } from './walkway.ts'
import { water } from './water.ts'
import { zone } from './zone.ts'

/** Every placeable kind, in the order of the gear edge. A new kind is one file and one line here. */
const list = [
  machine, rack, stand, roller,
  puller, anchor, loader, offload, lane,
  boundary, building, fence, road, walkway, tree, trench, overheadLine, water, level, note,
  crew, zone,
] as const

export type PlacedRecord = z.infer<(typeof list)[number]['schema']>
export type PlacedKind = PlacedRecord['kind']

/** The same list with the record type opened, for code that handles any kind. */
export const kinds = list as unknown as readonly KindDefinition<PlacedRecord>[]

const byName = new Map(kinds.map((definition) => [definition.kind as string, definition]))

/** Definition of a placeable kind, or undefined for frame records and anything unknown. */
export const kindOf = (kind: string): KindDefinition<PlacedRecord> | undefined => byName.get(kind)
