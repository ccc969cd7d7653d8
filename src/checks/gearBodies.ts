/** What the gear covers in plan, standing and moving, for clearances by exact distance (docs/formulas/clearance.md). */
import { distanceBetween, type Shape } from '../geometry/distance.ts'
import { add, along, distanceM, subtract, type Vec } from '../geometry/vector.ts'
import { itemsOf } from '../derive/itemsOf.ts'
import type { SiteModel } from '../derive/types.ts'
import { pointsOf } from '../derive/ways.ts'
import { aroundLine } from '../derive/zones/shapes.ts'
import type { Localized } from '../messages/localized.ts'
import type { PlacedRecord } from '../scene/kinds/index.ts'
import type { LoaderRecord } from '../scene/kinds/loader.ts'
import type { PullerRecord } from '../scene/kinds/puller.ts'
import { levelOrder, type Finding } from './finding.ts'
import { nameOf } from './make.ts'

export type BodyRole = 'string' | 'parked' | 'machine' | 'rack' | 'puller' | 'loader' | 'offload' | 'lane'

/** A filled polygon the gear covers at some stage. */
export interface GearBody {
  role: BodyRole
  /** Records it is; empty for the string. */
  itemIds: readonly string[]
  name: Localized
  points: readonly Vec[]
  /** What it drives over, not where it is drawn. */
  isSweep?: boolean
}

/** Kinds that stand in the way of everything. */
export const solidKinds = ['building', 'fence', 'tree', 'water'] as const satisfies readonly PlacedRecord['kind'][]

/** Arcs are followed with their chords within this of the arc. */
const ARC_SAG_M = 0.001
/** Figures below this against a limit are rounding of the coordinates. */
export const ROUNDING_M = 1e-6

/** Whether the item must stay where it is. */
export const isLocked = (site: SiteModel, id: string): boolean => site.placed.get(id)?.record.locked === true

export const isUnder = (valueM: number, limitM: number): boolean => valueM < limitM - ROUNDING_M

/** Running distances from one to another at which a strip along the run needs a corner. */
function stationsOf(site: Pick<SiteModel, 'bends'>, fromM: number, toM: number): number[] {
  const bends = site.bends.flatMap((bend) => {
    const lengthM = bend.toM - bend.fromM
    if (!(lengthM > 0)) return [bend.fromM - 1e-6, bend.fromM + 1e-6]
    const radiusM = lengthM / Math.abs(bend.turnRad)
    const steps = Math.max(1, Math.ceil(lengthM / Math.sqrt(8 * radiusM * ARC_SAG_M)))
    return Array.from({ length: steps + 1 }, (_, i) => bend.fromM + (i * lengthM) / steps)
  })
  return [fromM, ...bends.filter((at) => at > fromM && at < toM), toM]
}

/** Outline of a strip along the run, flat at both ends. */
export const runStrip = (site: SiteModel, fromM: number, toM: number, halfWidthM: number): Vec[] => runStripBeside(site, { fromM, toM, offsetM: 0, halfWidthM })

/** The same beside the run, its middle at an offset, right positive. */
export function runStripBeside(site: SiteModel, { fromM, toM, offsetM, halfWidthM }: { fromM: number; toM: number; offsetM: number; halfWidthM: number }): Vec[] {
  const stations = stationsOf(site, fromM, toM)
  const side = (atM: number): Vec[] => stations.map((runningM) => {
    const { xM, yM } = site.atRunning(runningM, atM)
    return { xM, yM }
  })
  return [...side(offsetM + halfWidthM), ...side(offsetM - halfWidthM).reverse()]
}

/** The run's middle line between two running distances, each point with its own. */
export const runLine = (site: SiteModel, fromM: number, toM: number): { runningM: number; xM: number; yM: number }[] =>
  stationsOf(site, fromM, toM).map((runningM) => {
    const { xM, yM } = site.atRunning(runningM)
    return { runningM, xM, yM }
  })

/** Where string and stick lie at most: one stick behind the datum to the nose of the finished string. Null while the stick length is unknown. */
export function stringReachM(site: SiteModel): { fromM: number; toM: number } | null {
  const { stickLengthM, stickCount, stringLengthM } = site.sticks
  return stickLengthM === null || site.run === null ? null : { fromM: 0 - stickLengthM, toM: stringLengthM(stickCount) }
}

/** Swept strip of the string, from the stick in the infeed to the nose at its farthest. */
export function stringBody(site: SiteModel, reach = stringReachM(site)): GearBody | null {
  if (reach === null || site.pipe.odM === null) return null
  return { role: 'string', itemIds: site.run === null ? [] : [site.run.id], name: { en: 'the string', es: 'la sarta' }, points: runStrip(site, reach.fromM, reach.toM, site.pipe.odM / 2) }
}

const standing = (site: SiteModel, role: 'machine' | 'rack' | 'loader' | 'offload' | 'puller'): GearBody[] =>
  itemsOf(site, role).map((item) => ({ role, itemIds: [item.id], name: nameOf(site, item.id), points: pointsOf(item.outlineM) }))

/** A driven puller covers the run from the first nose on, ahead of the nose by its rope; a winch stands where it is drawn. */
export function pullerSweeps(site: SiteModel): GearBody[] {
  const reach = stringReachM(site)
  return itemsOf(site, 'puller').flatMap((item): GearBody[] => {
    const { pullerKind, figures } = item.record as PullerRecord
    const [ropeM, lengthM, widthM] = [figures.ropeLengthM.value, figures.lengthM.value, figures.widthM.value]
    if (pullerKind === 'winch' || reach === null || ropeM === null || lengthM === null || widthM === null) return []
    const fromM = site.sticks.stringLengthM(1) + ropeM
    return [{ role: 'puller', isSweep: true, itemIds: [item.id], name: nameOf(site, item.id), points: runStrip(site, fromM, Math.max(reach.toM, fromM) + ropeM + lengthM, widthM / 2) }]
  })
}

/** Vehicle lanes, a strip a leg, its sides exact and its ends rounded. */
export const laneBodies = (site: SiteModel): GearBody[] => itemsOf(site, 'lane').flatMap((item): GearBody[] => {
  if (item.record.kind !== 'lane' || item.record.figures.widthM.value === null) return []
  return aroundLine(item.record.points, item.record.figures.widthM.value / 2).map((points) => ({ role: 'lane', itemIds: [item.id], name: nameOf(site, item.id), points }))
})

/** What a stick carried crosswise covers when the loader turns: a disc of √((stick/2)² + reach²) about it; the largest usual where a figure is unknown. */
export const loaderSwings = (site: SiteModel): GearBody[] => itemsOf(site, 'loader').map((item) => {
  const radiusM = Math.hypot((site.sticks.stickLengthM ?? 15.24) / 2, (item.record as LoaderRecord).figures.reachM.value ?? 4.27)
  // Corners on a circle that the true disc touches from inside, so that it is never taken too small.
  const outM = radiusM / Math.cos(Math.PI / 96)
  return { role: 'loader', itemIds: [item.id], name: nameOf(site, item.id), points: Array.from({ length: 96 }, (_, i) => add(item, along((i * Math.PI) / 48, outM))) }
})

export const machineBodies = (site: SiteModel): GearBody[] => standing(site, 'machine')
export const rackBodies = (site: SiteModel): GearBody[] => standing(site, 'rack')
export const loaderBodies = (site: SiteModel): GearBody[] => standing(site, 'loader')
export const offloadBodies = (site: SiteModel): GearBody[] => standing(site, 'offload')
export const pullerBodies = (site: SiteModel): GearBody[] => standing(site, 'puller')

/** Something on the site with its own half width. */
export interface SiteObstacle {
  id: string
  kind: PlacedRecord['kind'] | 'string'
  name: Localized
  shape: Shape
  halfWidthM: number
}

/** Features and trees of the kinds asked for; those whose width nobody gave are left out and named by their check. */
export function obstaclesOf(site: SiteModel, kinds: readonly PlacedRecord['kind'][]): SiteObstacle[] {
  return [...site.placed.values()].filter(({ kind }) => kinds.includes(kind)).flatMap((item): SiteObstacle[] => {
    const { record } = item
    const base = { id: record.id, kind: record.kind, name: nameOf(site, record.id) }
    if (record.kind === 'tree') return [{ ...base, shape: { kind: 'point', point: { xM: item.xM, yM: item.yM } }, halfWidthM: record.figures.radiusM.value ?? 2 }]
    if (record.kind === 'building' || record.kind === 'water' || record.kind === 'boundary') return [{ ...base, shape: { kind: 'polygon', points: record.points }, halfWidthM: 0 }]
    if (record.kind === 'fence' || record.kind === 'overheadLine') return [{ ...base, shape: { kind: 'polyline', points: record.points }, halfWidthM: 0 }]
    if (record.kind === 'road' || record.kind === 'walkway' || record.kind === 'trench') {
      const widthM = record.figures.widthM.value
      return widthM === null ? [] : [{ ...base, shape: { kind: 'polyline', points: record.points }, halfWidthM: widthM / 2 }]
    }
    return []
  })
}

export interface Gap {
  /** Clear room; 0 or less where they meet. */
  clearM: number
  /** Nearest place on the gear. */
  at: Vec
  /** Nearest place on the obstacle's own figure. */
  to: Vec
}

/** Of findings about the same pair (a lane has a strip a leg) the worst: higher level, then less margin. */
export function worstOfEach(findings: readonly Finding[]): Finding[] {
  const worst = new Map<string, Finding>()
  const isWorse = (one: Finding, other: Finding): boolean => {
    const byLevel = levelOrder.indexOf(one.level) - levelOrder.indexOf(other.level)
    return byLevel !== 0 ? byLevel < 0 : (one.margin?.value ?? 0) < (other.margin?.value ?? 0)
  }
  for (const one of findings) {
    const before = worst.get(one.key)
    if (before === undefined || isWorse(one, before)) worst.set(one.key, one)
  }
  return [...worst.values()]
}

/** Clear room between a body and an obstacle: exact distance of the figures less the obstacle's half width. */
export function gapBetween(points: readonly Vec[], { shape, halfWidthM }: Pick<SiteObstacle, 'shape' | 'halfWidthM'>): Gap {
  const { distanceM: apartM, from, to } = distanceBetween({ kind: 'polygon', points }, shape)
  return { clearM: apartM - halfWidthM, at: from, to }
}

/** Direction from an obstacle to the body, for a way out of it; across the heading given where they coincide. */
export function awayRad(at: Vec, to: Vec, elseRad: number): number {
  const d = subtract(at, to)
  return distanceM(at, to) < 1e-6 ? elseRad : Math.atan2(d.yM, d.xM)
}
