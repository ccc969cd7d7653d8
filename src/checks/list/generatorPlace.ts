import type { Finding } from '../finding.ts'
import { ROUNDING_M } from '../gearBodies.ts'
import { sourceOf } from '../limits.ts'
import { atPoint, boundFor, defineCheck, finding, nameOf, q, say } from '../make.ts'
import { itemsOf } from '../../derive/itemsOf.ts'
import { gapOf, nearestTo } from '../plainGap.ts'

const ID = 'generator-place'

export const generatorPlace = defineCheck({
  id: ID,
  title: { en: 'Generator and shelter', es: 'Generador y carpa' },
  cost: 'quick',
  run: (site, { limits }) => {
    const [generators, shelters] = [itemsOf(site, 'generator'), itemsOf(site, 'shelter')]
    if (generators.length === 0 || shelters.length === 0) return []
    const limit = limits.limit('generator-shelter')
    const [apartM, besideM] = [boundFor(limit, 'CHECK') ?? 0, limit.fix ?? 0]
    return generators.filter(({ record }) => record.isRunning !== false).map((generator): Finding => {
      const near = nearestTo(generator, shelters)!
      const { from } = gapOf(generator, near.item)
      const values = { generator: nameOf(site, generator.id), at: q('length', near.distanceM), apart: q('length', apartM) }
      const common = { about: generator.id, items: [generator.id, near.item.id], where: atPoint(from.xM, from.yM), phases: ['fuse'] as const, source: sourceOf(limit) }
      if (generator.record.isRunning === null) {
        return finding(ID, {
          ...common, level: 'CHECK', missing: [{ recordId: generator.id, path: 'isRunning', label: { en: 'whether the generator runs while fusing', es: 'si el generador trabaja al fusionar' } }],
          what: say('Nobody has said whether the {generator} near the shelter runs while fusing.', 'Nadie ha dicho si {generator} junto a la carpa trabaja al fusionar.', values), move: say('Say it.', 'Dígalo.'),
        })
      }
      if (near.distanceM === 0) {
        return finding(ID, {
          ...common, level: 'STOP', measured: q('length', 0), limit: q('length', apartM), bound: 'least',
          what: say('The {generator} stands in the shelter: its gas has no smell and kills.', '{generator} queda dentro de la carpa: su gas no huele y mata.', values),
          move: say('Take it out, {apart} or more, downwind.', 'Sáquelo, a {apart} o más, a favor del viento.', values),
        })
      }
      if (near.distanceM < apartM - ROUNDING_M) {
        return finding(ID, {
          ...common, level: near.distanceM < besideM - ROUNDING_M ? 'FIX' : 'CHECK', measured: q('length', near.distanceM), limit: q('length', apartM), bound: 'least',
          what: say('The {generator} stands {at} from the shelter; exhaust drifts in.', '{generator} queda a {at} de la carpa; el humo entra.', values),
          move: say('Set it {apart} or more off, downwind.', 'Póngalo a {apart} o más, a favor del viento.', values),
        })
      }
      return finding(ID, {
        ...common, level: 'CHECK', measured: q('length', near.distanceM), limit: q('length', apartM), bound: 'least',
        what: say('The {generator} stands {at} from the shelter; whether downwind of it only the day can tell.', '{generator} queda a {at} de la carpa; si queda a favor del viento solo se sabe ese día.', values),
        move: say('Turn it downwind each morning; move it when the wind turns.', 'Póngalo a favor del viento cada mañana; muévalo si el viento cambia.'),
      })
    })
  },
})
