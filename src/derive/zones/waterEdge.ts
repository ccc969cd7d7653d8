import { enter } from './mayEnter.ts'
import { crewRoles } from '../../scene/kinds/crew.ts'
import { phases } from '../../scene/parts.ts'
import { itemsOf } from '../itemsOf.ts'
import { widened } from './shapes.ts'
import type { ZoneDefinition } from './zone.ts'

const FROM_EDGE_M = 1.8288

/** Z-26. The edge of water: 6 ft. Whoever works there wears a life vest. */
export const waterEdge: ZoneDefinition = {
  id: 'Z-26',
  name: { en: 'water edge', es: 'orilla del agua' },
  sentence: { en: 'Near water you wear the vest, zipped. The pipe can pull you in faster than you can let go.', es: 'Cerca del agua se usa chaleco, abrochado. El tubo lo jala al agua antes de que usted alcance a soltar.' },
  classes: Object.fromEntries(phases.map((phase) => [phase, 'AMBER' as const])),
  mayEnter: crewRoles.map(({ value }) => enter(value, { en: 'with a life vest, zipped', es: 'con chaleco salvavidas abrochado' })),
  source: { class: 'published', cite: '29 CFR 1926.106, from memory, confirm; 6 ft is a house rule' },
  size: { en: '6 ft from the edge', es: '6 pies de la orilla' },
  shapes: (site) => itemsOf(site, 'water').map((item) => ({ ownerId: item.id, rings: widened(item.record.points, FROM_EDGE_M), itemIds: [item.id] })),
}
