import { enter } from './mayEnter.ts'
import { itemsOf } from '../itemsOf.ts'
import { aroundItem, aroundLine, figuresOr } from './shapes.ts'
import type { ZoneDefinition } from './zone.ts'

const AROUND_M = 0.9144

/** Z-05. The holder of the hot plate and 3 ft, and the way the plate is carried between holder and jaws. */
export const hotPlate: ZoneDefinition = {
  id: 'Z-05',
  name: { en: 'hot plate', es: 'placa caliente' },
  sentence: { en: 'The plate is over 400 degrees and looks cold. Only the operator moves it, and it always goes back in its holder.', es: 'La placa pasa de 400 grados Fahrenheit (más de 200 °C) y parece fría. Solo el operador la mueve y siempre vuelve a su soporte.' },
  classes: { fuse: 'AMBER', pull: 'AMBER' },
  mayEnter: [enter('operator')],
  source: { class: 'houseRule', cite: 'heater surface 400 to 450 °F: ASTM F2620; 3 ft common practice, no published source' },
  size: { en: 'holder and 3 ft, and the way to the jaws', es: 'soporte y 3 pies, y el camino a las mordazas' },
  shapes: (site) => itemsOf(site, 'plateHolder').map((item) => {
    const size = figuresOr(item, { lengthM: 2, widthM: 1 })
    const joint = site.run === null ? null : site.atRunning(0)
    const way = joint === null ? [] : aroundLine([item, joint], AROUND_M)
    return { ownerId: item.id, rings: [...aroundItem(item, size, AROUND_M), ...way], itemIds: [item.id], missing: size.missing }
  }),
}
