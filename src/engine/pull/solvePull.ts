/** Pull of a fused string along its path. */
import { requireNumber } from '../outcome.ts'
import { type StringOnTrack, forceAtHead, fullSlopePull, largestForce } from './forces.ts'
import { type Track, buildTrack, guideDragN, guideLoadN } from './track.ts'
import type { HeadForce, LargestForce, PullBend, PullInput, PullResult, PullVertex } from './types.ts'

/**
 * Pull at the head of a string drawn along a path of straights and level arcs.
 *
 * Model:  the string lies along the path behind its head; what has not entered the path lies on level straight ground
 *         before it with the first leg's drag. Straight: F += q·l·(µ·cosα + sinα). Arc: dF/dφ = µ_guide·F + q·R·µ_surface.
 *         F is held at ≥ 0; the plain sum and its lowest value tell of a run-away. Bending stiffness only in `withStiffness`.
 * Input:  ≥ 2 vertices, one leg fewer; lengths m, loads N and N/m; friction ≥ 0. Heads up to the path's end.
 * Output: forces for the asked heads, the largest over all head positions (exact), bends against the least radius.
 * Sign:   levels up positive, pull against travel positive.
 * Valid:  grades of a yard; bends in section are not judged here. A path with `problems` of its own shape
 *         (overlap, doubling back, vertical step) cannot be built; its figures only bound the pull.
 * Fails:  RangeError naming the field for malformed input.
 * Cost:   O(pieces · log pieces) for the largest, O(pieces) for each head.
 * Source: belt friction after Eytelwein with weight, derived; bend stiffness derived; docs/formulas/pull.md.
 */
export function solvePull(input: PullInput): PullResult {
  requireSound(input)
  const { lineLoadNPerM, stringLengthM, tailLoadN = 0, allowableLoadN } = input
  const weightN = lineLoadNPerM * stringLengthM
  const lowestHeadM = (input.headStationsM ?? []).reduce((least, headM) => Math.min(least, headM), 0)
  const approachStartM = lowestHeadM - stringLengthM
  const bodyOn = (track: Track): StringOnTrack => ({ track, stringLengthM, tailLoadN, weightN })
  const plain = bodyOn(buildTrack(input, approachStartM, false))
  const { lengthM: pathLengthM, bends, problems } = plain.track
  const headsM = (input.headStationsM ?? [pathLengthM]).map((headM, i) => requireOnPath(headM, i, pathLengthM))
  const forces = (body: StringOnTrack): { heads: HeadForce[]; largest: LargestForce } => ({
    heads: headsM.map((headM) => forceAtHead(body, headM)),
    largest: largestForce(body),
  })
  const { heads, largest } = forces(plain)
  const utilisationRatio = allowableLoadN === null ? null : largest.forceN / allowableLoadN
  return {
    pathLengthM,
    weightN,
    heads,
    largest,
    bends: bends.map((bend) => pullBend(input, bend)),
    utilisationRatio,
    isWithinAllowable: utilisationRatio === null ? null : utilisationRatio <= 1,
    withStiffness: input.stiffness ? forces(bodyOn(buildTrack(input, approachStartM, true))) : null,
    fullTether: fullSlopePull(plain),
    problems,
  }
}

/** Running length of the path through the vertices: straights along their slope and arcs. */
export function pullPathLengthM(vertices: readonly PullVertex[]): number {
  const legs = vertices.slice(1).map(() => ({ frictionRatio: 0 }))
  return buildTrack({ vertices, legs, lineLoadNPerM: 0, minimumRadiusM: null }, 0, false).lengthM
}

/**
 * The same string drawn the other way along the same path: head and tail change ends, levels stay.
 * Head stations are left out: they would mean other places.
 */
export function reversedPull(input: PullInput): PullInput {
  const { headStationsM: _heads, ...rest } = input
  return { ...rest, vertices: input.vertices.toReversed(), legs: input.legs.toReversed() }
}

/** All drags along the ground and under the pipe times a factor, as for breakaway at the start; guides too. */
export function withFrictionTimes(input: PullInput, factor: number): PullInput {
  return {
    ...input,
    legs: input.legs.map(({ frictionRatio }) => ({ frictionRatio: frictionRatio * factor })),
    vertices: input.vertices.map((vertex) => ({
      ...vertex,
      surfaceFrictionRatio: vertex.surfaceFrictionRatio * factor,
      guideFrictionRatio: vertex.guideFrictionRatio * factor,
    })),
  }
}

function pullBend(input: PullInput, bend: Track['bends'][number]): PullBend {
  const { vertex, turnRad, radiusM } = bend
  const { minimumRadiusM, stiffness } = input
  const isStiff = stiffness !== undefined && radiusM > 0
  return {
    vertex,
    turnRad,
    radiusM,
    minimumRadiusM,
    isWideEnough: minimumRadiusM === null ? null : radiusM >= minimumRadiusM,
    guideLoadN: isStiff ? guideLoadN(stiffness, radiusM) : null,
    stiffnessDragN: isStiff ? guideDragN(input, bend, input.vertices[vertex] as PullVertex) : null,
  }
}

function requireSound(input: PullInput): void {
  requireNumber('lineLoadNPerM', input.lineLoadNPerM, { above: 0 })
  requireNumber('stringLengthM', input.stringLengthM, { above: 0 })
  requireNumber('tailLoadN', input.tailLoadN ?? 0)
  if (input.minimumRadiusM !== null) requireNumber('minimumRadiusM', input.minimumRadiusM, { above: 0 })
  if (input.allowableLoadN !== null) requireNumber('allowableLoadN', input.allowableLoadN, { above: 0 })
  if (input.stiffness) {
    requireNumber('stiffness.flexuralRigidityNm2', input.stiffness.flexuralRigidityNm2, { above: 0 })
    requireNumber('stiffness.guideSpacingM', input.stiffness.guideSpacingM, { above: 0 })
  }
  const { vertices, legs } = input
  if (vertices.length < 2) throw new RangeError('vertices: a path needs at least two')
  if (legs.length !== vertices.length - 1) {
    throw new RangeError(`legs: ${vertices.length} vertices make ${vertices.length - 1} legs, ${legs.length} given`)
  }
  vertices.forEach((vertex, i) => {
    requireNumber(`vertices[${i}].xM`, vertex.xM)
    requireNumber(`vertices[${i}].yM`, vertex.yM)
    requireNumber(`vertices[${i}].levelM`, vertex.levelM)
    requireNumber(`vertices[${i}].radiusM`, vertex.radiusM, { atLeast: 0 })
    requireNumber(`vertices[${i}].surfaceFrictionRatio`, vertex.surfaceFrictionRatio, { atLeast: 0 })
    requireNumber(`vertices[${i}].guideFrictionRatio`, vertex.guideFrictionRatio, { atLeast: 0 })
  })
  legs.forEach(({ frictionRatio }, i) => requireNumber(`legs[${i}].frictionRatio`, frictionRatio, { atLeast: 0 }))
}

/** Lengths along a path are not known to more digits than this; a head that far beyond its end stands at the end. */
const PATH_END_M = 1e-6

function requireOnPath(headM: number, index: number, pathLengthM: number): number {
  requireNumber(`headStationsM[${index}]`, headM)
  if (headM > pathLengthM + PATH_END_M) throw new RangeError(`headStationsM[${index}] is ${headM}, beyond the path's end at ${pathLengthM}`)
  return Math.min(headM, pathLengthM)
}
