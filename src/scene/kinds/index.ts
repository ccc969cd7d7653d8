import type { z } from 'zod'
import type { KindDefinition } from '../kindDefinition.ts'
import { anchor } from './anchor.ts'
import { barrier } from './barrier.ts'
import { boundary } from './boundary.ts'
import { building } from './building.ts'
import { burnKit } from './burnKit.ts'
import { crew } from './crew.ts'
import { cuttingPlace } from './cuttingPlace.ts'
import { emergencyLane } from './emergencyLane.ts'
import { extinguisher } from './extinguisher.ts'
import { fence } from './fence.ts'
import { fitting } from './fitting.ts'
import { fuel } from './fuel.ts'
import { gate } from './gate.ts'
import { generator } from './generator.ts'
import { guide } from './guide.ts'
import { lane } from './lane.ts'
import { level } from './level.ts'
import { loader } from './loader.ts'
import { machine } from './machine.ts'
import { muster } from './muster.ts'
import { note } from './note.ts'
import { offload } from './offload.ts'
import { overheadLine } from './overheadLine.ts'
import { plateHolder } from './plateHolder.ts'
import { puller } from './puller.ts'
import { rack } from './rack.ts'
import { radioDead } from './radioDead.ts'
import { redirectBlock } from './redirectBlock.ts'
import { road } from './road.ts'
import { roller } from './roller.ts'
import { shelter } from './shelter.ts'
import { stack } from './stack.ts'
import { stand } from './stand.ts'
import { trafficLane } from './trafficLane.ts'
import { trailer } from './trailer.ts'
import { tree } from './tree.ts'
import { trench } from './trench.ts'
import { vent } from './vent.ts'
import { walkway } from './walkway.ts'
import { water } from './water.ts'
import { zone } from './zone.ts'

/** Every placeable kind, in the order of the gear edge. A new kind is one file and one line here. */
const list = [
  machine, rack, stand, roller, guide, fitting, stack, shelter, plateHolder, cuttingPlace,
  puller, redirectBlock, anchor, loader, offload, trailer, lane,
  boundary, building, fence, road, walkway, tree, trench, overheadLine, water, trafficLane, emergencyLane, gate, generator, fuel, vent, level, note,
  crew, muster, extinguisher, burnKit, barrier, radioDead, zone,
] as const

export type PlacedRecord = z.infer<(typeof list)[number]['schema']>
export type PlacedKind = PlacedRecord['kind']

/** The same list with the record type opened, for code that handles any kind. */
export const kinds = list as unknown as readonly KindDefinition<PlacedRecord>[]

const byName = new Map(kinds.map((definition) => [definition.kind as string, definition]))

/** Definition of a placeable kind, or undefined for frame records and anything unknown. */
export const kindOf = (kind: string): KindDefinition<PlacedRecord> | undefined => byName.get(kind)
