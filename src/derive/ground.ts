/** Ground under the run, from levels by triangulation or an even slope where there are too few. */
import { pathPoints, pointBesidePath, pointOnPath, projectOnPath, type Path } from '../geometry/arc.ts'
import { groundProfile, groundSurface, levelAt, type Surface } from '../geometry/triangulate.ts'
import { distanceM, squaredDistanceM2, type Vec } from '../geometry/vector.ts'
import type { SetUpRecord } from '../scene/records/frame.ts'
import type { GroundLine } from './types.ts'

/** A support farther than this from the nearest level stands on guessed ground (25 ft, house rule `ground-reach`). */
export const GROUND_REACH_M = 7.62
/** Fall of the pad is taken over this much to either side of the datum: about one stick. */
const PAD_REACH_M = 12
const CROSS_REACH_M = 3
/** Levels of a line that lie nearer along it than this say nothing about a slope. */
const LEAST_SPREAD_M = 0.5
/** Arcs are followed in steps with this sag for the drawn ground line. */
const ARC_SAG_M = 0.02

export interface MeasuredLevel extends Vec {
  /** Above the datum nail. */
  levelM: number
}

export interface GroundModel {
  from: GroundLine['from']
  fallRatio: number | null
  crossFallRatio: number | null
  levelAt: (runningM: number, offsetM?: number) => number
  isGuessed: (runningM: number, offsetM?: number) => boolean
  /** Kinks and guessed stretches between two running distances. */
  line: (fromM: number, toM: number) => GroundLine
}

/**
 * Ground model of a run.
 *
 * Three levels or more, not all in line: planes over their triangulation, the datum (level 0) added as one more level.
 * Fewer, or all in line: what lies along the axis is followed from level to level, the overall fall carried on beyond
 * them, cross-fall as the set-up says or unknown. No level at all: the fall the set-up gives; else flat and `unknown`.
 */
export function groundOf(path: Path, setUp: SetUpRecord, levels: readonly MeasuredLevel[]): GroundModel {
  const datum = { xM: setUp.datum.xM, yM: setUp.datum.yM, levelM: 0 }
  const known = [datum, ...levels]
  const surface = levels.length >= 3 && groundSurface(levels) !== null ? groundSurface(known) : null
  const at = (runningM: number, offsetM: number): Vec => pointBesidePath(path, { runningM, offsetM })
  const nearestM2 = (point: Vec): number => known.reduce((least, level) => Math.min(least, squaredDistanceM2(level, point)), Infinity)
  const isGuessed = (runningM: number, offsetM = 0): boolean => nearestM2(at(runningM, offsetM)) > GROUND_REACH_M ** 2 * (1 + 1e-9)
  const projected = known.map((level) => ({ ...projectOnPath(path, level), levelM: level.levelM }))
  const guessedBetween = (fromM: number, toM: number): { fromM: number; toM: number }[] => gapsBetween(projected, fromM, toM)

  if (surface !== null) {
    const level = (runningM: number, offsetM = 0): number => levelAt(surface, at(runningM, offsetM)).levelM
    return {
      from: 'levels',
      fallRatio: (level(-PAD_REACH_M) - level(PAD_REACH_M)) / (2 * PAD_REACH_M),
      crossFallRatio: (level(0, -CROSS_REACH_M) - level(0, CROSS_REACH_M)) / (2 * CROSS_REACH_M),
      levelAt: level,
      isGuessed,
      line: (fromM, toM) => ({ ...surfaceLine(surface, path, fromM, toM), guessed: guessedBetween(fromM, toM), from: 'levels', fallRatio: null, crossFallRatio: null }),
    }
  }
  const along = alongAxis(projected, setUp.fallRatio)
  const cross = setUp.crossFallRatio ?? 0
  const level = (runningM: number, offsetM = 0): number => along.levelAt(runningM) - cross * offsetM
  return {
    from: along.isKnown ? 'evenSlope' : 'unknown',
    fallRatio: along.isKnown ? (along.evenFall ?? (level(-PAD_REACH_M) - level(PAD_REACH_M)) / (2 * PAD_REACH_M)) : null,
    crossFallRatio: setUp.crossFallRatio,
    levelAt: level,
    isGuessed,
    line: (fromM, toM) => {
      const runningM = [fromM, ...along.kinksM.filter((kink) => kink > fromM && kink < toM), toM]
      return { runningM, levelM: runningM.map((running) => level(running)), guessed: guessedBetween(fromM, toM), from: along.isKnown ? 'evenSlope' : 'unknown', fallRatio: null, crossFallRatio: null }
    },
  }
}

interface AlongAxis {
  isKnown: boolean
  /** Set where the whole line has one fall. */
  evenFall: number | null
  kinksM: readonly number[]
  levelAt: (runningM: number) => number
}

function alongAxis(projected: readonly { runningM: number; levelM: number }[], givenFallRatio: number | null): AlongAxis {
  const sorted = projected.toSorted((a, b) => a.runningM - b.runningM)
  const first = sorted[0]!
  const last = sorted.at(-1)!
  if (last.runningM - first.runningM < LEAST_SPREAD_M) {
    const fall = givenFallRatio ?? 0
    return { isKnown: givenFallRatio !== null, evenFall: fall, kinksM: [], levelAt: (runningM) => 0 - fall * runningM }
  }
  const knots = mergedKnots(sorted)
  const slope = fittedSlope(knots)
  const levelAtRunning = (runningM: number): number => {
    if (runningM <= knots[0]!.runningM) return knots[0]!.levelM + slope * (runningM - knots[0]!.runningM)
    const end = knots.at(-1)!
    if (runningM >= end.runningM) return end.levelM + slope * (runningM - end.runningM)
    const index = knots.findIndex((knot) => knot.runningM >= runningM)
    const [a, b] = [knots[index - 1]!, knots[index]!]
    return a.levelM + ((b.levelM - a.levelM) * (runningM - a.runningM)) / (b.runningM - a.runningM)
  }
  return { isKnown: true, evenFall: null, kinksM: knots.map(({ runningM }) => runningM), levelAt: levelAtRunning }
}

/** Levels nearer along the axis than the least spread count as one at their mean. */
function mergedKnots(sorted: readonly { runningM: number; levelM: number }[]): { runningM: number; levelM: number }[] {
  const groups: { runningM: number; levelM: number }[][] = []
  for (const knot of sorted) {
    const group = groups.at(-1)
    if (group !== undefined && knot.runningM - group[0]!.runningM < LEAST_SPREAD_M) group.push(knot)
    else groups.push([knot])
  }
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length
  return groups.map((group) => ({ runningM: mean(group.map((k) => k.runningM)), levelM: mean(group.map((k) => k.levelM)) }))
}

/** Least-squares slope; end to end where the knots are two. */
function fittedSlope(knots: readonly { runningM: number; levelM: number }[]): number {
  const n = knots.length
  const meanX = knots.reduce((sum, k) => sum + k.runningM, 0) / n
  const meanZ = knots.reduce((sum, k) => sum + k.levelM, 0) / n
  const xx = knots.reduce((sum, k) => sum + (k.runningM - meanX) ** 2, 0)
  const xz = knots.reduce((sum, k) => sum + (k.runningM - meanX) * (k.levelM - meanZ), 0)
  return xx > 0 ? xz / xx : 0
}

function surfaceLine(surface: Surface, path: Path, fromM: number, toM: number): { runningM: number[]; levelM: number[] } {
  const runningM: number[] = []
  const levelM: number[] = []
  const push = (running: number, level: number): void => {
    if (runningM.length > 0 && running - runningM.at(-1)! < 1e-6) return
    runningM.push(running)
    levelM.push(level)
  }
  for (const [a, b] of stretches(path, fromM, toM)) {
    const start = pointOnPath(path, a)
    for (const { distanceM: into, levelM: level } of groundProfile(surface, start, pointOnPath(path, b))) push(a + into, level)
  }
  return { runningM, levelM }
}

/** The run cut into straight stretches: each straight piece whole, each arc in chords. Chord and arc differ by under the sag. */
function stretches(path: Path, fromM: number, toM: number): [number, number][] {
  const cuts = [fromM, toM]
  let running = 0
  let before: Vec | null = null
  if (path.bends.length > 0) {
    for (const point of pathPoints(path, ARC_SAG_M)) {
      if (before !== null) running += distanceM(before, point)
      before = point
      if (running > fromM && running < toM) cuts.push(running)
    }
  }
  const sorted = cuts.sort((a, b) => a - b)
  return sorted.slice(1).map((to, i) => [sorted[i]!, to])
}

/** Stretches of the run farther than the reach from every level. */
function gapsBetween(levels: readonly { runningM: number; offsetM: number }[], fromM: number, toM: number): { fromM: number; toM: number }[] {
  const covered = levels
    .filter(({ offsetM }) => Math.abs(offsetM) < GROUND_REACH_M)
    .map(({ runningM, offsetM }) => {
      const halfM = Math.sqrt(GROUND_REACH_M ** 2 - offsetM ** 2)
      return { fromM: runningM - halfM, toM: runningM + halfM }
    })
    .sort((a, b) => a.fromM - b.fromM)
  const gaps: { fromM: number; toM: number }[] = []
  let reachedM = fromM
  for (const span of covered) {
    if (span.fromM > reachedM) gaps.push({ fromM: reachedM, toM: Math.min(span.fromM, toM) })
    reachedM = Math.max(reachedM, span.toM)
    if (reachedM >= toM) return gaps
  }
  if (reachedM < toM) gaps.push({ fromM: reachedM, toM })
  return gaps
}
