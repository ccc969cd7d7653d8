import type { ZoneDefinition } from './zone.ts'
import { noseAt, pipeMissing, stripAlong } from './shapes.ts'
import { pullerOf, pullerOperatorMayEnter } from './rope.ts'
import type { PullerRecord } from '../../scene/kinds/puller.ts'

const AHEAD_M = 4.572
const HALF_WIDTH_M = 3.048

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
    if (toM <= 0) return []
    const endM = toM + AHEAD_M
    const puller = pullerOf(site)
    const mayEnter = puller === null ? [] : pullerOperatorMayEnter(puller.record as PullerRecord).mayEnter
    // What falls off a stand falls as far aside as it is high.
    const fallM = site.supports.reduce((most, { runningM, saddleM }) => (runningM >= fromM && runningM <= endM ? Math.max(most, saddleM ?? 0) : most), 0)
    const halfWidthM = HALF_WIDTH_M + fallM
    const ring = stripAlong(site, [{ runningM: fromM, halfWidthM }, { runningM: endM, halfWidthM: halfWidthM + (endM - fromM) / 10 }])
    return [{ ownerId: site.run?.id ?? 'run:none', rings: [ring], itemIds: puller === null ? [] : [puller.id], mayEnter, missing: pipeMissing(site).filter(({ path }) => path === 'stickLengthM') }]
  },
}
