/** Rays from the crew spots to what each task must see, past what stands between. */
import { distanceBetween, type Shape } from '../../geometry/distance.ts'
import { boundingBox, type Box } from '../../geometry/polygon.ts'
import { distanceM, type Vec } from '../../geometry/vector.ts'
import { phases, type Phase } from '../../scene/parts.ts'
import { itemsOf } from '../itemsOf.ts'
import { pointsOf } from '../ways.ts'
import type { PlacedItem, SiteModel } from '../types.ts'
import { noseAt } from '../zones/shapes.ts'
import { mustSee, type SightTarget } from './mustSee.ts'
import { lastStage, spotsOf, type Spot } from './spots.ts'

/** Eyes of a person standing. */
const EYE_M = 1.5
/** Rows of pipe lie in the gaps of those below: each adds √3/2 of the diameter. */
const ROW_RATIO = Math.sqrt(3) / 2

export interface SightLine {
  spot: Spot
  target: SightTarget
  /** The spot looked at, where it is a person. */
  other: Spot | null
  from: Vec
  to: Vec
  distanceM: number
  /** Phases in which it must be seen. */
  phases: readonly Phase[]
  /** What surely stands between. */
  blockedBy: readonly string[]
  /** What may stand between: its height is not known. */
  mayBlock: readonly string[]
}

interface Screen {
  id: string
  shape: Shape
  box: Box
  roomM: number
  isSure: boolean
  /** A person on the same side of the walls sees: a tent. */
  isHollow: boolean
  phases: readonly Phase[]
}

const made = new WeakMap<SiteModel, readonly SightLine[]>()

/**
 * One line for each spot and each thing it must see, at the last joint of the phase; of several spots of a task the one
 * best seen. What is not on the plan gives no line. Rays are exact in plan; heights count only against the eye of a person
 * standing (1.5 m), on level ground. Source: mechanics (straight lines); the table of who sees what: common practice.
 */
export function sightLinesOf(site: SiteModel): readonly SightLine[] {
  let lines = made.get(site)
  if (lines === undefined) made.set(site, (lines = work(site)))
  return lines
}

function work(site: SiteModel): SightLine[] {
  const spots = spotsOf(site)
  if (spots.length === 0) return []
  const screens = screensOf(site)
  const lines = new Map<string, SightLine>()
  for (const { phase, task, targets } of mustSee) {
    for (const spot of spots.filter(({ record }) => record.role === task && record.phases.includes(phase))) {
      for (const target of targets) {
        const candidates = placesOf(site, { target, phase, from: spot }, spots)
        const best = bestOf(candidates.map(({ to, other }) => ({ to, other, distanceM: distanceM(spot, to) })), ({ to, other }) => ray(spot, { target, other, to, phase }, screens))
        if (best === null) continue
        const key = `${spot.id} ${target} ${best.other?.id ?? ''} ${best.to.xM} ${best.to.yM}`
        const before = lines.get(key)
        lines.set(key, before === undefined ? best : { ...before, phases: [...before.phases, phase], blockedBy: union(before.blockedBy, best.blockedBy), mayBlock: union(before.mayBlock, best.mayBlock) })
      }
    }
  }
  return [...lines.values()]
}

const union = (a: readonly string[], b: readonly string[]): string[] => [...new Set([...a, ...b])]
const badness = (line: SightLine): number => line.distanceM + (line.blockedBy.length > 0 ? 1e9 : 0) + (line.mayBlock.length > 0 ? 1e6 : 0)

/** The best seen of several: nearest first, and no further than the first that nothing hides. */
function bestOf<T extends { distanceM: number }>(candidates: readonly T[], see: (candidate: T) => SightLine): SightLine | null {
  let best: SightLine | null = null
  for (const candidate of candidates.toSorted((a, b) => a.distanceM - b.distanceM)) {
    const line = see(candidate)
    if (best === null || badness(line) < badness(best)) best = line
    if (badness(best) === best.distanceM) break
  }
  return best
}

/** Whether a box and the room round it lie wholly to one side of a line: then nothing in it is met. */
function isBeside({ minXM, minYM, maxXM, maxYM }: Box, roomM: number, from: Vec, to: Vec): boolean {
  const [dx, dy] = [to.xM - from.xM, to.yM - from.yM]
  const lengthM = Math.hypot(dx, dy)
  const acrossM = (xM: number, yM: number): number => dx * (yM - from.yM) - dy * (xM - from.xM)
  const corners = [acrossM(minXM, minYM), acrossM(maxXM, minYM), acrossM(minXM, maxYM), acrossM(maxXM, maxYM)]
  // A micron more than the room: corners on the line itself are measured exactly.
  const least = lengthM * (roomM + 1e-6)
  return Math.min(...corners) > least || Math.max(...corners) < -least
}

function ray(spot: Spot, { target, other, to, phase }: { target: SightTarget; other: Spot | null; to: Vec; phase: Phase }, screens: readonly Screen[]): SightLine {
  const from = { xM: spot.xM, yM: spot.yM }
  const [minX, maxX, minY, maxY] = [Math.min(from.xM, to.xM), Math.max(from.xM, to.xM), Math.min(from.yM, to.yM), Math.max(from.yM, to.yM)]
  const between = screens.filter(({ box, roomM, shape, isHollow, phases: live }) =>
    live.includes(phase) && box.minXM - roomM <= maxX && box.maxXM + roomM >= minX && box.minYM - roomM <= maxY && box.maxYM + roomM >= minY
    && !isBeside(box, roomM, from, to)
    && distanceBetween({ kind: 'polyline', points: [from, to] }, isHollow && shape.kind === 'polygon' ? { kind: 'polyline', points: [...shape.points, shape.points[0]!] } : shape).distanceM <= roomM)
  return { spot, target, other, from, to, distanceM: distanceM(from, to), phases: [phase], blockedBy: between.filter(({ isSure }) => isSure).map(({ id }) => id), mayBlock: between.filter(({ isSure }) => !isSure).map(({ id }) => id) }
}

function placesOf(site: SiteModel, { target, phase, from }: { target: SightTarget; phase: Phase; from: Spot }, spots: readonly Spot[]): { to: Vec; other: Spot | null }[] {
  const onRun = (runningM: number | null): { to: Vec; other: null }[] => (site.run === null || runningM === null ? [] : [{ to: site.atRunning(runningM), other: null }])
  const items = (kind: PlacedItem['kind']): { to: Vec; other: null }[] => itemsOf(site, kind).map((to) => ({ to, other: null }))
  const { toM } = noseAt(site, lastStage(site, phase))
  switch (target) {
    case 'jaws': return site.jaws.machineId === null ? [] : onRun(0)
    case 'plateHolder': return items('plateHolder')
    case 'nose': return toM > 0 ? onRun(toM) : []
    case 'tether': return items('anchor')
    case 'nextSupport': return onRun(site.supports.filter(({ side, runningM }) => side === 'exit' && runningM <= toM).at(-1)?.runningM ?? null)
    case 'publicWay': return [...site.placed.values()].filter(({ kind }) => kind === 'road' || kind === 'walkway').map((item) => ({ to: distanceBetween({ kind: 'point', point: from }, { kind: 'polyline', points: pointsOf(item.outlineM) }).to, other: null }))
    default: return spots.filter(({ record, id }) => record.role === target && record.phases.includes(phase) && id !== from.id).map((other) => ({ to: other, other }))
  }
}

function screensOf(site: SiteModel): Screen[] {
  return [...site.placed.values()].flatMap((item): Screen[] => {
    const sure = heightOf(site, item)
    if (sure === 'low') return []
    const points = pointsOf(item.outlineM)
    const { record } = item
    const isTree = record.kind === 'tree'
    const box = isTree ? boundingBox([item]) : boundingBox(points)
    if (box === null) return []
    const shape: Shape = isTree ? { kind: 'point', point: item } : record.kind === 'fence' ? { kind: 'polyline', points } : { kind: 'polygon', points }
    return [{ id: item.id, shape, box, roomM: isTree ? (record.figures.radiusM.value ?? 2) : 0, isSure: sure === 'high', isHollow: record.kind === 'shelter', phases: record.kind === 'offload' ? ['offload'] : phases }]
  })
}

const against = (heightM: number | null): 'high' | 'low' | 'unknown' => (heightM === null ? 'unknown' : heightM >= EYE_M ? 'high' : 'low')

/** Whether it stands in the way of the eye; what is not named here does not. */
function heightOf(site: SiteModel, { record }: PlacedItem): 'high' | 'low' | 'unknown' {
  switch (record.kind) {
    case 'building': case 'shelter': return 'high'
    case 'fence': case 'tree': return 'unknown'
    case 'stack': {
      const rows = record.figures.rowCount.value
      return rows === null || site.pipe.odM === null ? 'unknown' : against(site.pipe.odM * (1 + (rows - 1) * ROW_RATIO))
    }
    case 'trailer': return record.isLoaded === false ? 'low' : record.isLoaded === null ? 'unknown' : against(record.figures.loadHeightM.value)
    case 'offload': return against(record.figures.loadHeightM.value)
    default: return 'low'
  }
}
