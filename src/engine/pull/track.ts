import { type Bend, pathFromVertices } from '../../geometry/arc.ts'
import { TANGENT_FIT_RATIO } from '../../geometry/tolerance.ts'
import { distanceM } from '../../geometry/vector.ts'
import type { ForceMap } from './forceMap.ts'
import type { PullInput, PullProblem, PullVertex } from './types.ts'

/** A stretch of the way, in running order. Pieces may have no length: sharp corners, and guides that add a force. */
export interface TrackPiece {
  readonly startM: number
  readonly endM: number
  /** Levels above the path's start. */
  readonly startLevelM: number
  readonly endLevelM: number
  readonly law:
    | { readonly kind: 'straight'; readonly rateNPerM: number }
    | { readonly kind: 'arc'; readonly turnRad: number; readonly guideFrictionRatio: number; readonly surfaceDragN: number }
    | { readonly kind: 'guides'; readonly dragN: number }
}

export interface Track {
  readonly lengthM: number
  readonly pieces: readonly TrackPiece[]
  readonly bends: readonly Bend[]
  readonly problems: readonly PullProblem[]
}

/** Least turn, rad, at a vertex without radius that counts as a corner and not as a typing difference. */
const SHARP_TURN_RAD = 1e-6

/**
 * The way of the string as pieces: the level approach behind the path (piece 0, from `approachStartM` to 0), then
 * straights and arcs by turns.
 * Where bends overlap their legs have no straight left, and the pieces only bound the true way; a problem says so.
 */
export function buildTrack(input: Pick<PullInput, 'vertices' | 'legs' | 'lineLoadNPerM' | 'minimumRadiusM' | 'stiffness'>, approachStartM: number, hasStiffness: boolean): Track {
  const { vertices, legs, lineLoadNPerM: q } = input
  const plan = pathFromVertices(vertices)
  const bendAt = new Map(plan.bends.map((bend) => [bend.vertex, bend]))
  const problems: PullProblem[] = plan.lengthM === 0 ? [{ kind: 'pathWithoutLength' }] : []
  const pieces: TrackPiece[] = [
    { startM: approachStartM, endM: 0, startLevelM: 0, endLevelM: 0, law: { kind: 'straight', rateNPerM: q * (legs[0]?.frictionRatio ?? 0) } },
  ]
  let [runningM, levelM] = [0, 0]
  const append = (lengthM: number, riseM: number, law: TrackPiece['law']): void => {
    pieces.push({ startM: runningM, endM: runningM + lengthM, startLevelM: levelM, endLevelM: levelM + riseM, law })
    runningM += lengthM
    levelM += riseM
  }
  legs.forEach(({ frictionRatio }, leg) => {
    const from = vertices[leg] as PullVertex
    const to = vertices[leg + 1] as PullVertex
    const legM = distanceM(from, to)
    const neededM = finiteTangentM(bendAt.get(leg)) + finiteTangentM(bendAt.get(leg + 1))
    const leftM = legM - neededM
    // What rounding of the tangents leaves of a leg is not a straight to rise along.
    const planM = leftM > TANGENT_FIT_RATIO * legM ? leftM : 0
    const riseM = to.levelM - from.levelM
    problems.push(...legProblems(leg, { legM, neededM, planM, riseM }))
    const lengthM = Math.hypot(planM, riseM)
    // µ·cosα + sinα over the slope length is µ·plan + rise.
    if (lengthM > 0) append(lengthM, riseM, { kind: 'straight', rateNPerM: (q * (frictionRatio * planM + riseM)) / lengthM })
    const bend = bendAt.get(leg + 1)
    if (!bend) return
    const dragN = hasStiffness ? guideDragN(input, bend, to) / 2 : 0
    if (dragN > 0) append(0, 0, { kind: 'guides', dragN })
    const turnRad = Math.abs(bend.turnRad)
    const surfaceDragN = q * bend.radiusM * to.surfaceFrictionRatio
    append(bend.radiusM * turnRad, 0, { kind: 'arc', turnRad, guideFrictionRatio: to.guideFrictionRatio, surfaceDragN })
    if (dragN > 0) append(0, 0, { kind: 'guides', dragN })
  })
  problems.push(...plan.bends.flatMap((bend) => bendProblems(bend, input.minimumRadiusM)))
  return { lengthM: runningM, pieces, bends: plan.bends, problems }
}

const finiteTangentM = (bend: Bend | undefined): number => (bend && Number.isFinite(bend.tangentM) ? bend.tangentM : 0)

function legProblems(leg: number, size: { legM: number; neededM: number; planM: number; riseM: number }): PullProblem[] {
  const { legM, neededM, planM, riseM } = size
  if (legM === 0 && riseM === 0) return [{ kind: 'verticesCoincide', vertex: leg + 1 }]
  const found: PullProblem[] = []
  if (neededM > legM * (1 + TANGENT_FIT_RATIO)) found.push({ kind: 'bendsOverlap', leg, neededM, lengthM: legM })
  if (planM === 0 && riseM !== 0) found.push({ kind: 'verticalStep', leg, riseM })
  return found
}

function bendProblems(bend: Bend, minimumRadiusM: number | null): PullProblem[] {
  const { vertex, turnRad, radiusM } = bend
  if (!Number.isFinite(bend.tangentM)) return [{ kind: 'doublesBack', vertex }]
  if (radiusM === 0) return Math.abs(turnRad) > SHARP_TURN_RAD ? [{ kind: 'sharpCorner', vertex, turnRad }] : []
  return minimumRadiusM !== null && radiusM < minimumRadiusM ? [{ kind: 'bendTooTight', vertex, radiusM, minimumRadiusM }] : []
}

/** Drag of the four guides that bend the pipe to the arc and straighten it again: 4·µ·(EI/R)/a. */
export function guideDragN(input: Pick<PullInput, 'stiffness'>, bend: Bend, vertex: PullVertex): number {
  if (!input.stiffness || bend.radiusM === 0) return 0
  return 4 * vertex.guideFrictionRatio * guideLoadN(input.stiffness, bend.radiusM)
}

/** Force on a guide of the pair, `guideSpacingM` apart, that gives the couple EI/R. */
export const guideLoadN = (stiffness: NonNullable<PullInput['stiffness']>, radiusM: number): number =>
  stiffness.flexuralRigidityNm2 / radiusM / stiffness.guideSpacingM

/**
 * Effect of the part of a piece between two running distances (both within it).
 * Straight: F += rate·length, held at ≥ 0. Arc: dF/dφ = µ_guide·F + q·R·µ_surface, solved in closed form.
 */
export function mapOfPart(piece: TrackPiece, fromM: number, toM: number): ForceMap {
  const { law } = piece
  if (law.kind === 'straight') return { scaleFactor: 1, shiftN: law.rateNPerM * (toM - fromM), floorN: 0 }
  if (law.kind === 'guides') return { scaleFactor: 1, shiftN: law.dragN, floorN: 0 }
  const lengthM = piece.endM - piece.startM
  const angleRad = lengthM > 0 ? (law.turnRad * (toM - fromM)) / lengthM : law.turnRad
  const exponent = law.guideFrictionRatio * angleRad
  // (e^x − 1)/x, which is 1 for a bend without guide friction.
  const growth = exponent === 0 ? 1 : Math.expm1(exponent) / exponent
  return { scaleFactor: Math.exp(exponent), shiftN: law.surfaceDragN * angleRad * growth, floorN: 0 }
}

export const mapOfPiece = (piece: TrackPiece): ForceMap => mapOfPart(piece, piece.startM, piece.endM)
