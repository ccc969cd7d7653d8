import { enter } from './mayEnter.ts'
import { itemsOf } from '../itemsOf.ts'
import { aroundItem, figuresOr } from './shapes.ts'
import type { ZoneDefinition } from './zone.ts'

const AROUND_M = 3.048

/** Z-22. Where pipe is cut: 10 ft all round. */
export const cuttingStation: ZoneDefinition = {
  id: 'Z-22',
  name: { en: 'cutting place', es: 'lugar de corte' },
  sentence: { en: 'The cut pipe drops and can kick. Hold up both sides before you start the saw.', es: 'El tubo cortado cae y puede patear. Apoye los dos lados antes de prender la sierra.' },
  classes: { tieIn: 'AMBER' },
  mayEnter: [enter('operator', { en: 'cutting', es: 'cortando' }), enter('infeedHand', { en: 'holding the cut', es: 'sosteniendo el corte' }), enter('exitHand', { en: 'holding the cut', es: 'sosteniendo el corte' })],
  source: { class: 'houseRule', cite: 'common practice, no published source' },
  size: { en: '10 ft all round', es: '10 pies alrededor' },
  shapes: (site) => itemsOf(site, 'cuttingPlace').map((item) => {
    const size = figuresOr(item, { lengthM: 6, widthM: 2.4 })
    return { ownerId: item.id, rings: aroundItem(item, size, AROUND_M), itemIds: [item.id], missing: size.missing }
  }),
}
