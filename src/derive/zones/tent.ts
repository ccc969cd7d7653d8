import { enter } from './mayEnter.ts'
import { itemsOf } from '../itemsOf.ts'
import { aroundItem, figuresOr } from './shapes.ts'
import type { ZoneDefinition } from './zone.ts'

const AROUND_M = 0.9144
/** A large tent, its guy lines as long as its walls are high: where nobody has said. */
const LARGEST = { lengthM: 9, widthM: 6, guyM: 3 } as const

/** Z-24. Tent, the reach of its guy lines, and 3 ft. */
export const tent: ZoneDefinition = {
  id: 'Z-24',
  name: { en: 'shelter', es: 'carpa' },
  sentence: { en: 'The tent keeps the joint clean, not you safe. If the wind lifts it, let it go.', es: 'La carpa cuida la junta, no a usted. Si el viento la levanta, suéltela.' },
  classes: { setUp: 'AMBER', fuse: 'AMBER', rest: 'AMBER' },
  mayEnter: [enter('operator'), enter('infeedHand'), enter('exitHand')],
  source: { class: 'houseRule', cite: 'common practice, no published source' },
  size: { en: 'tent, guy lines and 3 ft', es: 'carpa, vientos y 3 pies' },
  shapes: (site) => itemsOf(site, 'shelter').map((item) => {
    const { guyM, missing, ...size } = figuresOr(item, LARGEST)
    return { ownerId: item.id, rings: aroundItem(item, size, guyM + AROUND_M), itemIds: [item.id], missing }
  }),
}
