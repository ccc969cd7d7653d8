import { limitParam, type Limit } from '../../engine/limits.ts'
import type { Finding } from '../finding.ts'
import { ROUNDING_M } from '../gearBodies.ts'
import { sourceOf } from '../limits.ts'
import { atPoint, defineCheck, finding, nameOf, q, say } from '../make.ts'
import { itemsOf, type ItemOf } from '../../derive/itemsOf.ts'
import { nearestTo } from '../plainGap.ts'
import type { SiteModel } from '../../derive/types.ts'

const ID = 'extinguisher-reach'

export const extinguisherReach = defineCheck({
  id: ID,
  title: { en: 'Extinguishers near fuel', es: 'Extintores cerca del combustible' },
  cost: 'quick',
  run: (site, { limits }) => {
    const fuels = itemsOf(site, 'fuel')
    if (fuels.length === 0) return []
    const [inUse, stored] = [limits.limit('extinguisher-fuel'), limits.limit('extinguisher-storage')]
    const found = [...unknowns(site, fuels, inUse), ...fuels.filter(({ record }) => record.amount === 'over5Gal').flatMap((fuel) => [...ofUse(site, fuel, inUse), ...ofStorage(site, fuel, stored)])]
    if (found.length > 0) return found
    return [finding(ID, { level: 'met', source: sourceOf(inUse), items: fuels.map(({ id }) => id), what: say('Extinguishers stand where fuel asks for them.', 'Los extintores están donde el combustible los pide.') })]
  },
})

type Fuel = ItemOf<'fuel'>

/** Fuel whose amount, and extinguishers near more than 5 gal whose rating, nobody has said. */
function unknowns(site: SiteModel, fuels: readonly Fuel[], limit: Limit): Finding[] {
  const amounts = fuels.filter(({ record }) => record.amount === null)
  const ratings = fuels.some(({ record }) => record.amount === 'over5Gal') ? itemsOf(site, 'extinguisher').filter(({ record }) => record.rating === null) : []
  const missing = [
    ...amounts.map(({ id }) => ({ recordId: id, path: 'amount', label: { en: 'amount of fuel', es: 'cantidad de combustible' } })),
    ...ratings.map(({ id }) => ({ recordId: id, path: 'rating', label: { en: 'rating of the extinguisher', es: 'capacidad del extintor' } })),
  ]
  if (missing.length === 0) return []
  return [finding(ID, {
    level: 'CHECK', about: 'missing', missing, items: missing.map(({ recordId }) => recordId), source: sourceOf(limit),
    what: amounts.length > 0
      ? say('Nobody has said how much fuel stands here; over 5 gal (19 L) asks for an extinguisher.', 'Nadie ha dicho cuánto combustible hay aquí; más de 5 gal (19 L) pide extintor.')
      : say('Nobody has said what the extinguisher is rated for; it does not count until then.', 'Nadie ha dicho la capacidad del extintor; mientras tanto no cuenta.'),
    move: say('Read it off the plate.', 'Léalo en la placa.'),
  })]
}

function ofUse(site: SiteModel, fuel: Fuel, limit: Limit): Finding[] {
  const near = nearestTo(fuel, itemsOf(site, 'extinguisher').filter(({ record }) => record.rating === '10B' || record.rating === '20B'))
  if (limit.fix === null || (near !== null && near.distanceM <= limit.fix + ROUNDING_M)) return []
  const values = { fuel: nameOf(site, fuel.id), far: q('length', near?.distanceM ?? null), limit: q('length', limit.fix) }
  return [finding(ID, {
    level: 'FIX', about: `${fuel.id}:use`, items: [fuel.id, ...(near === null ? [] : [near.item.id])], where: atPoint(fuel.xM, fuel.yM), measured: q('length', near?.distanceM ?? null), limit: q('length', limit.fix), source: sourceOf(limit),
    what: near === null
      ? say('More than 5 gal in use at the {fuel} and no 10-B extinguisher on the plan.', 'Más de 5 gal en uso en {fuel} y ningún extintor 10-B en el plano.', values)
      : say('The nearest 10-B extinguisher is {far} from the {fuel}; {limit} is the most.', 'El extintor 10-B más cercano queda a {far} de {fuel}; lo más es {limit}.', values),
    move: say('Set one rated 10-B or more within {limit}.', 'Ponga uno de 10-B o más a no más de {limit}.', values),
  })]
}

/** Only the site can tell whether fuel is stored there: a house rule of reading, the distance is the law's. */
function ofStorage(site: SiteModel, fuel: Fuel, limit: Limit): Finding[] {
  const nearM = limitParam(limit, 'nearM')
  const all = itemsOf(site, 'extinguisher').filter(({ record }) => record.rating === '20B')
  const isIn = (distanceM: number): boolean => limit.fix === null || (distanceM >= nearM - ROUNDING_M && distanceM <= limit.fix + ROUNDING_M)
  const near = nearestTo(fuel, all)
  if (all.some((one) => isIn(nearestTo(fuel, [one])!.distanceM))) return []
  const values = { fuel: nameOf(site, fuel.id), near: q('length', nearM), far: q('length', limit.fix), at: q('length', near?.distanceM ?? null) }
  return [finding(ID, {
    level: 'CHECK', about: `${fuel.id}:storage`, items: [fuel.id, ...all.map(({ id }) => id)], where: atPoint(fuel.xM, fuel.yM), measured: q('length', near?.distanceM ?? null), limit: q('length', limit.fix), source: sourceOf(limit),
    what: near === null
      ? say('If the {fuel} is stored here overnight: no 20-B extinguisher on the plan, {near} to {far} from it.', 'Si {fuel} se almacena aquí: ningún extintor 20-B en el plano, de {near} a {far}.', values)
      : say('If the {fuel} is stored here overnight: the 20-B extinguisher is {at} off, not {near} to {far}.', 'Si {fuel} se almacena aquí: el extintor 20-B queda a {at}, no de {near} a {far}.', values),
    move: say('Set a 20-B extinguisher {near} to {far} from it, where a fire does not reach it.', 'Ponga un extintor 20-B de {near} a {far}, donde el fuego no lo alcance.', values),
  })]
}
