import type { OffloadRecord } from '../../scene/kinds/offload.ts'
import type { TrailerRecord } from '../../scene/kinds/trailer.ts'
import { boxAt, figuresOr, lacking } from './shapes.ts'
import type { ZoneDefinition } from './zone.ts'

const BEYOND_M = 3.048
/** Top of a load on the road, 13 ft 6 in, and the longest trailer with its tractor: where nobody has measured it. */
const LARGEST = { lengthM: 22.86, widthM: 2.6, loadHeightM: 4.1148 } as const

/** Z-01. Beside a loaded truck or trailer: as far as the load is high, and 10 ft; 10 ft past each end. */
export const offloadSide: ZoneDefinition = {
  id: 'Z-01',
  name: { en: 'beside the truck', es: 'junto al camión' },
  sentence: { en: 'When a strap comes off, pipe can roll. Nobody stands beside the truck until the loader is holding the load.', es: 'Cuando se suelta una correa, el tubo puede rodar. Nadie se para al lado del camión hasta que el cargador tenga la carga asegurada.' },
  classes: { offload: 'RED' },
  // Whoever loosens straps does it before the zone is live: the loader holds the load.
  mayEnter: [],
  source: { class: 'published', cite: 'NIOSH FACE 99AK014; state mine bulletins on unloading polyethylene pipe; the size is a house rule' },
  size: { en: 'height of the load and 10 ft to both sides, 10 ft past each end', es: 'altura de la carga y 10 pies a ambos lados, 10 pies más allá de cada extremo' },
  shapes: (site) => [...site.placed.values()].flatMap((item) => {
    if (item.kind !== 'offload' && item.kind !== 'trailer') return []
    const record = item.record as OffloadRecord | TrailerRecord
    if (record.kind === 'trailer' && record.isLoaded === false) return []
    const { lengthM, widthM, loadHeightM, missing } = figuresOr(item, LARGEST)
    const [half, side] = [lengthM / 2 + BEYOND_M, widthM / 2 + loadHeightM + BEYOND_M]
    const unsaid = record.kind === 'trailer' && record.isLoaded === null ? [lacking(item, 'isLoaded')] : []
    return [{ ownerId: item.id, rings: [boxAt(item, { fromM: -half, toM: half, rightM: side, leftM: side })], itemIds: [item.id], missing: [...missing, ...unsaid] }]
  }),
}
