/** Nearest place beside the run on which a person may stand. */
import { distanceBetween, type Shape } from '../geometry/distance.ts'
import type { Vec } from '../geometry/vector.ts'
import { recordsOf } from '../scene/document.ts'
import type { PlacedItem, SiteModel } from './types.ts'
import type { Zone } from './zones.ts'
import { depthIn } from './zoneStages.ts'

export interface SpotPlace {
  runningM: number
  offsetM: number
}

const STEP_M = 0.25
const MOST_M = 30
/** Far out the steps grow with the distance: nobody minds a foot in thirty yards. */
const COARSER = 1.05
/** A person is this wide from the middle, and keeps off gear by as much. */
const PERSON_M = 0.3
/** Kept off the edge of a zone, so that rounding of the place leaves nobody in it. */
const OFF_EDGE_M = 0.001

/**
 * Nearest place to `from`, to a quarter of a metre (a twentieth of the way far out), outside every RED and AMBER zone given, off machine, rack, buildings,
 * trees, fences and water, and within the boundary. Straight away from the pipe is tried first. Null where there is none
 * within 30 m, or no run.
 */
export function clearSpot(site: SiteModel, from: SpotPlace, zones: readonly Zone[]): SpotPlace | null {
  if (site.run === null) return null
  const solids = solidShapes(site)
  const yards = recordsOf(site.document, 'boundary')
  const shutting = zones.filter(({ zoneClass }) => zoneClass !== 'BLUE')
  const isClear = (point: Vec): boolean =>
    shutting.every((zone) => depthIn(zone, point) <= OFF_EDGE_M / 2)
    && solids.every(({ shape, halfWidthM }) => distanceBetween({ kind: 'point', point }, shape).distanceM > halfWidthM + PERSON_M)
    && (yards.length === 0 || yards.some(({ points }) => distanceBetween({ kind: 'point', point }, { kind: 'polygon', points }).distanceM === 0))
  const side = from.offsetM < 0 ? -1 : 1
  for (let aroundM = 0; aroundM <= MOST_M; aroundM = Math.max(aroundM + STEP_M, aroundM * COARSER)) {
    const count = Math.max(1, Math.ceil((2 * Math.PI * aroundM) / Math.max(0.5, aroundM / 12)))
    for (let i = 0; i < count; i += 1) {
      const turnRad = (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * ((2 * Math.PI) / count)
      const place = { runningM: tidy(from.runningM + aroundM * Math.sin(turnRad)), offsetM: tidy(from.offsetM + side * aroundM * Math.cos(turnRad)) }
      if (isClear(site.atRunning(place.runningM, place.offsetM))) return place
    }
  }
  return null
}

const tidy = (valueM: number): number => Math.round(valueM * 1000) / 1000 + 0

function solidShapes(site: SiteModel): { shape: Shape; halfWidthM: number }[] {
  return [...site.placed.values()].flatMap((item): { shape: Shape; halfWidthM: number }[] => {
    const { record } = item
    if (record.kind === 'machine' || record.kind === 'rack') return [{ shape: { kind: 'polygon', points: pointsOf(item) }, halfWidthM: 0 }]
    if (record.kind === 'building' || record.kind === 'water') return [{ shape: { kind: 'polygon', points: record.points }, halfWidthM: 0 }]
    if (record.kind === 'fence') return [{ shape: { kind: 'polyline', points: record.points }, halfWidthM: 0 }]
    return record.kind === 'tree' ? [{ shape: { kind: 'point', point: item }, halfWidthM: record.figures.radiusM.value ?? 2 }] : []
  })
}

const pointsOf = ({ outlineM }: PlacedItem): Vec[] => Array.from({ length: outlineM.length / 2 }, (_, i) => ({ xM: outlineM[2 * i]!, yM: outlineM[2 * i + 1]! }))
