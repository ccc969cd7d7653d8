import { enter, when } from './mayEnter.ts'
import type { LoaderRecord } from '../../scene/kinds/loader.ts'
import type { LaneRecord } from '../../scene/kinds/lane.ts'
import type { PlacedItem } from '../types.ts'
import type { ZoneDefinition, ZoneShape } from './zone.ts'
import { aroundLine, circleAt, figuresOr } from './shapes.ts'

const MARGIN_M = 0.9144
/** A 50 ft stick carried crosswise. */
const LARGEST_LANE = { widthM: 15.24 } as const

/** Z-07. What a stick carried crosswise sweeps when the loader turns: R = √((stick/2)² + reach²) + 3 ft about the loader; and its lanes. */
export const loaderSweep: ZoneDefinition = {
  id: 'Z-07',
  name: { en: 'loader swing', es: 'giro del cargador' },
  sentence: { en: 'A pipe on a loader sweeps a circle bigger than a house. If you can’t see the driver’s eyes, he can’t see you.', es: 'Un tubo en el cargador barre un círculo más grande que una casa. Si usted no le ve los ojos al operador, él no lo ve a usted.' },
  classes: { setUp: 'RED', offload: 'RED', load: 'RED', move: 'RED', tieIn: 'RED' },
  mayEnter: [enter('loaderOperator', when.inCab)],
  source: { class: 'houseRule', cite: 'circle from mechanics; 3 ft common practice, no published source' },
  size: { en: 'half a stick and the reach, and 3 ft', es: 'medio tubo y el alcance, y 3 pies' },
  shapes: (site) => [...site.placed.values()].flatMap((item): ZoneShape[] => {
    if (item.kind === 'lane') return lane(item)
    if (item.kind !== 'loader') return []
    const stickM = site.sticks.stickLengthM
    const reachM = (item.record as LoaderRecord).figures.reachM.value
    const radiusM = Math.hypot((stickM ?? 15.24) / 2, reachM ?? 4.27) + MARGIN_M
    const missing = [
      ...(stickM === null ? [{ recordId: site.job.id, path: 'stickLengthM', label: { en: 'stick length', es: 'largo del tubo' } }] : []),
      ...(reachM === null ? [{ recordId: item.id, path: 'figures.reachM.value', label: { en: 'reach to the stick', es: 'alcance al tubo' } }] : []),
    ]
    return [{ ownerId: item.id, rings: [circleAt(item, radiusM)], itemIds: [item.id], missing }]
  }),
}

/** What a loader on its lane sweeps: the lane as drawn, wide enough for what it carries, and 3 ft. */
function lane(item: PlacedItem): ZoneShape[] {
  const { points, use } = item.record as LaneRecord
  if (use !== 'loader') return []
  const { widthM, missing } = figuresOr(item, LARGEST_LANE)
  return [{ ownerId: item.id, rings: aroundLine(points, widthM / 2 + MARGIN_M), itemIds: [item.id], missing, size: { en: 'the lane and 3 ft each side', es: 'el carril y 3 pies a cada lado' } }]
}
