import { laneClosure } from '../../engine/traffic/laneClosure.ts'
import type { Finding, Source } from '../finding.ts'
import { atPoint, defineCheck, finding, listOf, nameOf, q, say } from '../make.ts'
import { itemsOf, type ItemOf } from '../../derive/itemsOf.ts'
import type { SiteModel } from '../../derive/types.ts'

const ID = 'lane-taper'
const mutcd: Source = { class: 'published', cite: 'MUTCD, 11th edition, Part 6: taper L = WS²/60 to 40 mph, WS from 45 mph; buffer table from memory, confirm', fromMemory: true }

export const laneTaper = defineCheck({
  id: ID,
  title: { en: 'Taper and buffer of a closed lane', es: 'Transición y espacio libre de un carril cerrado' },
  cost: 'quick',
  run: (site) => itemsOf(site, 'trafficLane').filter(({ record }) => record.closed === true).map((lane) => ofLane(site, lane)),
})

function ofLane(site: SiteModel, lane: ItemOf<'trafficLane'>): Finding {
  const { widthM, speedMPerS } = lane.record.figures
  const [start] = lane.record.points
  const common = { level: 'CHECK' as const, about: lane.id, items: [lane.id], where: start === undefined ? null : atPoint(start.xM, start.yM), source: mutcd }
  const missing = [
    ...(widthM.value === null || widthM.value <= 0 ? [{ recordId: lane.id, path: 'figures.widthM.value', label: { en: 'width of the lane', es: 'ancho del carril' } }] : []),
    ...(speedMPerS.value === null || speedMPerS.value <= 0 ? [{ recordId: lane.id, path: 'figures.speedMPerS.value', label: { en: 'speed limit', es: 'límite de velocidad' } }] : []),
  ]
  if (missing.length > 0 || widthM.value === null || speedMPerS.value === null) {
    return finding(ID, {
      ...common, missing, what: say('{lane} is closed; its taper needs {inputs}.', '{lane} está cerrado; para su transición falta {inputs}.', { lane: nameOf(site, lane.id), inputs: listOf(missing.map(({ label }) => label)) }),
      move: say('Give it; the sign at the road says the speed.', 'Délo; la señal del camino dice la velocidad.'),
    })
  }
  const { taperM, shoulderTaperM, bufferM } = laneClosure(widthM.value, speedMPerS.value)
  const values = { lane: nameOf(site, lane.id), taper: q('length', taperM), shoulder: q('length', shoulderTaperM), buffer: q('length', bufferM) }
  return finding(ID, {
    ...common, measured: q('length', taperM),
    what: bufferM === null
      ? say('{lane} closed: a taper of {taper} ({shoulder} where it is a shoulder); the table of buffers ends at 75 mph.', '{lane} cerrado: una transición de {taper} ({shoulder} si es acotamiento); la tabla de espacio libre termina en 75 mph.', values)
      : say('{lane} closed: a taper of {taper} ({shoulder} where it is a shoulder), then {buffer} of empty road before the work.', '{lane} cerrado: una transición de {taper} ({shoulder} si es acotamiento), luego {buffer} de camino libre antes del trabajo.', values),
    move: say('See that both fit before the first gear, and that the traffic plan says the same.', 'Vea que ambos quepan antes del primer equipo, y que el plan de tráfico diga lo mismo.'),
  })
}
