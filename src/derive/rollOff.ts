/** Where a loose stick rolls: down the fall of the ground until it comes to rest or a positive stop holds it (docs/formulas/roll-off.md). */
import { surfaceRows } from '../engine/pipe/tables.ts'
import { add, along, toTheRight, type Vec } from '../geometry/vector.ts'
import type { MissingInput, SiteModel } from './types.ts'

/** Fall is taken over this much to each side. */
const SLOPE_REACH_M = 1
const STEP_M = 0.25
/** Rolled this far it is past anything drawn on a yard: nothing stops it. */
export const FARTHEST_M = 150
const TYPICAL_STICK_M = 12.192
/** Ground under a thousandth has no direction to roll in. */
const LEVEL_RATIO = 0.001
/** A stop holds a stick that it meets over the middle third; met farther out the stick swings round it. */
const HELD_RATIO = 1 / 6

/** `rests`: on the ground; `stopped`: by `itemId`; `drops`: into a trench or water, `itemId`; `unstopped`: nothing drawn stops it. */
export type RollEnd = 'staysPut' | 'rests' | 'stopped' | 'drops' | 'unstopped'

export interface RollOff {
  end: RollEnd
  /** How far it rolls, m. */
  reachM: number
  /** Direction it rolls in, counter-clockwise from +x of the site; null where it stays put on level ground. */
  headingRad: number | null
  /** Fall of the ground where it starts, rise over run. */
  fallRatio: number
  itemId: string | null
  /** Barriers in its way of which nobody has said whether they stop a pipe. */
  doubtIds: readonly string[]
  /** The lane it covers: one stick long, from start to end. Empty where it stays put. */
  lane: readonly Vec[]
  missing: readonly MissingInput[]
}

/** Steepest fall of the ground at a place of the site: how much and where to. */
export function fallAt(site: SiteModel, at: Vec): { fallRatio: number; headingRad: number } {
  const levelAt = (point: Vec): number => {
    const { runningM, offsetM } = site.toRunning(point.xM, point.yM)
    return site.groundLevelAt(runningM, offsetM)
  }
  const downX = (levelAt({ xM: at.xM - SLOPE_REACH_M, yM: at.yM }) - levelAt({ xM: at.xM + SLOPE_REACH_M, yM: at.yM })) / (2 * SLOPE_REACH_M)
  const downY = (levelAt({ xM: at.xM, yM: at.yM - SLOPE_REACH_M }) - levelAt({ xM: at.xM, yM: at.yM + SLOPE_REACH_M })) / (2 * SLOPE_REACH_M)
  return { fallRatio: Math.hypot(downX, downY), headingRad: Math.atan2(downY, downX) }
}

/** Fall of the ground at a place toward a heading: positive where it goes down that way. */
export function fallToward(site: SiteModel, at: Vec, headingRad: number): number {
  const fall = fallAt(site, at)
  return fall.fallRatio * Math.cos(fall.headingRad - headingRad)
}

/** Low rolling resistance of the ground at a running distance; the hardest ground of the table where nobody has said what lies there. */
export function rollingResistance(site: SiteModel, runningM: number): { ratio: number; missing: MissingInput[] } {
  const surface = site.surfaceAt(runningM)
  const ratio = surfaceRows.find(({ id }) => id === surface)?.rollingRatio ?? Math.min(...surfaceRows.map(({ rollingRatio }) => rollingRatio))
  return { ratio, missing: surface === null ? [{ recordId: site.run?.id ?? site.layout.id, path: 'surfaces', label: { en: 'surface of the ground', es: 'superficie del terreno' } }] : [] }
}

/** Inputs of the fall nobody has given. */
export const fallMissing = (site: SiteModel): MissingInput[] => [
  ...(site.ground.fallRatio === null ? [{ recordId: site.setUp?.id ?? site.layout.id, path: 'fallRatio', label: { en: 'fall of the ground', es: 'caída del terreno' } }] : []),
  ...(site.ground.crossFallRatio === null ? [{ recordId: site.setUp?.id ?? site.layout.id, path: 'crossFallRatio', label: { en: 'cross-fall of the ground', es: 'caída lateral del terreno' } }] : []),
]

/**
 * Roll-off of one stick let go at a place.
 *
 * Model:  energy in metres of height: what it fell from (`heightM`), plus the fall of the ground, less rolling resistance c
 *         (low end) times the way. Where the ground falls c/2 or more nothing is counted as lost: there is no certainty
 *         that it slows. The stick lies across the fall at its start and rolls straight on.
 * Stops:  buildings, and barriers said to stop a pipe, met over the middle third of the stick. Fences, trees, gear and
 *         cones are none. Trench and water end the way: it drops in.
 * Input:  heightM ≥ 0 above the ground at the start.
 * Source: mechanics; c is a house rule (shared/tables/surfaces.json).
 */
export function rollOffAt(site: SiteModel, at: Vec, heightM = 0): RollOff {
  const stickM = site.sticks.stickLengthM ?? TYPICAL_STICK_M
  const { ratio: c, missing: surfaceMissing } = rollingResistance(site, site.toRunning(at.xM, at.yM).runningM)
  const missing = [...fallMissing(site), ...surfaceMissing, ...(site.sticks.stickLengthM === null ? site.sticks.missing.filter(({ path }) => path === 'stickLengthM') : [])]
  const { fallRatio, headingRad } = fallAt(site, at)
  const stays = { end: 'staysPut' as const, reachM: 0, fallRatio, itemId: null, doubtIds: [], lane: [], missing }
  if (fallRatio < LEVEL_RATIO) return { ...stays, headingRad: null }
  if (heightM <= 0 && fallRatio < c / 2) return { ...stays, headingRad }
  const free = freeWay(site, { at, headingRad, heightM, resistanceRatio: c })
  const met = firstStop(site, { at, headingRad, stickM })
  const isHeld = met.stop !== null && met.stop.atM <= free.reachM
  const reachM = isHeld ? met.stop!.atM : free.reachM
  return {
    end: isHeld ? met.stop!.end : free.isAtRest ? 'rests' : 'unstopped', reachM, headingRad, fallRatio,
    itemId: isHeld ? met.stop!.itemId : null,
    doubtIds: met.doubts.filter(({ atM }) => atM <= reachM).map(({ itemId }) => itemId),
    lane: laneOf(at, headingRad, stickM, reachM), missing,
  }
}

/** How far it rolls if nothing is in its way. */
function freeWay(site: SiteModel, from: { at: Vec; headingRad: number; heightM: number; resistanceRatio: number }): { reachM: number; isAtRest: boolean } {
  const { at, headingRad, resistanceRatio: c } = from
  let energyM = from.heightM
  for (let reachM = 0; reachM < FARTHEST_M; reachM += STEP_M) {
    const fall = fallToward(site, add(at, along(headingRad, reachM + STEP_M / 2)), headingRad)
    const perM = fall >= c / 2 ? Math.max(0, fall - c) : fall - c
    if (energyM + perM * STEP_M < 0 || (energyM <= 0 && perM < 0)) return { reachM: perM === 0 ? reachM : reachM + Math.max(0, energyM / -perM), isAtRest: true }
    energyM += perM * STEP_M
  }
  return { reachM: FARTHEST_M, isAtRest: false }
}

interface Stop {
  atM: number
  itemId: string
  end: 'stopped' | 'drops'
}

function firstStop(site: SiteModel, from: { at: Vec; headingRad: number; stickM: number }): { stop: Stop | null; doubts: Stop[] } {
  const stops: Stop[] = []
  const doubts: Stop[] = []
  for (const { id, record } of site.placed.values()) {
    const isRing = record.kind === 'building' || record.kind === 'water'
    if (!isRing && record.kind !== 'barrier' && record.kind !== 'trench') continue
    const lineM = metAt(from, isRing ? [...record.points, record.points[0]!] : record.points)
    if (lineM === null) continue
    // A trench is drawn along its middle; it drops in at the near edge.
    const atM = record.kind === 'trench' ? Math.max(0, lineM - (record.figures.widthM.value ?? 0) / 2) : lineM
    const end = record.kind === 'trench' || record.kind === 'water' ? 'drops' : 'stopped'
    if (record.kind !== 'barrier' || record.stopsPipe === true) stops.push({ atM, itemId: id, end })
    else if (record.stopsPipe === null) doubts.push({ atM, itemId: id, end })
  }
  return { stop: stops.reduce<Stop | null>((first, one) => (first === null || one.atM < first.atM ? one : first), null), doubts }
}

/** Where the middle of the stick first meets a line that reaches over its middle third; null: it does not. */
function metAt({ at, headingRad, stickM }: { at: Vec; headingRad: number; stickM: number }, points: readonly Vec[]): number | null {
  const hits = [-HELD_RATIO, 0, HELD_RATIO].map((share) => rayMeets(add(at, toTheRight(headingRad, share * stickM)), headingRad, points))
  return hits.some((hit) => hit === null) ? null : Math.min(...hits.map((hit) => hit ?? 0))
}

/** Distance along a ray to the first leg it crosses. */
function rayMeets(from: Vec, headingRad: number, points: readonly Vec[]): number | null {
  const [cos, sin] = [Math.cos(headingRad), Math.sin(headingRad)]
  let least: number | null = null
  for (let i = 1; i < points.length; i += 1) {
    const [a, b] = [points[i - 1]!, points[i]!]
    // In the ray's own frame: u ahead, v to the left.
    const [au, av] = [(a.xM - from.xM) * cos + (a.yM - from.yM) * sin, (a.yM - from.yM) * cos - (a.xM - from.xM) * sin]
    const [bu, bv] = [(b.xM - from.xM) * cos + (b.yM - from.yM) * sin, (b.yM - from.yM) * cos - (b.xM - from.xM) * sin]
    if (av > 0 === bv > 0) continue
    const u = au + ((bu - au) * av) / (av - bv)
    if (u >= 0 && (least === null || u < least)) least = u
  }
  return least
}

function laneOf(at: Vec, headingRad: number, stickM: number, reachM: number): Vec[] {
  const corner = (aheadM: number, rightM: number): Vec => add(add(at, along(headingRad, aheadM)), toTheRight(headingRad, rightM))
  return [corner(0, stickM / 2), corner(reachM, stickM / 2), corner(reachM, -stickM / 2), corner(0, -stickM / 2)]
}
