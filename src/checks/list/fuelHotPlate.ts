import { ROUNDING_M } from '../gearBodies.ts'
import { sourceOf } from '../limits.ts'
import { atPoint, boundFor, defineCheck, finding, nameOf, q, say } from '../make.ts'
import { itemsOf } from '../../derive/itemsOf.ts'
import { gapOf } from '../plainGap.ts'

const ID = 'fuel-hot-plate'

export const fuelHotPlate = defineCheck({
  id: ID,
  title: { en: 'Fuel and hot plate', es: 'Combustible y placa caliente' },
  cost: 'quick',
  run: (site, { limits }) => {
    const [fuels, plates] = [itemsOf(site, 'fuel'), itemsOf(site, 'plateHolder')]
    if (fuels.length === 0 || plates.length === 0) return []
    const limit = limits.limit('fuel-hot-plate')
    const leastM = boundFor(limit, 'CHECK')
    const found = fuels.flatMap((fuel) => plates.flatMap((plate) => {
      const { distanceM, from } = gapOf(fuel, plate)
      if (leastM === null || distanceM >= leastM - ROUNDING_M) return []
      const values = { fuel: nameOf(site, fuel.id), at: q('length', distanceM), least: q('length', leastM) }
      return [finding(ID, {
        level: 'CHECK', about: `${fuel.id}:${plate.id}`, items: [fuel.id, plate.id], where: atPoint(from.xM, from.yM), measured: q('length', distanceM), limit: q('length', leastM), bound: 'least', source: sourceOf(limit),
        what: say('The {fuel} stands {at} from the hot plate; {least} is the house rule.', '{fuel} queda a {at} de la placa caliente; la regla de la casa es {least}.', values),
        move: say('Set the fuel {least} off, downhill and in a tray.', 'Ponga el combustible a {least}, cuesta abajo y en charola.', values),
      })]
    }))
    if (found.length > 0) return found
    return [finding(ID, { level: 'met', source: sourceOf(limit), items: fuels.map(({ id }) => id), limit: q('length', leastM), what: say('Fuel stands clear of the hot plate.', 'El combustible queda lejos de la placa caliente.') })]
  },
})
