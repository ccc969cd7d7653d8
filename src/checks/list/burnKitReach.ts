import { ROUNDING_M } from '../gearBodies.ts'
import { sourceOf } from '../limits.ts'
import { atPoint, boundFor, defineCheck, finding, nameOf, q, say } from '../make.ts'
import { itemsOf } from '../../derive/itemsOf.ts'
import { nearestTo } from '../plainGap.ts'

const ID = 'burn-kit-reach'

export const burnKitReach = defineCheck({
  id: ID,
  title: { en: 'Burn kit near the hot plate', es: 'Botiquín cerca de la placa' },
  cost: 'quick',
  run: (site, { limits }) => {
    const hot = [...itemsOf(site, 'plateHolder'), ...itemsOf(site, 'machine')]
    if (hot.length === 0) return []
    const limit = limits.limit('burn-kit')
    const mostM = boundFor(limit, 'CHECK')
    const kits = itemsOf(site, 'burnKit')
    const far = hot.map((item) => ({ item, kit: nearestTo(item, kits) })).filter(({ kit }) => kit === null || (mostM !== null && kit.distanceM > mostM + ROUNDING_M)).toSorted((a, b) => (b.kit?.distanceM ?? Infinity) - (a.kit?.distanceM ?? Infinity))
    const [worst] = far
    if (worst === undefined) return [finding(ID, { level: 'met', source: sourceOf(limit), items: kits.map(({ id }) => id), what: say('A burn kit is near machine and hot plate.', 'Hay botiquín de quemaduras cerca de la máquina y la placa.') })]
    const values = { hot: nameOf(site, worst.item.id), far: q('length', worst.kit?.distanceM ?? null), most: q('length', mostM) }
    return [finding(ID, {
      level: 'CHECK', items: [...far.map(({ item }) => item.id), ...kits.map(({ id }) => id)], where: atPoint(worst.item.xM, worst.item.yM), phases: ['fuse'], measured: q('length', worst.kit?.distanceM ?? null), limit: q('length', mostM), source: sourceOf(limit),
      what: worst.kit === null ? say('No burn kit on the plan; the plate is over 400 °F (200 °C).', 'No hay botiquín de quemaduras en el plano; la placa pasa de 200 °C (400 °F).') : say('The burn kit is {far} from the {hot}; {most} is the most.', 'El botiquín queda a {far} de {hot}; lo más es {most}.', values),
      move: say('Set it with water within {most} of machine and hot plate, not in a zone.', 'Póngalo con agua a no más de {most} de máquina y placa, fuera de zonas.', values),
    })]
  },
})
