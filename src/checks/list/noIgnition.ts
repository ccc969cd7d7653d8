import type { SiteModel } from '../../derive/types.ts'
import { pointsOf } from '../../derive/ways.ts'
import type { Zone } from '../../derive/zones.ts'
import { boxOfRing, zoneStagesOf } from '../../derive/zoneStages.ts'
import { distanceBetween } from '../../geometry/distance.ts'
import { boundingBox, type Box } from '../../geometry/polygon.ts'
import type { Vec } from '../../geometry/vector.ts'
import type { PlacedRecord } from '../../scene/kinds/index.ts'
import { atPoint, defineCheck, finding, nameOf, q, say } from '../make.ts'

const ID = 'no-ignition'
/** Gear that burns, sparks or stays hot. */
const ignites: ReadonlySet<PlacedRecord['kind']> = new Set(['machine', 'generator', 'plateHolder', 'loader', 'puller', 'trailer', 'offload', 'cuttingPlace'])

/** Whether a zone keeps ignition out: round fuel and round a gas vent. */
const keepsIgnitionOut = (site: SiteModel, { keepsOut, itemIds }: Zone): boolean => keepsOut === 'gear' && itemIds.some((id) => ['fuel', 'vent'].includes(site.placed.get(id)?.kind ?? ''))

const boxesMeet = (box: Box, points: readonly Vec[]): boolean => {
  const other = boundingBox(points)
  return other !== null && box.minXM <= other.maxXM && box.maxXM >= other.minXM && box.minYM <= other.maxYM && box.maxYM >= other.minYM
}

export const noIgnition = defineCheck({
  id: ID,
  title: { en: 'Ignition near gas and fuel', es: 'Ignición cerca de gas y combustible' },
  cost: 'slow',
  run: (site) => {
    const zones = new Map(zoneStagesOf(site).flatMap((stage) => stage.zones).filter((zone) => keepsIgnitionOut(site, zone)).map((zone) => [zone.key, zone]))
    const hot = [...site.placed.values()].filter(({ kind, record }) => ignites.has(kind) && !(record.kind === 'generator' && record.isRunning === false))
    return [...zones.values()].filter(({ missing }) => missing.length === 0).flatMap((zone) => hot.flatMap((item) => {
      const outline = pointsOf(item.outlineM)
      const place = outline.length < 3 ? [item] : outline
      if (zone.rings.every((ring) => !boxesMeet(boxOfRing(ring), place))) return []
      const apartM = Math.min(...zone.rings.map((ring) => distanceBetween(outline.length < 3 ? { kind: 'point', point: { xM: item.xM, yM: item.yM } } : { kind: 'polygon', points: outline }, { kind: 'polygon', points: ring }).distanceM))
      if (apartM > 0) return []
      const [sourceId] = zone.itemIds
      return [finding(ID, {
        level: 'FIX', about: `${item.id}:${zone.key}`, items: [item.id, ...zone.itemIds], where: atPoint(item.xM, item.yM), measured: q('length', apartM), limit: q('length', 0), bound: 'least', source: { class: zone.source.class, cite: zone.source.cite },
        what: say('{what} stands within the distance without ignition of {source} ({size}).', '{what} queda dentro de la distancia sin ignición de {source} ({size}).', { what: nameOf(site, item.id), source: nameOf(site, sourceId ?? ''), size: zone.size }),
        move: say('Move one of them out of it.', 'Saque uno de los dos de ahí.'),
      })]
    }))
  },
})
