import { itemsOf } from '../../derive/itemsOf.ts'
import { walkOf } from '../../derive/walking.ts'
import { limitParam } from '../../engine/limits.ts'
import { sourceOf } from '../limits.ts'
import { atRun, defineCheck, finding, q, say } from '../make.ts'

const ID = 'stick-carry'

export const stickCarry = defineCheck({
  id: ID,
  title: { en: 'A stick against what hands can carry', es: 'Un tubo frente a lo que cargan las manos' },
  cost: 'quick',
  run: (site, { limits }) => {
    const walk = walkOf(site)
    if (walk === null) return []
    const limit = limits.limit('hand-carry')
    const { properties } = site.pipe
    const common = { source: sourceOf(limit), phases: ['offload', 'load'] as const, where: atRun(walk.strungFromM) }
    if (properties === null) {
      const missing = site.pipe.missing.filter(({ path }) => path === 'pipe')
      return [finding(ID, { ...common, level: 'CHECK', about: 'unknown', missing, what: say('What a stick weighs is not known.', 'No se sabe cuánto pesa un tubo.'), move: say('Give the pipe.', 'Dé el tubo.') })]
    }
    const stickN = properties.lineLoadNPerM * site.sticks.stickLengthM!
    const mostN = limit.fix ?? Infinity
    const loaders = itemsOf(site, 'loader')
    const values = { stick: q('force', stickN), most: q('force', mostN), people: Math.ceil(stickN / limitParam(limit, 'perPersonN')) }
    if (stickN <= mostN) return [finding(ID, { ...common, level: 'met', measured: q('force', stickN), limit: q('force', mostN), what: say('A stick weighs {stick}: four people carry it.', 'Un tubo pesa {stick}: lo cargan cuatro personas.', values) })]
    if (loaders.length > 0) {
      return [finding(ID, {
        ...common, level: 'NOTE', measured: q('force', stickN), limit: q('force', mostN), items: loaders.map(({ id }) => id),
        what: say('A stick weighs {stick}: not carried by hand, each goes by the loader.', 'Un tubo pesa {stick}: no se carga a mano, cada uno va con cargador.', values),
        move: say('The loader walks on the road side with a spotter, the stick low and end-on.', 'El cargador va del lado del camino con vigía, el tubo bajo y de punta.'),
      })]
    }
    return [finding(ID, {
      ...common, level: 'FIX', measured: q('force', stickN), limit: q('force', mostN),
      what: say('A stick weighs {stick}: no crew carries it by hand ({people} people at 50 lb), and no loader is on the plan.', 'Un tubo pesa {stick}: ninguna cuadrilla lo carga a mano ({people} personas a 23 kg), y no hay cargador en el plano.', values),
      move: say('Plan a loader with its plate at the reach used.', 'Planee un cargador con su placa al alcance usado.'),
    })]
  },
})
