import type { PlacedItem, SiteModel } from '../../derive/types.ts'
import { limitParam, type Limit } from '../../engine/limits.ts'
import { distanceBetween } from '../../geometry/distance.ts'
import type { PlacedRecord } from '../../scene/kinds/index.ts'
import type { Finding } from '../finding.ts'
import { ROUNDING_M, stringReachM } from '../gearBodies.ts'
import { sourceOf } from '../limits.ts'
import { atPoint, defineCheck, finding, listOf, nameOf, q, say } from '../make.ts'
import { itemsOf, type ItemOf } from '../../derive/itemsOf.ts'
import { pointsOf, runLine } from '../../derive/ways.ts'

const ID = 'emergency-lane-clear'
/** What stands in a lane it is drawn in. */
const standing: ReadonlySet<PlacedRecord['kind']> = new Set(['machine', 'rack', 'loader', 'offload', 'puller', 'stack', 'trailer', 'generator', 'fuel', 'shelter', 'plateHolder', 'cuttingPlace', 'building', 'tree', 'fence', 'barrier', 'anchor', 'redirectBlock', 'water', 'trench'])
const lines: ReadonlySet<PlacedRecord['kind']> = new Set(['fence', 'barrier', 'trench'])

type Lane = ItemOf<'emergencyLane'>

export const emergencyLaneClear = defineCheck({
  id: ID,
  title: { en: 'Emergency lane', es: 'Carril de emergencia' },
  cost: 'quick',
  run: (site, { limits }) => {
    const lanes = itemsOf(site, 'emergencyLane')
    if (lanes.length === 0) return []
    const limit = limits.limit('emergency-lane')
    const found = lanes.flatMap((lane) => [...ofSize(site, lane, limit), ...ofThings(site, lane, limit), ...ofWires(site, lane, limit), ...ofString(site, lane, limit)])
    if (found.length > 0) return found
    return [finding(ID, { level: 'met', source: sourceOf(limit), items: lanes.map(({ id }) => id), what: say('The emergency lane is wide enough and clear.', 'El carril de emergencia es bastante ancho y está libre.') })]
  },
})

const halfOf = ({ record }: Lane, limit: Limit): number => (record.figures.widthM.value ?? limit.fix ?? 0) / 2
const lineOf = ({ record }: Lane): { kind: 'polyline'; points: readonly { xM: number; yM: number }[] } => ({ kind: 'polyline', points: record.points })
const startOf = ({ record }: Lane): Finding['where'] => (record.points[0] === undefined ? null : atPoint(record.points[0].xM, record.points[0].yM))

function ofSize(site: SiteModel, lane: Lane, limit: Limit): Finding[] {
  const { widthM, clearHeightM } = lane.record.figures
  const heightM = limitParam(limit, 'heightM')
  const missing = [
    ...(widthM.value === null ? [{ recordId: lane.id, path: 'figures.widthM.value', label: { en: 'width of the emergency lane', es: 'ancho del carril de emergencia' } }] : []),
    ...(clearHeightM.value === null ? [{ recordId: lane.id, path: 'figures.clearHeightM.value', label: { en: 'clear height of the emergency lane', es: 'altura libre del carril de emergencia' } }] : []),
  ]
  const common = { items: [lane.id], where: startOf(lane), source: sourceOf(limit) }
  const found: Finding[] = missing.length === 0 ? [] : [finding(ID, {
    ...common, level: 'CHECK', about: `${lane.id}:missing`, missing, what: say('The {lane} lacks {inputs}.', 'A {lane} le falta {inputs}.', { lane: nameOf(site, lane.id), inputs: listOf(missing.map(({ label }) => label)) }), move: say('Measure it.', 'Mídalo.'),
  })]
  const tell = (about: string, isM: number | null, leastM: number | null, en: string, es: string): void => {
    if (isM === null || leastM === null || isM >= leastM - ROUNDING_M) return
    const values = { lane: nameOf(site, lane.id), is: q('length', isM), least: q('length', leastM) }
    found.push(finding(ID, {
      ...common, level: 'FIX', about: `${lane.id}:${about}`, measured: q('length', isM), limit: q('length', leastM), bound: 'least', what: say(en, es, values),
      move: say('Give it {least}, or ask the fire marshal.', 'Dele {least}, o pregunte a los bomberos.', values),
    }))
  }
  tell('width', widthM.value, limit.fix, 'The {lane} is {is} wide; a fire engine needs {least}.', '{lane} mide {is} de ancho; un camión de bomberos necesita {least}.')
  tell('height', clearHeightM.value, heightM, 'The {lane} is clear to {is}; a fire engine needs {least}.', '{lane} queda libre hasta {is}; un camión de bomberos necesita {least}.')
  return found
}

/** How far something reaches into the lane; null where it stands clear. */
function reachIn(item: PlacedItem, lane: Lane, limit: Limit): { clearM: number; xM: number; yM: number } | null {
  const points = pointsOf(item.outlineM)
  const { record } = item
  const extraM = record.kind === 'trench' ? (record.figures.widthM.value ?? 0) / 2 : record.kind === 'tree' ? (record.figures.radiusM.value ?? 0) : 0
  const { distanceM, from } = distanceBetween(record.kind === 'tree' || points.length === 0 ? { kind: 'point', point: item } : lines.has(item.kind) ? { kind: 'polyline', points } : { kind: 'polygon', points }, lineOf(lane))
  const clearM = distanceM - extraM - halfOf(lane, limit)
  return clearM < -ROUNDING_M ? { clearM, ...from } : null
}

function ofThings(site: SiteModel, lane: Lane, limit: Limit): Finding[] {
  const inside = [...site.placed.values()].filter(({ kind }) => standing.has(kind)).flatMap((item) => {
    const reach = reachIn(item, lane, limit)
    return reach === null ? [] : [{ item, ...reach }]
  }).toSorted((a, b) => a.clearM - b.clearM)
  const [worst] = inside
  if (worst === undefined) return []
  const values = { lane: nameOf(site, lane.id), things: listOf(inside.map(({ item }) => nameOf(site, item.id))), into: q('length', -worst.clearM) }
  return [finding(ID, {
    level: 'FIX', about: `${lane.id}:things`, items: [lane.id, ...inside.map(({ item }) => item.id)], where: atPoint(worst.xM, worst.yM), measured: q('length', worst.clearM), limit: q('length', 0), bound: 'least', source: sourceOf(limit),
    what: say('In the {lane} stands {things}, {into} into it.', 'En {lane} queda {things}, {into} hacia adentro.', values),
    move: say('Clear the lane: nothing parks here.', 'Despeje el carril: aquí no se estaciona nada.'),
  })]
}

function ofWires(site: SiteModel, lane: Lane, limit: Limit): Finding[] {
  const heightM = limitParam(limit, 'heightM')
  return itemsOf(site, 'overheadLine').flatMap((wire) => {
    const lowM = wire.record.figures.lowestHeightM.value
    if (lowM === null || lowM >= heightM - ROUNDING_M) return []
    const { distanceM, from } = distanceBetween({ kind: 'polyline', points: wire.record.points }, lineOf(lane))
    if (distanceM > halfOf(lane, limit)) return []
    return [finding(ID, {
      level: 'FIX', about: `${lane.id}:${wire.id}`, items: [lane.id, wire.id], where: atPoint(from.xM, from.yM), measured: q('length', lowM), limit: q('length', heightM), bound: 'least', source: sourceOf(limit),
      what: say('{wire} hangs {low} over the {lane}; a fire engine needs {least}.', '{wire} cuelga a {low} sobre {lane}; un camión de bomberos necesita {least}.', { wire: nameOf(site, wire.id), lane: nameOf(site, lane.id), low: q('length', lowM), least: q('length', heightM) }),
      move: say('Lead the lane another way.', 'Lleve el carril por otro lado.'),
    })]
  })
}

/** A string across the lane is no obstacle where somebody opens or bridges it within two minutes. */
function ofString(site: SiteModel, lane: Lane, limit: Limit): Finding[] {
  const reach = stringReachM(site)
  if (reach === null) return []
  const line = runLine(site, reach.fromM, reach.toM)
  const { distanceM, to } = distanceBetween({ kind: 'polyline', points: line }, lineOf(lane))
  if (distanceM > halfOf(lane, limit) + (site.pipe.odM ?? 0) / 2) return []
  const { gapPlan } = lane.record
  if (gapPlan === true) return [finding(ID, {
    level: 'NOTE', about: `${lane.id}:string`, items: [lane.id], where: atPoint(to.xM, to.yM), source: sourceOf(limit),
    what: say('The string lies across the {lane}; the plan to open it within 2 min is said to be there.', 'La sarta cruza {lane}; se dice que hay plan para abrirlo en 2 min.', { lane: nameOf(site, lane.id) }), move: say('Say in the talk who opens it, and try it.', 'Diga en la charla quién lo abre, y pruébelo.'),
  })]
  return [finding(ID, {
    level: 'FIX', about: `${lane.id}:string`, items: [lane.id], where: atPoint(to.xM, to.yM), source: sourceOf(limit),
    ...(gapPlan === null ? { missing: [{ recordId: lane.id, path: 'gapPlan', label: { en: 'plan to open it in 2 min', es: 'plan para abrirlo en 2 min' } }] } : {}),
    what: say('The string lies across the {lane}; it needs a planned gap, a gate or a bridge, open within 2 min.', 'La sarta cruza {lane}; hace falta un hueco previsto, una puerta o un puente, abierto en 2 min.', { lane: nameOf(site, lane.id) }),
    move: say('Plan the gap and ask the fire marshal.', 'Prevea el hueco y pregunte a los bomberos.'),
  })]
}
