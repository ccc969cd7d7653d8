import type { SiteModel } from '../../derive/types.ts'
import { zoneStagesOf } from '../../derive/zoneStages.ts'
import type { Zone } from '../../derive/zones.ts'
import { distanceBetween } from '../../geometry/distance.ts'
import type { Vec } from '../../geometry/vector.ts'
import { recordsOf } from '../../scene/document.ts'
import { phases as allPhases, type Phase } from '../../scene/parts.ts'
import { atPoint, defineCheck, finding, houseRule, listOf, q, say } from '../make.ts'
import { phaseWords } from '../words.ts'

const ID = 'zone-off-site'
/** A hand's breadth over the line is drawing. */
const OVER_M = 0.05

interface Over {
  zone: Zone
  phases: Set<Phase>
  overM: number
  at: Vec
}

export const zoneOffSite = defineCheck({
  id: ID,
  title: { en: 'Zones beyond the boundary', es: 'Zonas fuera del límite' },
  cost: 'slow',
  run: (site) => {
    const yards = recordsOf(site.document, 'boundary').map(({ points }) => points)
    if (yards.length === 0) return []
    const over = [...oversOf(site, yards).values()].toSorted((a, b) => b.overM - a.overM)
    const [worst] = over
    if (worst === undefined) return [finding(ID, { level: 'met', source: houseRule, what: say('Every RED and AMBER zone stays within the boundary.', 'Toda zona ROJA y ÁMBAR queda dentro del límite.') })]
    const phases = allPhases.filter((phase) => over.some((one) => one.phases.has(phase)))
    const names = [...new Map(over.map(({ zone }) => [zone.id, zone.name])).values()]
    return [finding(ID, {
      level: 'CHECK', items: [...new Set(over.flatMap(({ zone }) => zone.itemIds))], where: atPoint(worst.at.xM, worst.at.yM), phases, measured: q('length', worst.overM), limit: q('length', 0), source: houseRule,
      what: say('Zones reach over the boundary, {most} at most: {zones}, in {phases}. It is somebody else’s land.', 'Hay zonas que pasan el límite, {most} a lo más: {zones}, en {phases}. Es terreno ajeno.', { most: q('length', worst.overM), zones: listOf(names, 6), phases: listOf(phases.map((phase) => phaseWords[phase]), 8) }),
      move: say('Ask whose it is and keep people off it at these stages, or move the work.', 'Pregunte de quién es y no deje pasar a nadie en esas etapas, o mueva el trabajo.'),
    })]
  },
})

function oversOf(site: SiteModel, yards: readonly (readonly Vec[])[]): Map<string, Over> {
  const found = new Map<string, Over>()
  const seen = new Map<readonly Vec[], { overM: number; at: Vec } | null>()
  for (const { stage, zones } of zoneStagesOf(site)) {
    for (const zone of zones) {
      if (zone.zoneClass === 'BLUE' || zone.keepsOut !== 'people' || zone.missing.length > 0) continue
      for (const ring of zone.rings) {
        let far = seen.get(ring)
        if (far === undefined) seen.set(ring, (far = farthestOut(ring, yards)))
        if (far === null) continue
        const before = found.get(zone.key)
        if (before === undefined) found.set(zone.key, { zone, phases: new Set([stage.phase]), ...far })
        else {
          before.phases.add(stage.phase)
          if (far.overM > before.overM) Object.assign(before, far)
        }
      }
    }
  }
  return found
}

/** The corner of an outline that lies farthest beyond every yard. */
function farthestOut(ring: readonly Vec[], yards: readonly (readonly Vec[])[]): { overM: number; at: Vec } | null {
  let far: { overM: number; at: Vec } | null = null
  for (const at of ring) {
    const overM = Math.min(...yards.map((points) => distanceBetween({ kind: 'point', point: at }, { kind: 'polygon', points }).distanceM))
    if (overM > OVER_M && (far === null || overM > far.overM)) far = { overM, at }
  }
  return far
}
