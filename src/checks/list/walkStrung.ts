import { walkOf } from '../../derive/walking.ts'
import { isUnder } from '../gearBodies.ts'
import { atRun, defineCheck, finding, houseRule, machineIds, q, say } from '../make.ts'
import { roomOf } from '../room.ts'

const ID = 'walk-strung'

export const walkStrung = defineCheck({
  id: ID,
  title: { en: 'Sticks strung out', es: 'Tubos tendidos' },
  cost: 'quick',
  run: (site) => {
    const walk = walkOf(site)
    const last = walk?.joints.at(-1)
    if (walk === null || last === undefined) return []
    const common = { source: houseRule, phases: ['offload'] as const, where: atRun(walk.strungFromM) }
    if (walk.gapM === null) {
      return [finding(ID, {
        ...common, level: 'CHECK', about: 'unknown', missing: walk.missing, items: machineIds(site),
        what: say('How far apart the sticks are strung is not known.', 'No se sabe a qué distancia se tienden los tubos.'),
        move: say('Give the travel of the carriage.', 'Dé la carrera del carro.'),
      })]
    }
    const strungM = walk.strungToM - walk.strungFromM
    const values = { count: walk.sticks.length, least: q('length', walk.gapM.least), most: q('length', walk.gapM.most), strung: q('length', strungM), string: q('length', walk.strungToM), more: q('length', strungM - walk.strungToM), move: q('length', last.moveM), joint: last.joint }
    const room = roomOf(site)
    const overM = room === null ? 0 : Math.max(0, walk.strungToM - room.aheadM) + Math.max(0, 0 - walk.strungFromM - room.backM)
    if (room !== null && isUnder(0, overM)) {
      return [finding(ID, {
        ...common, level: 'FIX', items: [room.boundaryId], measured: q('length', strungM), limit: q('length', room.backM + room.aheadM),
        what: say('{count} sticks with gaps of {least} take {strung}; {over} of it lies beyond the boundary.', '{count} tubos con huecos de {least} ocupan {strung}; {over} queda fuera del límite.', { ...values, over: q('length', overM) }),
        move: say('String them in two lots, or bring the last ones up as the line grows.', 'Tiéndalos en dos tandas, o acerque los últimos según crece la línea.'),
      })]
    }
    return [finding(ID, {
      ...common, level: 'NOTE', measured: q('length', walk.gapM.least),
      what: say('Leave {least} to {most} between sticks, the carriage’s travel and 6 to 12 in. {count} sticks strung take {strung}, {more} more than the string: the loose stick of joint {joint} is drawn up {move}.', 'Deje {least} a {most} entre tubos, la carrera del carro y 6 a 12 pulg. {count} tubos tendidos ocupan {strung}, {more} más que la sarta: el tubo suelto de la junta {joint} se acerca {move}.', values),
      move: say('Nothing else is dragged: the string stays, its tail lifted into the jaws; the loose stick goes on rollers or on the loader.', 'No se arrastra nada más: la sarta queda, su cola levantada a las mordazas; el tubo suelto va en rodillos o en el cargador.'),
    })]
  },
})
