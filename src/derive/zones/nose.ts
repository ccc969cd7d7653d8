import type { ZoneDefinition, ZoneShape } from './zone.ts'
import { noseAt, pipeMissing, stripAlong } from './shapes.ts'
import { pullerOf, pullerOperatorMayEnter } from './rope.ts'
import type { PullerRecord } from '../../scene/kinds/puller.ts'

const AHEAD_M = 4.572
const HALF_WIDTH_M = 3.048
/** Stands are hardly ever set higher: 4 ft. */
const LARGEST_SADDLE_M = 1.2192

/** Z-10. Ahead of the nose: what it covers in this pull and 15 ft, widening 1 in 10. */
export const nose: ZoneDefinition = {
  id: 'Z-10',
  name: { en: 'ahead of the nose', es: 'delante de la punta' },
  sentence: { en: 'The front end jumps when it comes off a stand. Stay to the side and back, and never guide it with your hands.', es: 'La punta salta cuando sale de un soporte. Quédese a un lado y atrás, y nunca la guíe con las manos.' },
  follows: 'nose',
  classes: { pull: 'RED', move: 'RED' },
  mayEnter: [],
  source: { class: 'houseRule', cite: 'common practice, no published source' },
  size: { en: '10 ft and the height of the stands each side, widening 1 in 10, 15 ft past the nose', es: '10 pies y la altura de los soportes a cada lado, abriendo 1 en 10, 15 pies más allá de la punta' },
  shapes: (site, stage) => {
    const { fromM, toM } = noseAt(site, stage)
    // A machine that walks on leaves the string where it lies.
    if (toM <= 0 || (stage.phase === 'pull' && site.job.method === 'walking')) return []
    const endM = toM + AHEAD_M
    const puller = pullerOf(site)
    const mayEnter = puller === null ? [] : pullerOperatorMayEnter(puller.record as PullerRecord).mayEnter
    // What falls off a stand falls as far aside as it is high.
    const passed = site.supports.filter(({ runningM }) => runningM >= fromM && runningM <= endM)
    const fallM = passed.reduce((most, { saddleM }) => Math.max(most, saddleM ?? 0), 0)
    const ring = (aboveM: number) => stripAlong(site, [{ runningM: fromM, halfWidthM: HALF_WIDTH_M + aboveM }, { runningM: endM, halfWidthM: HALF_WIDTH_M + aboveM + (endM - fromM) / 10 }])
    const common = { itemIds: puller === null ? [] : [puller.id], mayEnter }
    const ownerId = site.run?.id ?? 'run:none'
    const certain: ZoneShape = { ...common, ownerId, rings: [ring(fallM)], missing: pipeMissing(site).filter(({ path }) => path === 'stickLengthM') }
    // A stand of unknown height takes nothing from what is certain; how much wider it makes the zone is a question of its own.
    const unknown = passed.filter(({ saddleM }) => saddleM === null)
    if (unknown.length === 0) return [certain]
    const missing = [...new Set(unknown.map(({ itemId }) => itemId))].map((recordId) => ({ recordId, path: 'height', label: { en: 'height of the stands the nose passes', es: 'altura de los soportes por donde pasa la punta' } }))
    return [certain, { ...common, ownerId: `${ownerId}/heights`, rings: [ring(Math.max(fallM, LARGEST_SADDLE_M))], missing }]
  },
}
