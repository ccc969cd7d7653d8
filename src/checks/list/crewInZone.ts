import type { SiteModel } from '../../derive/types.ts'
import { clearSpot, type SpotPlace } from '../../derive/clearSpot.ts'
import { spotsOf, type Spot } from '../../derive/people/spots.ts'
import type { Zone } from '../../derive/zones.ts'
import { depthIn, judging, zoneStagesOf, type ZonesOfStage } from '../../derive/zoneStages.ts'
import type { Localized } from '../../messages/localized.ts'
import { crewRoles, type CrewRecord } from '../../scene/kinds/crew.ts'
import type { Phase } from '../../scene/parts.ts'
import type { Finding, Remedy } from '../finding.ts'
import { isLocked } from '../gearBodies.ts'
import { atPoint, defineCheck, finding, houseRule, listOf, q, say } from '../make.ts'
import { phaseWords } from '../words.ts'

const ID = 'crew-in-zone'
/** A spot on the edge of a zone keeps its distance; a millimetre is rounding. */
const INSIDE_M = 0.001
/** Two spots nearer than this are one place. */
const SAME_PLACE_M = 0.3
/** Tasks one person does alone; others may have several. */
const LONE_TASKS: ReadonlySet<CrewRecord['role']> = new Set(['operator', 'exitHand', 'noseSpotter', 'pullerOperator'])

export const roleName = (role: CrewRecord['role']): Localized => crewRoles.find(({ value }) => value === role)?.label ?? { en: role, es: role }

export const crewInZone = defineCheck({
  id: ID,
  title: { en: 'Crew spots and zones', es: 'Puestos y zonas' },
  cost: 'slow',
  run: (site) => {
    const spots = spotsOf(site)
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
  // Stages share the outlines of their zones: each is measured once a spot.
  const depths = new Map<Zone['rings'], number>()
  for (const { stage, zones } of stages) {
    if (!spot.record.phases.includes(stage.phase)) continue
    for (const zone of zones) {
      if (zone.zoneClass === 'BLUE' || !judging(zone) || zone.mayEnter.includes(spot.record.role)) continue
      const depthM = depths.get(zone.rings) ?? depthIn(zone, spot)
      depths.set(zone.rings, depthM)
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
  // One search serves every zone the spot lies in.
  const clear = red.length === 0 ? null : clearPlace(site, spot, stages)
  return [...red.map((one) => inRed(spot, one, clear)), ...(amber.length === 0 ? [] : [inAmber(spot, amber)])]
}

const phaseList = (used: ReadonlySet<Phase>): Localized => listOf([...used].map((phase) => phaseWords[phase]), 8)

function inRed(spot: Spot, { zone, phases, depthM }: Inside, clear: SpotPlace | null): Finding {
  const values = { role: roleName(spot.record.role), zone: zone.name, phases: phaseList(phases), depth: q('length', depthM), size: zone.size, ...(clear === null ? {} : { at: { runningM: clear.runningM }, offset: { offsetM: clear.offsetM } }) }
  return finding(ID, {
    level: 'STOP', about: `${spot.id}:${zone.key}:RED`, items: [spot.id, ...zone.itemIds], where: atPoint(spot.xM, spot.yM), phases: [...phases],
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

const moveTo = (spot: Spot, clear: SpotPlace): Remedy => ({
  command: 'setOnRun', args: { id: spot.id, runningM: clear.runningM, offsetM: clear.offsetM },
  label: say('Move the {role} to {at}, {offset}', 'Mover a {role} a {at}, {offset}', { role: roleName(spot.record.role), at: { runningM: clear.runningM }, offset: { offsetM: clear.offsetM } }),
})

/** One finding a spot, however many AMBER zones lie over it: the deepest leads, the others are named. */
function inAmber(spot: Spot, all: readonly Inside[]): Finding {
  const sorted = all.toSorted((a, b) => b.depthM - a.depthM)
  const { zone, depthM } = sorted[0]!
  const phases = new Set(sorted.flatMap((one) => [...one.phases]))
  const allowed = zone.mayEnter.length === 0 ? { en: 'nobody', es: 'nadie' } : listOf(zone.mayEnter.map(roleName))
  const values = { role: roleName(spot.record.role), zone: zone.name, zones: listOf(unique(sorted.map((one) => one.zone.name))), phases: phaseList(phases), allowed }
  return finding(ID, {
    level: 'CHECK', about: `${spot.id}:AMBER`, items: [...new Set([spot.id, ...sorted.flatMap((one) => one.zone.itemIds)])], where: atPoint(spot.xM, spot.yM), phases: [...phases],
    measured: q('length', depthM), limit: q('length', 0), source: { class: zone.source.class, cite: zone.source.cite },
    what: sorted.length === 1
      ? say('The {role} stands in an AMBER zone: {zone}, in {phases}. Who may be there: {allowed}.', 'El puesto de {role} queda en una zona ÁMBAR: {zone}, en {phases}. Pueden estar ahí: {allowed}.', values)
      : say('The {role} stands in AMBER zones that do not name the task: {zones}, in {phases}.', 'El puesto de {role} queda en zonas ÁMBAR que no nombran su tarea: {zones}, en {phases}.', values),
    move: say('Move the {role} out of it, or work there only in sight of the operator.', 'Saque al {role} de ahí, o trabaje ahí solo a la vista del operador.', values),
  })
}

const unique = (names: readonly Localized[]): Localized[] => [...new Map(names.map((name) => [name.en, name])).values()]

/** Nearest clear place of a spot beside the run; null where it is locked, lies on no run, or there is none within 30 m. */
function clearPlace(site: SiteModel, spot: Spot, stages: readonly ZonesOfStage[]): SpotPlace | null {
  if (spot.runningM === null || spot.offsetM === null || isLocked(site, spot.id)) return null
  const { phases, role } = spot.record
  return clearSpot(site, { runningM: spot.runningM, offsetM: spot.offsetM }, stages.filter(({ stage }) => phases.includes(stage.phase)).flatMap(({ zones }) => zones).filter((zone) => judging(zone) && !zone.mayEnter.includes(role)))
}

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
