/** Ways out: from each crew spot to a muster point or off the yard, on foot, past everything that stands in the way. */
import { distanceBetween, type Shape } from '../../geometry/distance.ts'
import { blockedField, boxOf, freeParts, isInPart, type Blocked, type FreePart, type Obstruction, type Opened } from '../../geometry/freeSpace.ts'
import { boundingBox } from '../../geometry/polygon.ts'
import { shortestWay } from '../../geometry/shortestWay.ts'
import { add, along, between, distanceM, toTheRight, type Vec } from '../../geometry/vector.ts'
import { recordsOf } from '../../scene/document.ts'
import type { WalkwayRecord } from '../../scene/kinds/walkway.ts'
import type { Phase } from '../../scene/parts.ts'
import type { PlacedItem, SiteModel } from '../types.ts'
import { pointsOf, runLine } from '../ways.ts'
import { zonesAt, type Zone } from '../zones.ts'
import { depthIn, judging } from '../zoneStages.ts'
import { noseAt } from '../zones/shapes.ts'
import { lastStage, spotsOf, type Spot } from './spots.ts'

/** A gap of just the width asked for is a way; a millimetre is rounding. */
const ROUNDING_M = 0.0005
/** From a spot pressed against gear to the middle of the next free way: one step. */
const STEP_M = 1.2
/** Past everything on the plan there is open ground where no boundary is drawn. */
const OPEN_GROUND_M = 15
/** Half an opening's depth beyond the fence it is in. */
const GATE_DEPTH_M = 1
/** Two points nearer than this are one edge. */
const ON_EDGE_M = 0.02
/** Zones nobody walks through while they are RED: rope, nose, roll-off. */
const barred: readonly string[] = ['Z-02', 'Z-09', 'Z-10']
/** Kinds that stand on the ground. Vehicles that move are not among them. */
const solid: ReadonlySet<PlacedItem['kind']> = new Set(['building', 'water', 'stack', 'trailer', 'machine', 'rack', 'generator', 'fuel', 'cuttingPlace', 'plateHolder'])

export interface WayOut {
  spot: Spot
  phase: Phase
  /**
   * `muster`: a muster point is reached; `edge`: only the open edge of the yard is; `shut`: neither; `outside`: the spot
   * lies outside the yard.
   */
  leads: 'muster' | 'edge' | 'shut' | 'outside'
  musterId: string | null
}

interface Field {
  blocked: Blocked
  /** Outline of the yard; of the open ground where none is drawn. */
  edges: readonly (readonly Vec[])[]
  /** Fences with the gates in them that open at once. */
  fences: Opened
  musters: readonly PlacedItem[]
  /** What nobody steps over. */
  walls: readonly PlacedItem[]
  wayM: number
  /** The string as it lies in a phase with the crossings over it, once asked for. */
  strings: Map<Phase, { line: Vec[] | null; opened: Opened }>
}

const fields = new WeakMap<SiteModel, Map<number, Field | null>>()

/** What stands at every stage, worked out once a site and width. Null where there is nothing on the plan. */
function fieldOf(site: SiteModel, wayM: number): Field | null {
  const known = fields.get(site) ?? new Map<number, Field | null>()
  fields.set(site, known)
  let field = known.get(wayM)
  if (field === undefined) known.set(wayM, (field = workField(site, wayM)))
  return field
}

function workField(site: SiteModel, wayM: number): Field | null {
  const items = [...site.placed.values()]
  const roomM = wayM / 2 - ROUNDING_M
  const yards = recordsOf(site.document, 'boundary').map(({ points }) => points)
  const box = boundingBox(items.flatMap((item) => [item, ...pointsOf(item.outlineM)]))
  if (box === null) return null
  const out = OPEN_GROUND_M + wayM
  const edges = yards.length > 0 ? yards : [[{ xM: box.minXM - out, yM: box.minYM - out }, { xM: box.maxXM + out, yM: box.minYM - out }, { xM: box.maxXM + out, yM: box.maxYM + out }, { xM: box.minXM - out, yM: box.maxYM + out }]]
  const standing = items.flatMap((item): Obstruction[] => {
    const { record } = item
    if (solid.has(item.kind)) return [{ shape: { kind: 'polygon', points: pointsOf(item.outlineM) }, roomM }]
    if (record.kind === 'tree') return [{ shape: { kind: 'point', point: item }, roomM: roomM + Math.min(record.figures.radiusM.value ?? 0.3, 0.3) }]
    if (record.kind === 'trench') return [{ shape: { kind: 'polyline', points: record.points }, roomM: roomM + (record.figures.widthM.value ?? 0) / 2 }]
    return []
  })
  return {
    blocked: blockedField(edges, standing),
    edges, wayM, strings: new Map(), walls: items.filter(({ kind }) => solid.has(kind) || kind === 'fence'),
    fences: {
      things: items.flatMap(({ record }) => (record.kind === 'fence' ? [{ shape: { kind: 'polyline' as const, points: record.points }, roomM }] : [])),
      openings: items.flatMap((item) => (item.record.kind === 'gate' && item.record.keptOpen === true ? gateOpening(item, (item.record.figures.widthM.value ?? 0) - 2 * roomM, roomM) : [])),
    },
    musters: items.filter(({ kind }) => kind === 'muster'),
  }
}

/** The middle of a walker passes a gate within its width less half a walker each side. */
function gateOpening(item: PlacedItem, clearM: number, roomM: number): Obstruction[] {
  if (clearM <= 0) return []
  const corner = (alongM: number, acrossM: number): Vec => add(add(item, along(item.headingRad, alongM)), toTheRight(item.headingRad, acrossM))
  const [w, d] = [clearM / 2, roomM + GATE_DEPTH_M]
  return [{ shape: { kind: 'polygon', points: [corner(-w, -d), corner(w, -d), corner(w, d), corner(-w, d)] }, roomM: 0 }]
}

/** The string as it lies at the last joint of a phase; null where none lies. */
function stringLine(site: SiteModel, phase: Phase): Vec[] | null {
  if (site.run === null || site.sticks.stickLengthM === null || phase === 'setUp' || phase === 'offload') return null
  const isComingIn = phase === 'load' || phase === 'fuse' || phase === 'pull'
  return runLine(site, isComingIn ? -site.sticks.stickLengthM : 0, noseAt(site, lastStage(site, phase)).toM)
}

/** Marked crossings: usable while the string lies still. A walker's middle keeps half a walker off their edges. */
function crossingsOf(site: SiteModel, phase: Phase, roomM: number): Obstruction[] {
  if (phase === 'pull' || phase === 'move') return []
  return recordsOf(site.document, 'walkway').filter((way): way is WalkwayRecord => way.isCrossing === true).flatMap(({ points, figures }) => {
    const clearM = (figures.widthM.value ?? 0) / 2 - roomM
    return clearM <= 0 ? [] : [{ shape: { kind: 'polyline' as const, points }, roomM: clearM }]
  })
}

interface Ground {
  field: Field
  parts: readonly FreePart[]
  /** Where a part reaches the open edge of the yard. */
  isOpen: (part: FreePart) => boolean
}

const grounds = new WeakMap<SiteModel, Map<string, Ground>>()

/** Free ground of a phase for whoever does not stand in the zones left out. */
function groundOf(site: SiteModel, phase: Phase, wayM: number, zones: readonly Zone[], wall: readonly Vec[] = []): Ground | null {
  const field = fieldOf(site, wayM)
  if (field === null) return null
  const known = grounds.get(site) ?? new Map<string, Ground>()
  grounds.set(site, known)
  const string = stringIn(site, field, phase)
  const key = JSON.stringify([wayM, string.line?.[0], string.line?.at(-1), string.opened.openings?.length, wall, zones.map(({ key: name, rings }) => [name, rings[0]?.[0]])])
  let ground = known.get(key)
  if (ground === undefined) known.set(key, (ground = workGround(field, { string: string.opened, zones, wall })))
  return ground
}

function stringIn(site: SiteModel, { strings, wayM }: Field, phase: Phase): { line: Vec[] | null; opened: Opened } {
  let string = strings.get(phase)
  if (string === undefined) {
    const roomM = wayM / 2 - ROUNDING_M
    const line = stringLine(site, phase)
    strings.set(phase, (string = { line, opened: { things: line === null ? [] : [{ shape: { kind: 'polyline', points: line }, roomM: roomM + (site.pipe.odM ?? 0) / 2 }], openings: crossingsOf(site, phase, roomM) } }))
  }
  return string
}

function workGround(field: Field, { string, zones, wall }: { string: Opened; zones: readonly Zone[]; wall: readonly Vec[] }): Ground {
  const shut = zones.flatMap(({ rings }) => rings.map(barredRing))
  const walls: Obstruction[] = wall.length === 0 ? [] : [{ shape: { kind: 'polyline', points: wall }, roomM: ON_EDGE_M }]
  const parts = freeParts(field.blocked, [string, field.fences, ...shut, { things: walls }])
  const open = new Map<FreePart, boolean>()
  return {
    field, parts,
    isOpen: (part) => {
      let answer = open.get(part)
      if (answer === undefined) open.set(part, (answer = touchesEdge(part, field.edges)))
      return answer
    },
  }
}

const barredRings = new WeakMap<readonly Vec[], Opened>()

/** One thing for one ring: whoever may cross the others meets the same outline again. */
function barredRing(points: readonly Vec[]): Opened {
  let ring = barredRings.get(points)
  if (ring === undefined) barredRings.set(points, (ring = { things: [{ shape: { kind: 'polygon', points }, roomM: 0 }] }))
  return ring
}

function touchesEdge({ outline }: FreePart, edges: readonly (readonly Vec[])[]): boolean {
  return outline.some((a, i) => {
    const b = outline[(i + 1) % outline.length]!
    if (distanceM(a, b) < ON_EDGE_M) return false
    const middle: Shape = { kind: 'point', point: between(a, b, 0.5) }
    return edges.some((ring) => distanceBetween(middle, { kind: 'polyline', points: [...ring, ring[0]!] }).distanceM <= ON_EDGE_M / 10)
  })
}

/** The part a person stands in, and where they enter it: at once, or with one step that crosses nothing solid. */
function standsIn(site: SiteModel, ground: Ground, at: Vec): { part: FreePart; enters: Vec }[] {
  const inside = ground.parts.filter((part) => isInPart(part, at)).map((part) => ({ part, enters: at }))
  if (inside.length > 0) return inside
  const odM = site.pipe.odM ?? 0
  // Who stands on the pipe steps off it to either side.
  const isOnString = site.run !== null && Math.abs(site.toRunning(at.xM, at.yM).offsetM) <= odM / 2 + ground.field.wayM / 2
  return ground.parts.flatMap((part) => {
    const nearest = [part.outline, ...part.holes].filter((ring) => isWithin(ring, at, STEP_M + odM)).map((ring) => distanceBetween({ kind: 'point', point: at }, { kind: 'polyline', points: [...ring, ring[0]!] })).toSorted((a, b) => a.distanceM - b.distanceM)[0]
    if (nearest === undefined || nearest.distanceM > STEP_M + odM) return []
    const step: Shape = { kind: 'polyline', points: [at, nearest.to] }
    const hits = (item: PlacedItem): boolean => {
      const points = pointsOf(item.outlineM)
      const shape: Shape = item.kind === 'fence' ? { kind: 'polyline', points } : { kind: 'polygon', points }
      // Who stands on the gear itself steps off it.
      return distanceBetween(step, shape).distanceM === 0 && distanceBetween({ kind: 'point', point: at }, shape).distanceM > 0
    }
    const isOver = site.run !== null && !isOnString && runSide(site, at) * runSide(site, nearest.to) < 0
    return isOver || ground.field.walls.some(hits) ? [] : [{ part, enters: nearest.to }]
  })
}

/** Whether the box of a ring comes within a reach of the point. */
function isWithin(ring: readonly Vec[], { xM, yM }: Vec, reachM: number): boolean {
  const box = boxOf(ring)
  return box !== null && xM >= box.minXM - reachM && xM <= box.maxXM + reachM && yM >= box.minYM - reachM && yM <= box.maxYM + reachM
}

/** Which side of the line a point lies on. */
const runSide = (site: SiteModel, at: Vec): number => Math.sign(site.toRunning(at.xM, at.yM).offsetM)

const isReached = (part: FreePart, { xM, yM, record }: PlacedItem): boolean =>
  isInPart(part, { xM, yM }) || distanceBetween({ kind: 'point', point: { xM, yM } }, { kind: 'polyline', points: part.outline }).distanceM <= (record.kind === 'muster' ? (record.figures.radiusM.value ?? 0) : 0)

/** RED zones of rope, nose and roll-off that a person at the place may not walk through; one they stand in they may leave. */
const barring = (site: SiteModel, phase: Phase, at: Vec): Zone[] => barredIn(site, phase).filter((zone) => depthIn(zone, at) === 0)

const barredOf = new WeakMap<SiteModel, Map<Phase, readonly Zone[]>>()

/** At the end of a pull: rope and nose are where the nose spotter of the last pull stands. */
function barredIn(site: SiteModel, phase: Phase): readonly Zone[] {
  const known = barredOf.get(site) ?? new Map<Phase, readonly Zone[]>()
  barredOf.set(site, known)
  let zones = known.get(phase)
  if (zones === undefined) {
    const stage = lastStage(site, phase)
    known.set(phase, (zones = zonesAt(site, phase === 'pull' ? { ...stage, tipM: noseAt(site, stage).toM } : stage).filter((zone) => zone.zoneClass === 'RED' && judging(zone) && barred.includes(zone.id))))
  }
  return zones
}

const isOutside = ({ edges }: Field, at: Vec): boolean => edges.every((points) => distanceBetween({ kind: 'point', point: at }, { kind: 'polygon', points }).distanceM > 0)

/**
 * Way out of every spot in every phase it is used in, at the last joint. A way is clear where a body `wayM` wide passes
 * everything solid, the string, RED zones of rope, nose and roll-off, and fences but for gates that open at once; it may
 * cross the string by a marked crossing while that lies still, and stays within the boundary where one is drawn.
 * Decided by the connected parts of the free ground (geometry/freeSpace.ts): exact widths, no grid. Cost: one cut of the
 * ground a string length and set of zones.
 */
export function waysOut(site: SiteModel, wayM: number): WayOut[] {
  return spotsOf(site).flatMap((spot) => spot.record.phases.map((phase) => wayOutOf(site, spot, phase, wayM)))
}

export function wayOutOf(site: SiteModel, spot: Spot, phase: Phase, wayM: number): WayOut {
  const ground = groundOf(site, phase, wayM, barring(site, phase, spot))
  if (ground === null || isOutside(ground.field, spot)) return { spot, phase, leads: 'outside', musterId: null }
  const parts = standsIn(site, ground, spot).map(({ part }) => part)
  const muster = ground.field.musters.find((one) => parts.some((part) => isReached(part, one)))
  if (muster !== undefined) return { spot, phase, leads: 'muster', musterId: muster.id }
  const isOpen = parts.some(ground.isOpen)
  // A muster point off the yard is reached over its open edge.
  const outside = isOpen ? ground.field.musters.find((one) => isOutside(ground.field, one)) : undefined
  return { spot, phase, leads: outside !== undefined ? 'muster' : isOpen ? 'edge' : 'shut', musterId: outside?.id ?? null }
}

/** The shortest way from a spot to its nearest muster point inside the yard, for drawing; null where there is none. */
export function drawnWayOut(site: SiteModel, spot: Spot, phase: Phase, wayM: number): readonly Vec[] | null {
  const ground = groundOf(site, phase, wayM, barring(site, phase, spot))
  if (ground === null) return null
  const ways = standsIn(site, ground, spot).flatMap(({ part, enters }) => ground.field.musters.flatMap((muster) => {
    if (!isReached(part, muster)) return []
    const way = shortestWay(part, enters, isInPart(part, muster) ? { xM: muster.xM, yM: muster.yM } : distanceBetween({ kind: 'point', point: muster }, { kind: 'polyline', points: part.outline }).to)
    return way === null ? [] : [[{ xM: spot.xM, yM: spot.yM }, ...(enters === spot ? way.slice(1) : way)]]
  }))
  const lengthM = (way: readonly Vec[]): number => way.slice(1).reduce((sum, at, i) => sum + distanceM(way[i]!, at), 0)
  return ways.toSorted((a, b) => lengthM(a) - lengthM(b))[0] ?? null
}

/**
 * Ways off the machine pad on the operator's side: toward infeed and toward exit, judged with a wall from the line
 * through the operator out to `padReachM` from it. Null without a machine or an operator's spot.
 */
export function padWays(site: SiteModel, wayM: number, padReachM: number): { operator: Spot; infeed: boolean; exit: boolean } | null {
  const operator = spotsOf(site).find(({ record }) => record.role === 'operator' && record.phases.includes('fuse'))
  if (operator === undefined || operator.runningM === null || operator.offsetM === null || site.jaws.machineId === null) return null
  const { runningM, offsetM } = operator
  const side = offsetM < 0 ? -1 : 1
  const wall = [site.atRunning(runningM, 0), site.atRunning(runningM, side * padReachM)].map(({ xM, yM }) => ({ xM, yM }))
  const ground = groundOf(site, 'fuse', wayM, barring(site, 'fuse', operator), wall)
  if (ground === null) return null
  const leads = (alongM: number): boolean => {
    const at = site.atRunning(runningM + alongM, offsetM)
    return standsIn(site, ground, { xM: at.xM, yM: at.yM }).some(({ part }) => ground.isOpen(part) || ground.field.musters.some((one) => isReached(part, one)))
  }
  return { operator, infeed: leads(-wayM / 2), exit: leads(wayM / 2) }
}
