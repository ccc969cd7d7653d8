import type { ZoneDefinition } from './zone.ts'
import { noseAt, odOf, pipeMissing, stripAlong } from './shapes.ts'

const SIDE_M = 0.9144

/** Z-12. Beside the string while it may move. */
export const stringSide: ZoneDefinition = {
  id: 'Z-12',
  name: { en: 'beside the string', es: 'junto a la línea de tubo' },
  sentence: { en: 'Rollers grab gloves and laces. Keep one big step from a moving string, and never step over it.', es: 'Los rodillos atrapan guantes y agujetas. Manténgase a un paso largo del tubo en movimiento y nunca pase por encima.' },
  classes: { fuse: 'AMBER', pull: 'AMBER', move: 'RED' },
  mayEnter: ['exitHand', 'operator', 'noseSpotter'],
  source: { class: 'houseRule', cite: 'common practice, no published source' },
  size: { en: 'string and 3 ft each side', es: 'tubo y 3 pies a cada lado' },
  shapes: (site, stage) => {
    const { toM } = noseAt(site, stage)
    const fromM = site.jaws.outerClampM + 1
    if (toM <= fromM) return []
    const halfWidthM = odOf(site) / 2 + SIDE_M
    return [{ ownerId: site.run?.id ?? 'run:none', rings: [stripAlong(site, [{ runningM: fromM, halfWidthM }, { runningM: toM, halfWidthM }])], itemIds: [], missing: pipeMissing(site) }]
  },
}
