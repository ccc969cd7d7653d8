import { odOf, sizeMissing, stripAlong } from './shapes.ts'
import type { ZoneDefinition } from './zone.ts'

const RIM_M = 0.9144

/** Z-27. The end of a stick on its way from the rack through the open jaws, and 3 ft. */
export const feedRim: ZoneDefinition = {
  id: 'Z-27',
  name: { en: 'stick coming in', es: 'tubo que entra' },
  sentence: { en: 'A stick coming in is a guillotine on rollers. Keep your hands off the rim and out of the jaws.', es: 'Un tubo que entra es una guillotina sobre rodillos. No ponga las manos en el borde ni en las mordazas.' },
  classes: { load: 'RED' },
  mayEnter: [],
  source: { class: 'houseRule', cite: 'common practice, no published source' },
  size: { en: '3 ft round the end on its way to the joint', es: '3 pies alrededor de la punta hasta la junta' },
  shapes: (site) => {
    const near = site.supports.filter(({ kind, runningM }) => kind === 'rack' && runningM < 0).at(-1)
    if (near === undefined) return []
    const halfWidthM = odOf(site) / 2 + RIM_M
    return [{ ownerId: near.itemId, rings: [stripAlong(site, [{ runningM: near.runningM, halfWidthM }, { runningM: RIM_M, halfWidthM }])], itemIds: [near.itemId], missing: sizeMissing(site) }]
  },
}
