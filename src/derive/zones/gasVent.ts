import { phases } from '../../scene/parts.ts'
import { itemsOf } from '../itemsOf.ts'
import { circleAt, lacking } from './shapes.ts'
import type { ZoneDefinition } from './zone.ts'

const AROUND_M = 3.048

/** Z-25. A gas vent or open well: 10 ft without ignition. People may pass; whatever burns or sparks may not. */
export const gasVent: ZoneDefinition = {
  id: 'Z-25',
  name: { en: 'gas vent', es: 'venteo de gas' },
  sentence: { en: 'Landfill gas burns and puts you to sleep. No meter, no hot plate.', es: 'El gas del relleno se quema y lo puede desmayar. Sin medidor no hay placa caliente.' },
  classes: Object.fromEntries(phases.map((phase) => [phase, 'RED' as const])),
  mayEnter: [],
  keepsOut: 'gear',
  source: { class: 'houseRule', cite: 'owner’s rule; 10 ft common practice, no published source' },
  size: { en: '10 ft round the vent', es: '10 pies alrededor del venteo' },
  shapes: (site) => itemsOf(site, 'vent').map((item) => {
    const missing = item.record.isClear === null ? [lacking(item, 'isClear')] : []
    return { ownerId: item.id, rings: [circleAt(item, AROUND_M)], itemIds: [item.id], missing }
  }),
}
