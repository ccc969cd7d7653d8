import type { Finding } from '../finding.ts'
import { ROUNDING_M } from '../gearBodies.ts'
import { sourceOf } from '../limits.ts'
import { atPoint, boundFor, defineCheck, finding, houseRule, nameOf, q, say } from '../make.ts'
import { itemsOf, type ItemOf } from '../../derive/itemsOf.ts'
import { nearestTo } from '../plainGap.ts'
import type { SiteModel } from '../../derive/types.ts'

const ID = 'plate-holder'

export const plateHolderPlace = defineCheck({
  id: ID,
  title: { en: 'Place of the hot plate holder', es: 'Lugar del soporte de la placa' },
  cost: 'quick',
  run: (site, { limits }) => {
    const [holders, machines] = [itemsOf(site, 'plateHolder'), itemsOf(site, 'machine')]
    if (holders.length === 0) return []
    const limit = limits.limit('plate-holder')
    const mostM = boundFor(limit, 'CHECK')
    const found = holders.flatMap((holder) => {
      const near = nearestTo(holder, machines)
      const values = { holder: nameOf(site, holder.id), at: q('length', near?.distanceM ?? null), most: q('length', mostM) }
      const far: Finding[] = near === null || mostM === null || near.distanceM <= mostM + ROUNDING_M ? [] : [finding(ID, {
        level: 'CHECK', about: `${holder.id}:far`, items: [holder.id, near.item.id], where: atPoint(holder.xM, holder.yM), phases: ['fuse'], measured: q('length', near.distanceM), limit: q('length', mostM), source: sourceOf(limit),
        what: say('The {holder} stands {at} from the machine; a plate over 400 °F (200 °C) is carried that far. The house rule is {most}.', '{holder} queda a {at} de la máquina; hasta ahí se lleva una placa de más de 200 °C (400 °F). La regla de la casa es {most}.', values),
        move: say('Set it within {most} of the jaws, off everybody’s way.', 'Póngalo a {most} o menos de las mordazas, fuera del paso.', values),
      })]
      return [...far, ...onGround(site, holder)]
    })
    if (found.length > 0) return found
    return [finding(ID, { level: 'met', source: sourceOf(limit), items: holders.map(({ id }) => id), limit: q('length', mostM), what: say('The hot plate has its holder beside the jaws, off dry grass.', 'La placa tiene su soporte junto a las mordazas, fuera del pasto seco.') })]
  },
})

function onGround(site: SiteModel, holder: ItemOf<'plateHolder'>): Finding[] {
  const { onGrass } = holder.record
  if (onGrass === false) return []
  const values = { holder: nameOf(site, holder.id) }
  const common = { about: `${holder.id}:grass`, items: [holder.id], where: atPoint(holder.xM, holder.yM), phases: ['fuse'] as const, source: houseRule }
  if (onGrass === null) return [finding(ID, { ...common, level: 'CHECK', missing: [{ recordId: holder.id, path: 'onGrass', label: { en: 'whether it stands on dry grass', es: 'si está sobre pasto seco' } }], what: say('Nobody has said whether the {holder} stands on dry grass.', 'Nadie ha dicho si {holder} está sobre pasto seco.', values), move: say('Say it.', 'Dígalo.') })]
  return [finding(ID, { ...common, level: 'FIX', what: say('The {holder} stands on dry grass; the plate sets it alight.', '{holder} está sobre pasto seco; la placa lo enciende.', values), move: say('Set it on bare ground or a steel sheet, and wet the grass round it.', 'Póngalo en suelo limpio o sobre lámina, y moje el pasto alrededor.') })]
}
