import { enter } from './mayEnter.ts'
import { phases } from '../../scene/parts.ts'
import type { MissingInput } from '../types.ts'
import { itemsOf } from '../itemsOf.ts'
import { aroundLine } from './shapes.ts'
import type { ZoneDefinition } from './zone.ts'

/** Lateral buffer beside live traffic, 2 ft. */
const BUFFER_M = 0.6096
const TYPICAL_WIDTH_M = 3.6576

/** Z-18. A lane with live traffic and 2 ft beside it. A closed lane is the crew's. */
export const liveTraffic: ZoneDefinition = {
  id: 'Z-18',
  name: { en: 'live traffic', es: 'tráfico' },
  sentence: { en: 'Cars win. Stay behind the cones, face the traffic and know where you’d jump.', es: 'El carro siempre gana. Quédese detrás de los conos, de frente al tráfico, y sepa para dónde brincar.' },
  classes: Object.fromEntries(phases.map((phase) => [phase, 'BLUE' as const])),
  mayEnter: [enter('marshal', { en: 'behind the cones, facing the traffic', es: 'detrás de los conos, de frente al tráfico' })],
  source: { class: 'published', cite: 'MUTCD Part 6, lateral buffer from memory, confirm' },
  size: { en: 'the lane and 2 ft each side', es: 'el carril y 2 pies a cada lado' },
  shapes: (site) => itemsOf(site, 'trafficLane').flatMap((item) => {
    const { points, figures, closed } = item.record
    if (closed === true) return []
    const missing: MissingInput[] = [
      ...(closed === null ? [{ recordId: item.id, path: 'closed', label: { en: 'lane closed to traffic', es: 'carril cerrado al tráfico' } }] : []),
      ...(figures.widthM.value === null ? [{ recordId: item.id, path: 'figures.widthM.value', label: { en: 'width of the lane', es: 'ancho del carril' } }] : []),
    ]
    return [{ ownerId: item.id, rings: aroundLine(points, (figures.widthM.value ?? TYPICAL_WIDTH_M) / 2 + BUFFER_M), itemIds: [item.id], missing }]
  }),
}
