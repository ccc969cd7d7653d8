import { enter, when } from './mayEnter.ts'
import { itemsOf } from '../itemsOf.ts'
import { boxAt, figuresOr, odOf, sizeMissing } from './shapes.ts'
import type { ZoneDefinition } from './zone.ts'

const AROUND_M = 0.9144

/** Z-06. The facer between the pipe ends, the side it swings out to, and where shavings drop: its swing and 3 ft. */
export const facer: ZoneDefinition = {
  id: 'Z-06',
  name: { en: 'facer', es: 'refrentadora' },
  sentence: { en: 'The facer cuts pipe like butter, so it will cut you. Wait until it stops, then pull the shavings.', es: 'La refrentadora corta el tubo como mantequilla, y a usted también. Espere a que pare y después saque la viruta.' },
  classes: { fuse: 'RED' },
  mayEnter: [enter('operator', when.atControls)],
  source: { class: 'houseRule', cite: 'common practice, no published source' },
  size: { en: 'room to swing the facer out, and 3 ft', es: 'espacio para girar la refrentadora, y 3 pies' },
  shapes: (site) => itemsOf(site, 'machine').map((item) => {
    const { widthM, missing } = figuresOr(item, { widthM: 3 })
    // The facer is a disc of the pipe's size that swings out over the side of the machine.
    const side = widthM / 2 + odOf(site) + AROUND_M
    const along = site.jaws.innerClampM + AROUND_M
    return { ownerId: item.id, rings: [boxAt(item, { fromM: -along, toM: along, rightM: side, leftM: side })], itemIds: [item.id], missing: [...missing, ...sizeMissing(site)] }
  }),
}
