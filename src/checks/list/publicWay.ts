import type { SiteModel } from '../../derive/types.ts'
import { distanceBetween, type Shape } from '../../geometry/distance.ts'
import type { Localized } from '../../messages/localized.ts'
import type { Zone } from '../../derive/zones.ts'
import type { MissingInput } from '../../derive/types.ts'
import type { Phase } from '../../scene/parts.ts'
import type { Finding } from '../finding.ts'
import { gapBetween, isUnder, obstaclesOf, type Gap, type SiteObstacle } from '../gearBodies.ts'
import { atPoint, defineCheck, finding, houseRule, listOf, q, say } from '../make.ts'
import { phaseWords } from '../words.ts'
import type { Box } from '../../geometry/polygon.ts'
import type { Vec } from '../../geometry/vector.ts'
import { boxOfRing, judging, zoneStagesOf } from '../../derive/zoneStages.ts'

const ID = 'public-way'

type Access = 'open' | 'closed' | 'diverted' | null

export const publicWay = defineCheck({
  id: ID,
  title: { en: 'Public ways and zones', es: 'Pasos públicos y zonas' },
  cost: 'slow',
  run: (site) => {
    const ways = obstaclesOf(site, ['walkway', 'road']).filter(({ id }) => !isCrewCrossing(site, id))
    const found = [...unknownWidths(site), ...ways.flatMap((way) => ofWay(site, way))]
    if (found.length > 0 || ways.length === 0) return found
    return [finding(ID, { level: 'met', items: ways.map(({ id }) => id), source: houseRule, what: say('No live RED zone touches a public way.', 'Ninguna zona ROJA activa toca un paso público.') })]
  },
})

/** A walkway that is the crew's crossing over the string and not said to be public. */
const isCrewCrossing = (site: SiteModel, id: string): boolean => {
  const record = site.placed.get(id)?.record
  return record?.kind === 'walkway' && record.isCrossing === true && record.access === null
}

const accessOf = (site: SiteModel, id: string): Access => {
  const record = site.placed.get(id)?.record
  return record?.kind === 'walkway' ? record.access : record?.kind === 'road' ? record.traffic : null
}

interface Touch {
  zone: Zone
  phases: Set<Phase>
  /** Negative by how far the way lies inside. */
  clearM: number
  at: { xM: number; yM: number }
}

/** Upright box of a way with its width. */
function reachOf({ shape, halfWidthM }: SiteObstacle): Box {
  const box = boxOfRing(shape.kind === 'point' ? [shape.point] : shape.points)
  return { minXM: box.minXM - halfWidthM, minYM: box.minYM - halfWidthM, maxXM: box.maxXM + halfWidthM, maxYM: box.maxYM + halfWidthM }
}

const isApart = (a: Box, b: Box): boolean => a.minXM > b.maxXM || b.minXM > a.maxXM || a.minYM > b.maxYM || b.minYM > a.maxYM

/** One finding a way: the zone that reaches farthest over it leads, the others are named. */
function ofWay(site: SiteModel, way: SiteObstacle): Finding[] {
  const touches = new Map<string, Touch>()
  // Stages share their rings: each is measured once a way, and only where its box comes near.
  const gaps = new Map<readonly Vec[], Gap | null>()
  const reach = reachOf(way)
  for (const { stage, zones } of zoneStagesOf(site)) {
    for (const zone of zones) {
      if (zone.zoneClass !== 'RED' || !judging(zone)) continue
      for (const ring of zone.rings) {
        let gap = gaps.get(ring)
        if (gap === undefined) gaps.set(ring, (gap = isApart(boxOfRing(ring), reach) ? null : gapBetween(ring, way)))
        if (gap === null) continue
        const { clearM, to } = gap
        if (!isUnder(clearM, 0) && clearM !== 0) continue
        const before = touches.get(zone.key)
        if (before === undefined) touches.set(zone.key, { zone, phases: new Set([stage.phase]), clearM, at: to })
        else {
          before.phases.add(stage.phase)
          if (clearM < before.clearM) Object.assign(before, { clearM, at: to })
        }
      }
    }
  }
  if (touches.size === 0) return []
  const all = [...touches.values()].toSorted((a, b) => a.clearM - b.clearM)
  const [worst] = all
  const phases = [...new Set(all.flatMap((touch) => [...touch.phases]))]
  const access = accessOf(site, way.id)
  const common = { about: way.id, items: [way.id, ...new Set(all.flatMap(({ zone }) => zone.itemIds))], where: atPoint(worst!.at.xM, worst!.at.yM), phases, source: { class: worst!.zone.source.class, cite: worst!.zone.source.cite } }
  const values = { way: way.name, zones: listOf(all.map(({ zone }) => zone.name)), phases: listOf(phases.map((phase) => phaseWords[phase]), 8), size: worst!.zone.size }
  if (access === null) {
    const isRoad = way.kind === 'road'
    return [finding(ID, {
      ...common, level: 'CHECK', missing: [{ recordId: way.id, path: isRoad ? 'traffic' : 'access', label: isRoad ? { en: 'traffic on the road', es: 'tráfico del camino' } : { en: 'whether the walkway is open', es: 'si el paso está abierto' } }],
      what: say('{way} lies in live RED zones ({zones}; {phases}) and nobody has said whether it is open.', '{way} queda en zonas ROJAS activas ({zones}; {phases}) y nadie ha dicho si está abierto.', values),
      move: say('Say whether it is open, closed or diverted at these stages.', 'Diga si está abierto, cerrado o desviado en esas etapas.'),
    })]
  }
  if (access === 'open') {
    const shut = shutWays(site, way, phases)
    if (shut.isShut) {
      return [finding(ID, {
        ...common, level: 'CHECK',
        what: say('{way} is shut in {phases} by a marshal and a barrier, while it lies in RED zones: {zones}.', '{way} se cierra en {phases} con controlador y barrera, mientras queda en zonas ROJAS: {zones}.', values),
        move: say('Marshal and barrier in place before each of these stages; open it again after.', 'Controlador y barrera puestos antes de cada una de esas etapas; ábralo después.'),
      })]
    }
    if (shut.lacks.length > 0) {
      return [finding(ID, {
        ...common, level: 'STOP', measured: q('length', worst!.clearM), limit: q('length', 0), bound: 'least',
        what: say('{way} lies in live RED zones ({zones}; {phases}) and is to be shut then, but the plan lacks {lacks}.', '{way} queda en zonas ROJAS activas ({zones}; {phases}) y se cerraría entonces, pero al plano le falta {lacks}.', { ...values, lacks: listOf(shut.lacks, 8) }),
        move: say('Draw the marshal’s spot and the barrier at the way, and shut it in each of these stages.', 'Dibuje el puesto del controlador y la barrera en el paso, y ciérrelo en cada una de esas etapas.'),
      })]
    }
    return [finding(ID, {
      ...common, level: 'STOP', measured: q('length', worst!.clearM), limit: q('length', 0), bound: 'least',
      what: say(
        '{way} is open and lies in a live RED zone: {zones}, in {phases}. The hazard is the reason; the width of the zone ({size}) is a house rule.',
        '{way} está abierto y queda en una zona ROJA activa: {zones}, en {phases}. La razón es el peligro; el ancho de la zona ({size}) es regla de la casa.', values),
      move: say('Close it at these stages with a marshal and a barrier, divert it, or move the work.', 'Ciérrelo en esas etapas con controlador y barrera, desvíelo, o mueva el trabajo.'),
    })]
  }
  return [finding(ID, {
    ...common, level: 'CHECK',
    what: access === 'closed'
      ? say('{way} is closed while it lies in RED zones: {zones}, in {phases}.', '{way} está cerrado mientras queda en zonas ROJAS: {zones}, en {phases}.', values)
      : say('{way} is diverted while it lies in RED zones: {zones}, in {phases}.', '{way} está desviado mientras queda en zonas ROJAS: {zones}, en {phases}.', values),
    move: access === 'closed'
      ? say('Marshal and barrier in place before each of these stages.', 'Controlador y barrera puestos antes de cada una de esas etapas.')
      : say('See that people take the diversion, 4 ft (1.2 m) wide and firm, outside every zone.', 'Vea que la gente tome el desvío, de 4 pies (1.2 m) y firme, fuera de toda zona.'),
  })]
}

/** A marshal keeps a way this near; a barrier stands at it. */
const MARSHAL_M = 15.24
const BARRIER_M = 3.048

/**
 * Whether an open way is shut in all phases a zone touches it: said so, a marshal's spot by it in those phases, a barrier
 * drawn at it. `lacks` names what is missing where shutting is meant; it is empty where nobody means to.
 */
function shutWays(site: SiteModel, way: SiteObstacle, phases: readonly Phase[]): { isShut: boolean; lacks: Localized[] } {
  const record = site.placed.get(way.id)?.record
  if (record?.kind !== 'walkway' || record.closedPhases.length === 0) return { isShut: false, lacks: [] }
  const items = [...site.placed.values()]
  const distanceTo = (shape: Shape): number => distanceBetween(shape, way.shape).distanceM - way.halfWidthM
  const open = phases.filter((phase) => !record.closedPhases.includes(phase))
  const unwatched = phases.filter((phase) => !items.some(({ record: spot, xM, yM }) => spot.kind === 'crew' && spot.role === 'marshal' && spot.phases.includes(phase) && distanceTo({ kind: 'point', point: { xM, yM } }) <= MARSHAL_M))
  const hasBarrier = items.some(({ record: one }) => one.kind === 'barrier' && distanceTo({ kind: 'polyline', points: one.points }) <= BARRIER_M)
  const named = (list: readonly Phase[]): Localized => listOf(list.map((phase) => phaseWords[phase]), 8)
  const lacks: Localized[] = [
    ...(open.length === 0 ? [] : [{ en: `shutting in ${named(open).en}`, es: `el cierre en ${named(open).es}` }]),
    ...(unwatched.length === 0 ? [] : [{ en: `a marshal within 50 ft in ${named(unwatched).en}`, es: `un controlador a no más de 50 pies (15 m) en ${named(unwatched).es}` }]),
    ...(hasBarrier ? [] : [{ en: 'a barrier at it', es: 'una barrera en él' }]),
  ]
  return { isShut: lacks.length === 0, lacks }
}

function unknownWidths(site: SiteModel): Finding[] {
  const missing: MissingInput[] = [...site.placed.values()].flatMap(({ record }) => (record.kind === 'walkway' && record.figures.widthM.value === null ? [{ recordId: record.id, path: 'figures.widthM.value', label: { en: 'width of the walkway', es: 'ancho del paso' } }] : []))
  return missing.length === 0 ? [] : [finding(ID, {
    level: 'CHECK', about: 'width', missing, items: missing.map(({ recordId }) => recordId), source: houseRule,
    what: say('A public way has no width yet; whether a zone touches it is not known.', 'Un paso público aún no tiene ancho; no se sabe si una zona lo toca.'),
    move: say('Give its width.', 'Dé su ancho.'),
  })]
}
