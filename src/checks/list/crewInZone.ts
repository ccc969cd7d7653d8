import type { PlacedItem, SiteModel } from '../../derive/types.ts'
import type { Zone } from '../../derive/zones.ts'
import { distanceBetween } from '../../geometry/distance.ts'
import type { Vec } from '../../geometry/vector.ts'
import type { Localized } from '../../messages/localized.ts'
import { recordsOf } from '../../scene/document.ts'
import { crewRoles, type CrewRecord } from '../../scene/kinds/crew.ts'
import type { Phase } from '../../scene/parts.ts'
import type { Finding, Remedy } from '../finding.ts'
import { gapBetween, isLocked, machineBodies, obstaclesOf, rackBodies, solidKinds } from '../gearBodies.ts'
import { atPoint, defineCheck, finding, houseRule, listOf, q, say } from '../make.ts'
import { phaseWords } from '../words.ts'
import { depthIn, judging, zoneStagesOf, type ZonesOfStage } from '../zoneStages.ts'

const ID = 'crew-in-zone'
/** A spot on the edge of a zone keeps its distance; a millimetre is rounding. */
const INSIDE_M = 0.001
/** Two spots nearer than this are one place. */
const SAME_PLACE_M = 0.3
/** Tasks one person does alone; others may have several. */
const LONE_TASKS: ReadonlySet<CrewRecord['role']> = new Set(['operator', 'exitHand', 'noseSpotter', 'pullerOperator'])

export const roleName = (role: CrewRecord['role']): Localized => crewRoles.find(({ value }) => value === role)?.label ?? { en: role, es: role }

interface Spot extends PlacedItem {
  record: CrewRecord
}

export const crewInZone = defineCheck({
  id: ID,
  title: { en: 'Crew spots and zones', es: 'Puestos y zonas' },
  cost: 'slow',
  run: (site) => {
    const spots = [...site.placed.values()].filter((item): item is Spot => item.record.kind === 'crew')
    if (spots.length === 0) return []
    const stages = zoneStagesOf(site)
    const found = [...spots.flatMap((spot) => ofSpot(site, spot, stages)), ...shared(spots)]
    if (found.length > 0) return found
    return [finding(ID, { level: 'met', measured: q('count', spots.length), source: houseRule, items: spots.map(({ id }) => id), what: say('No crew spot lies in a zone that is live while it is used.', 'Ningún puesto queda en una zona activa mientras se usa.') })]
  },
})

interface Inside {
  zone: Zone
  phases: Set<Phase>
  depthM: number
}

/** Zones a spot lies in while it is used and which do not let its role in, by class. */
function ofSpot(site: SiteModel, spot: Spot, stages: readonly ZonesOfStage[]): Finding[] {
  const inside = new Map<string, Inside>()
  for (const { stage, zones } of stages) {
    if (!spot.record.phases.includes(stage.phase)) continue
    for (const zone of zones) {
      if (zone.zoneClass === 'BLUE' || !judging(zone) || zone.mayEnter.includes(spot.record.role)) continue
      const depthM = depthIn(zone, spot)
      if (depthM <= INSIDE_M) continue
      const key = `${zone.zoneClass}:${zone.key}`
      const before = inside.get(key)
      if (before === undefined) inside.set(key, { zone, phases: new Set([stage.phase]), depthM })
      else {
        before.phases.add(stage.phase)
        before.depthM = Math.max(before.depthM, depthM)
      }
    }
  }
  const red = [...inside.values()].filter(({ zone }) => zone.zoneClass === 'RED')
  const amber = [...inside.values()].filter(({ zone }) => zone.zoneClass === 'AMBER')
  return [...red.map((one) => inRed(site, spot, one, stages)), ...amber.map((one) => inAmber(spot, one))]
}

const phaseList = (used: ReadonlySet<Phase>): Localized => listOf([...used].map((phase) => phaseWords[phase]), 8)

function inRed(site: SiteModel, spot: Spot, { zone, phases, depthM }: Inside, stages: readonly ZonesOfStage[]): Finding {
  const clear = clearPlace(site, spot, stages)
  const values = { role: roleName(spot.record.role), zone: zone.name, phases: phaseList(phases), depth: q('length', depthM), size: zone.size, ...(clear === null ? {} : { at: { runningM: clear.runningM }, offset: { offsetM: clear.offsetM } }) }
  return finding(ID, {
    level: 'STOP', about: `${spot.id}:${zone.key}`, items: [spot.id, ...zone.itemIds], where: atPoint(spot.xM, spot.yM), phases: [...phases],
    measured: q('length', depthM), limit: q('length', 0), source: { class: zone.source.class, cite: zone.source.cite },
    what: say(
      'The {role} stands {depth} inside a live RED zone: {zone}, in {phases}. The hazard is the reason; its width ({size}) is a house rule.',
      'El puesto de {role} queda {depth} dentro de una zona ROJA activa: {zone}, en {phases}. La razón es el peligro; su ancho ({size}) es regla de la casa.', values),
    move: clear === null
      ? say('Move the {role} out of it, or stop that work while somebody stands there.', 'Saque al {role} de ahí, o pare ese trabajo mientras haya alguien.', values)
      : say('Stand at {at}, {offset}.', 'Ubíquelo en {at}, {offset}.', values),
    remedy: clear === null ? null : moveTo(spot, clear),
  })
}

const moveTo = (spot: Spot, clear: ClearPlace): Remedy => ({
  command: 'setOnRun', args: { id: spot.id, runningM: clear.runningM, offsetM: clear.offsetM },
  label: say('Move the {role} to {at}, {offset}', 'Mover a {role} a {at}, {offset}', { role: roleName(spot.record.role), at: { runningM: clear.runningM }, offset: { offsetM: clear.offsetM } }),
})

function inAmber(spot: Spot, { zone, phases, depthM }: Inside): Finding {
  const allowed = zone.mayEnter.length === 0 ? { en: 'nobody', es: 'nadie' } : listOf(zone.mayEnter.map(roleName))
  const values = { role: roleName(spot.record.role), zone: zone.name, phases: phaseList(phases), allowed }
  return finding(ID, {
    level: 'CHECK', about: `${spot.id}:${zone.key}`, items: [spot.id, ...zone.itemIds], where: atPoint(spot.xM, spot.yM), phases: [...phases],
    measured: q('length', depthM), limit: q('length', 0), source: { class: zone.source.class, cite: zone.source.cite },
    what: say('The {role} stands in an AMBER zone: {zone}, in {phases}. Who may be there: {allowed}.', 'El puesto de {role} queda en una zona ÁMBAR: {zone}, en {phases}. Pueden estar ahí: {allowed}.', values),
    move: say('Move the {role} out of it, or work there only in sight of the operator.', 'Saque al {role} de ahí, o trabaje ahí solo a la vista del operador.', values),
  })
}

interface ClearPlace {
  runningM: number
  offsetM: number
}

const STEP_M = 0.25
const MOST_STEPS = 120

/**
 * Nearest place beside the run, to a quarter of a metre, that no RED zone of the spot's phases covers, no AMBER one that
 * shuts its role out, and nothing stands on; within the boundary. Null where there is none within 30 m.
 */
export function clearPlace(site: SiteModel, spot: PlacedItem & { record: CrewRecord }, stages: readonly ZonesOfStage[]): ClearPlace | null {
  if (site.run === null || spot.runningM === null || spot.offsetM === null || isLocked(site, spot.id)) return null
  const zones = stages.filter(({ stage }) => spot.record.phases.includes(stage.phase)).flatMap(({ zones: live }) => live)
  return nearestClear(site, { runningM: spot.runningM, offsetM: spot.offsetM }, zones.filter((zone) => judging(zone) && !zone.mayEnter.includes(spot.record.role)))
}

export function nearestClear(site: SiteModel, from: ClearPlace, zones: readonly Zone[]): ClearPlace | null {
  const solids = obstaclesOf(site, solidKinds)
  const gear = [...machineBodies(site), ...rackBodies(site)]
  const yards = recordsOf(site.document, 'boundary')
  const isClear = (point: Vec): boolean =>
    zones.every((zone) => zone.zoneClass === 'BLUE' || depthIn(zone, point) <= 0)
    && gear.every(({ points }) => gapBetween(points, { shape: { kind: 'point', point }, halfWidthM: 0.3 }).clearM > 0)
    && solids.every(({ shape, halfWidthM }) => distanceBetween({ kind: 'point', point }, shape).distanceM > halfWidthM + 0.3)
    && (yards.length === 0 || yards.some(({ points }) => distanceBetween({ kind: 'point', point }, { kind: 'polygon', points }).distanceM === 0))
  const side = from.offsetM < 0 ? -1 : 1
  for (let step = 0; step <= MOST_STEPS; step += 1) {
    const aroundM = step * STEP_M
    const count = Math.max(1, Math.ceil((2 * Math.PI * aroundM) / 0.5))
    for (let i = 0; i < count; i += 1) {
      // Outward from the pipe first, then turning away from it by turns to both sides.
      const turn = (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * ((2 * Math.PI) / count)
      const place = { runningM: tidy(from.runningM + aroundM * Math.sin(turn)), offsetM: tidy(from.offsetM + side * aroundM * Math.cos(turn)) }
      if (isClear(site.atRunning(place.runningM, place.offsetM))) return place
    }
  }
  return null
}

const tidy = (valueM: number): number => Math.round(valueM * 1000) / 1000 + 0

/** One person, one place: a lone task has one spot in a phase, and no two spots are one place. */
function shared(spots: readonly Spot[]): Finding[] {
  return spots.flatMap((one, i) => spots.slice(i + 1).flatMap((other): Finding[] => {
    const both = one.record.phases.filter((phase) => other.record.phases.includes(phase))
    if (both.length === 0) return []
    const apartM = Math.hypot(one.xM - other.xM, one.yM - other.yM)
    const common = { level: 'CHECK' as const, items: [one.id, other.id], where: atPoint(other.xM, other.yM), phases: both, source: houseRule }
    const values = { first: roleName(one.record.role), second: roleName(other.record.role), phases: phaseList(new Set(both)) }
    if (one.record.role === other.record.role && LONE_TASKS.has(one.record.role)) {
      return [finding(ID, {
        ...common, about: `${one.id}:${other.id}:task`,
        what: say('Two spots for one {first} in {phases}.', 'Dos puestos para un {first} en {phases}.', values),
        move: say('Keep one spot for each phase.', 'Deje un puesto para cada fase.'),
      })]
    }
    if (apartM >= SAME_PLACE_M) return []
    return [finding(ID, {
      ...common, about: `${one.id}:${other.id}:place`, measured: q('length', apartM), limit: q('length', SAME_PLACE_M), bound: 'least',
      what: say('{first} and {second} share one spot in {phases}.', '{first} y {second} comparten un puesto en {phases}.', values),
      move: say('Give each task its own spot.', 'Dé a cada tarea su propio puesto.'),
    })]
  }))
}
