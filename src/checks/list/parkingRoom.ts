import { parkedStringsOf, parkingRowsOf, stringsOf, type ParkedString, type StringView } from '../../derive/strings.ts'
import type { SiteModel } from '../../derive/types.ts'
import { recordsOf } from '../../scene/document.ts'
import { distanceBetween } from '../../geometry/distance.ts'
import type { Finding, Remedy, Source } from '../finding.ts'
import { isUnder, laneBodies, machineBodies } from '../gearBodies.ts'
import { sourceOf } from '../limits.ts'
import { atRun, defineCheck, finding, houseRule, listOf, nameOf, q, say } from '../make.ts'
import { parkedBodies } from '../parkedBodies.ts'
import { leftBeside } from '../leftBeside.ts'

const ID = 'parking-room'
const laneSource: Source = { class: 'published', cite: 'International Fire Code 503, 20 ft clear, from memory, confirm', fromMemory: true }

export const parkingRoom = defineCheck({
  id: ID,
  title: { en: 'Room to park the strings', es: 'Espacio para estacionar las sartas' },
  cost: 'quick',
  run: (site, { limits }) => {
    const strings = stringsOf(site)
    if (strings.length < 2 || site.run === null) return []
    const limit = limits.limit('emergency-width')
    return [...unsaid(site, strings), ...sameRow(site, strings), ...cutLanes(site), ...left(site, limit.check, sourceOf(limit))]
  },
})

const parkAll = (site: SiteModel): Remedy | null => (site.setUp === null ? null : { command: 'parkStrings', args: { setUpId: site.setUp.id }, label: say('Park the strings in rows', 'Estacionar las sartas en filas') })

/** All but the last made have to go somewhere before the next can be begun. */
function unsaid(site: SiteModel, strings: readonly StringView[]): Finding[] {
  const open = strings.slice(0, -1).filter(({ row }) => row === null)
  if (open.length === 0) return []
  return [finding(ID, {
    level: 'CHECK', about: 'row', source: houseRule, phases: ['move'],
    missing: open.map(({ record, name }) => ({ recordId: record.id, path: 'parkingRow', label: { en: `row of string ${name}`, es: `fila de la sarta ${name}` } })),
    what: say('Where {names} lie while the next string is made is not said.', 'No se dice dónde quedan {names} mientras se hace la siguiente sarta.', { names: listOf(open.map(({ name }) => name)) }),
    move: say('Give each a row beside the line.', 'Dé a cada uno una fila junto a la línea.'),
    remedy: parkAll(site),
  })]
}

function sameRow(site: SiteModel, strings: readonly StringView[]): Finding[] {
  const byRow = new Map<string, StringView[]>()
  for (const one of strings) {
    const key = `${one.record.parkingSide}${one.row}`
    if (one.row !== null) byRow.set(key, [...(byRow.get(key) ?? []), one])
  }
  return [...byRow.values()].filter((all) => all.length > 1).map((all) => finding(ID, {
    level: 'FIX', about: `row:${all[0]!.record.parkingSide}${all[0]!.row}`, items: all.map(({ record }) => record.id), source: houseRule, phases: ['move'],
    what: say('{names} are parked in the same row.', '{names} están en la misma fila.', { names: listOf(all.map(({ name }) => name)) }),
    move: say('Give each a row of its own.', 'Dé a cada uno su propia fila.'),
    remedy: parkAll(site),
  }))
}

/** Emergency lanes and vehicle lanes of the plan that a parked string lies on, by the first string that cuts them. */
function cutLanes(site: SiteModel): Finding[] {
  const bodies = parkedBodies(site)
  const parked = parkedStringsOf(site)
  const first = (isOn: (points: (typeof bodies)[number]['points']) => boolean): ParkedString | undefined => parked[bodies.findIndex(({ points }) => isOn(points))]
  const emergency = recordsOf(site.document, 'emergencyLane').flatMap((lane): Finding[] => {
    const widthM = lane.figures.widthM.value ?? 0
    const cut = first((points) => distanceBetween({ kind: 'polygon', points }, { kind: 'polyline', points: lane.points }).distanceM < widthM / 2)
    if (cut === undefined) return []
    const isPlanned = lane.gapPlan === true
    return [finding(ID, {
      level: isPlanned ? 'CHECK' : 'FIX', about: `lane:${lane.id}`, items: [lane.id, cut.view.record.id], where: atRun(cut.fromM, null, cut.offsetM), source: laneSource, phases: ['move', 'rest'],
      what: say('{lane} is cut from string {string} on: it is parked on it.', '{lane} queda cortado desde la sarta {string}: está estacionada encima.', { lane: nameOf(site, lane.id), string: cut.view.name }),
      move: isPlanned
        ? say('Try the opening in two minutes with the string in place.', 'Pruebe la apertura en dos minutos con la sarta puesta.')
        : say('Park fewer strings, join two before the next is parked, or plan a gap that opens in two minutes.', 'Estacione menos sartas, una dos antes de estacionar la siguiente, o planee un hueco que abra en dos minutos.'),
    })]
  })
  const lanes = laneBodies(site).flatMap((lane): Finding[] => {
    const cut = first((points) => distanceBetween({ kind: 'polygon', points }, { kind: 'polygon', points: lane.points }).distanceM <= 0)
    if (cut === undefined) return []
    return [finding(ID, {
      level: 'FIX', about: `lane:${lane.itemIds[0]!}`, items: [lane.itemIds[0]!, cut.view.record.id], where: atRun(cut.fromM, null, cut.offsetM), source: houseRule, phases: ['move', 'load'],
      what: say('String {string} is parked on {lane}.', 'La sarta {string} está estacionada sobre {lane}.', { lane: lane.name, string: cut.view.name }),
      move: say('Park on the other side, or move the lane.', 'Estacione del otro lado, o mueva el carril.'),
    })]
  })
  return [...emergency, ...[...new Map(lanes.map((one) => [one.key, one])).values()]]
}

/** What is left of the yard across: the widest clear strip beside everything that lies on the line and in rows. */
function left(site: SiteModel, wantedM: number | null, source: Source): Finding[] {
  const rows = parkingRowsOf(site)
  const parked = parkedStringsOf(site)
  if (rows === null || parked.length === 0) return []
  const beside = leftBeside(site, parked, machineBodies(site))
  if (beside === null) return []
  const { leftM, takenM, acrossM } = beside
  const values = { count: parked.length, taken: q('length', takenM), across: q('length', acrossM), left: q('length', Math.max(0, leftM)), wanted: q('length', wantedM), spacing: q('length', rows.spacingM) }
  const common = { about: 'left', where: atRun(beside.atM), source, phases: ['move', 'rest'] as const, measured: q('length', leftM), limit: q('length', wantedM), bound: 'least' as const, items: parked.map(({ view }) => view.record.id) }
  const isNarrow = wantedM !== null && isUnder(leftM, wantedM)
  return [finding(ID, {
    ...common, level: isNarrow ? 'CHECK' : 'met',
    what: say('Line and {count} parked strings, {spacing} centre to centre, take {taken} of {across} across; {left} is left clear beside them.', 'Sarta en la línea y {count} sartas estacionadas, a {spacing} entre centros, ocupan {taken} de {across} de ancho; quedan {left} libres al lado.', values),
    ...(isNarrow ? { move: say('An emergency lane takes {wanted}: park fewer and join two during the pull, or leave that way round the yard.', 'Un carril de emergencia pide {wanted}: estacione menos y una dos durante el jalado, o deje ese paso alrededor del patio.', values) } : {}),
  })]
}
