import type { CuttingPlaceRecord } from '../../scene/kinds/cuttingPlace.ts'
import { atPoint, defineCheck, finding, houseRule, nameOf, say } from '../make.ts'

const ID = 'cut-held'

export const cutHeld = defineCheck({
  id: ID,
  title: { en: 'Both sides of a cut held', es: 'Ambos lados del corte apoyados' },
  cost: 'quick',
  run: (site) => [...site.placed.values()].flatMap((item) => {
    if (item.kind !== 'cuttingPlace') return []
    const { bothSidesHeld } = item.record as CuttingPlaceRecord
    if (bothSidesHeld === true) return []
    const common = { about: item.id, items: [item.id], where: atPoint(item.xM, item.yM), phases: ['tieIn' as const], source: houseRule, move: say('Put a support under each side, so that the kerf opens and neither half drops.', 'Ponga un apoyo bajo cada lado, para que el corte abra y ninguna mitad caiga.') }
    const values = { place: nameOf(site, item.id) }
    if (bothSidesHeld === null) return [finding(ID, { ...common, level: 'CHECK', missing: [{ recordId: item.id, path: 'bothSidesHeld', label: { en: 'both sides of the cut held', es: 'ambos lados del corte apoyados' } }], what: say('{place}: nobody has said whether both sides of the cut lie on supports.', '{place}: nadie ha dicho si ambos lados del corte están apoyados.', values) })]
    return [finding(ID, { ...common, level: 'FIX', what: say('{place}: the cut half drops, and the saw is pinched or kicks.', '{place}: la mitad cortada cae, y la sierra se atora o patea.', values) })]
  }),
})
