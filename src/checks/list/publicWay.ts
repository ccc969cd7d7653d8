import type { SiteModel } from '../../derive/types.ts'
import type { Zone } from '../../derive/zones.ts'
import type { MissingInput } from '../../derive/types.ts'
import type { Phase } from '../../scene/parts.ts'
import type { Finding } from '../finding.ts'
import { gapBetween, isUnder, obstaclesOf, type SiteObstacle } from '../gearBodies.ts'
import { atPoint, defineCheck, finding, houseRule, listOf, q, say } from '../make.ts'
import { phaseWords } from '../words.ts'
import { judging, zoneStagesOf } from '../../derive/zoneStages.ts'

const ID = 'public-way'

type Access = 'open' | 'closed' | 'diverted' | null

export const publicWay = defineCheck({
  id: ID,
  title: { en: 'Public ways and zones', es: 'Pasos públicos y zonas' },
  cost: 'slow',
  run: (site) => {
    const ways = obstaclesOf(site, ['walkway', 'road'])
    const found = [...unknownWidths(site), ...ways.flatMap((way) => ofWay(site, way))]
    if (found.length > 0 || ways.length === 0) return found
    return [finding(ID, { level: 'met', items: ways.map(({ id }) => id), source: houseRule, what: say('No live RED zone touches a public way.', 'Ninguna zona ROJA activa toca un paso público.') })]
  },
})

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

/** One finding a way: the zone that reaches farthest over it leads, the others are named. */
function ofWay(site: SiteModel, way: SiteObstacle): Finding[] {
  const touches = new Map<string, Touch>()
  for (const { stage, zones } of zoneStagesOf(site)) {
    for (const zone of zones) {
      if (zone.zoneClass !== 'RED' || !judging(zone)) continue
      for (const ring of zone.rings) {
        const { clearM, to } = gapBetween(ring, way)
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

function unknownWidths(site: SiteModel): Finding[] {
  const missing: MissingInput[] = [...site.placed.values()].flatMap(({ record }) => (record.kind === 'walkway' && record.figures.widthM.value === null ? [{ recordId: record.id, path: 'figures.widthM.value', label: { en: 'width of the walkway', es: 'ancho del paso' } }] : []))
  return missing.length === 0 ? [] : [finding(ID, {
    level: 'CHECK', about: 'width', missing, items: missing.map(({ recordId }) => recordId), source: houseRule,
    what: say('A public way has no width yet; whether a zone touches it is not known.', 'Un paso público aún no tiene ancho; no se sabe si una zona lo toca.'),
    move: say('Give its width.', 'Dé su ancho.'),
  })]
}
