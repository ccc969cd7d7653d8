/** The arch over which a string enters a bore, and the pit of a liner (docs/formulas/bends.md). */
import { requireNumber } from '../outcome.ts'

export interface ArchInput {
  /** Pipe below the level where it enters, rad, above 0 and at most π/2. */
  entryAngleRad: number
  /** Radius of the pipe's axis everywhere on the arch. */
  radiusM: number
  /** Bottom of the pipe above the ground on the rollers behind, 0 ≤ height. */
  rollerHeightM: number
}

export interface Arch {
  /** Top of the arch above the ground at the entry: R(1 − cos θ). */
  riseM: number
  /** Along the ground from the entry back to the top: R sin θ, and along the pipe: R θ. */
  overM: number
  overPipeM: number
  /** Along the ground from the top back to where the pipe leaves the rollers: an up-ramp of two arcs. */
  rampM: number
  /** Ground taken in all. */
  lengthM: number
  /** Pipe off ground and rollers in all. */
  pipeM: number
  /** Bottom of the pipe above the ground at a distance back from the entry. */
  levelM: (backM: number) => number
}

/**
 * Arch for an entry angle, on level ground.
 *
 * Model:  from the entry back an arc of radius R up to the level, rise R(1 − cos θ); behind it an S of two equal arcs of the same radius down
 *         to the rollers, √(h(4R − h)) long for a difference h. Where the rollers stand higher than the rise there is no ramp and
 *         the pipe goes on level: `riseM` stays, `levelM` ends at the rise.
 * Valid:  angles up to 90°; difference of height up to 2R.
 * Fails:  RangeError naming the figure.
 * Source: geometry. The reverse curve is that of ASTM F585 for insertion pits (from memory, confirm); entry angles and arches: ASTM F1962,
 *         PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 12 (from memory, confirm).
 */
export function archFor(input: ArchInput): Arch {
  const { entryAngleRad: angleRad, radiusM: R, rollerHeightM } = input
  requireNumber('entryAngleRad', angleRad, { above: 0, atMost: Math.PI / 2 })
  requireNumber('radiusM', R, { above: 0 })
  requireNumber('rollerHeightM', rollerHeightM, { atLeast: 0 })
  const riseM = R * (1 - Math.cos(angleRad))
  const overM = R * Math.sin(angleRad)
  const dropM = Math.max(0, riseM - rollerHeightM)
  const rampM = reverseCurveM(dropM, R)
  // Each half of the S turns by acos(1 − h/2R).
  const halfTurnRad = Math.acos(1 - dropM / (2 * R))
  return {
    riseM, overM, overPipeM: R * angleRad, rampM,
    lengthM: overM + rampM,
    pipeM: R * angleRad + 2 * R * halfTurnRad,
    levelM: (backM) => {
      if (backM <= 0) return 0
      // The circle about (overM, riseM − R).
      if (backM <= overM) return riseM - R + Math.sqrt(R * R - (overM - backM) ** 2)
      const downM = Math.min(backM - overM, rampM)
      const half = rampM / 2
      if (downM <= half) return riseM - (R - Math.sqrt(R * R - downM ** 2))
      return riseM - dropM + (R - Math.sqrt(R * R - (rampM - downM) ** 2))
    },
  }
}

/**
 * Length along the ground, m, in which two equal arcs of radius R change the level of a pipe by d: √(d(4R − d)).
 *
 * Also the length of an insertion pit of depth d: the pipe comes in level at the ground and goes level into the host.
 * Valid:  0 ≤ d ≤ 2R.
 * Fails:  RangeError naming the figure.
 * Source: geometry; ASTM F585, insertion of polyethylene liners (from memory, confirm).
 */
export function reverseCurveM(depthM: number, radiusM: number): number {
  requireNumber('radiusM', radiusM, { above: 0 })
  requireNumber('depthM', depthM, { atLeast: 0, atMost: 2 * radiusM })
  return Math.sqrt(depthM * (4 * radiusM - depthM))
}

/** A sling or roller under the arch: how far back from the entry, height of the bottom of the pipe, length of pipe it carries. */
export interface ArchSupport {
  backM: number
  levelM: number
  carriesM: number
}

/**
 * Supports of an arch: its top always has one, the others no farther apart than asked along the ground, entry and rollers at its ends.
 *
 * Model:  each carries the pipe half way to its neighbours, the pipe of the arch spread evenly over its ground: at entry angles
 *         under 20° the two lengths differ by less than 2 %. The first estimate of a sling load, not a solved beam.
 * Fails:  RangeError for a spacing that is not above 0.
 */
export function archSupports(arch: Arch, spacingM: number): ArchSupport[] {
  requireNumber('spacingM', spacingM, { above: 0 })
  const places = [...between(0, arch.overM, spacingM), arch.overM, ...between(arch.overM, arch.lengthM, spacingM)]
  const pipePerM = arch.pipeM / arch.lengthM
  const ends = [0, ...places, arch.lengthM]
  return places.map((backM, i) => ({ backM, levelM: arch.levelM(backM), carriesM: (pipePerM * (ends[i + 2]! - ends[i]!)) / 2 }))
}

/** Places between two ends, evenly, no farther apart than the spacing; the ends themselves are not among them. */
function between(fromM: number, toM: number, spacingM: number): number[] {
  const parts = Math.max(1, Math.ceil((toM - fromM) / spacingM - 1e-9))
  return Array.from({ length: parts - 1 }, (_, i) => fromM + ((i + 1) * (toM - fromM)) / parts)
}

/**
 * A string parked on a curve of one radius: its turn, and the rectangle its axis takes, `chordM` between the ends by `depthM` over them.
 * A string longer than a half turn is taken as a half circle with two straight legs.
 * Input: m, both above 0. Source: geometry.
 */
export function parkedCurve(lengthM: number, radiusM: number): { turnRad: number; isOverHalfTurn: boolean; chordM: number; depthM: number } {
  requireNumber('lengthM', lengthM, { above: 0 })
  requireNumber('radiusM', radiusM, { above: 0 })
  const fullTurnRad = lengthM / radiusM
  const turnRad = Math.min(fullTurnRad, Math.PI)
  const legM = Math.max(0, lengthM - Math.PI * radiusM) / 2
  const chordM = 2 * radiusM * Math.sin(turnRad / 2)
  const depthM = radiusM * (1 - Math.cos(turnRad / 2)) + legM
  return { turnRad, isOverHalfTurn: fullTurnRad > Math.PI, chordM, depthM }
}
