/** The pipe as a beam in plan: what guides off the line do to it and to the jaws (docs/formulas/side-force.md). */
import { solveContactBeam } from '../beam/solveContactBeam.ts'
import type { ContactBeamResult } from '../beam/types.ts'
import { requireNumber } from '../outcome.ts'
import { boxedEquilibrium } from './boxedEquilibrium.ts'

export interface SideGuide {
  xM: number
  /** Where it holds the pipe, right of the line positive. */
  offsetM: number
  /** Largest side force it can give either way, ≥ 0; 0 does not touch the pipe. */
  holdN: number
}

export interface SideBeamInput {
  /** EI, > 0. */
  bendingStiffnessNm2: number
  /** Closed clamps; they hold both ways without a limit. Two or more at different places. */
  clamps: readonly { xM: number; offsetM: number }[]
  /** Any order. */
  guides: readonly SideGuide[]
  /** The pipe's end at the joint, where offset and slope are asked for. */
  jointM: number
}

export interface GuideSideForce {
  /** On the pipe, right positive. */
  forceN: number
  /** It gives all it can: the pipe climbs its flank, or slides over it. */
  isFull: boolean
  /** Where the pipe lies there, right positive. */
  pipeOffsetM: number
}

export interface SideBeamResult {
  /** In the order of the input. */
  guides: GuideSideForce[]
  /** On the pipe, right positive, in the order of the input. */
  clampForcesN: number[]
  joint: { offsetM: number; slopeRatio: number }
  /** False where the search of the full guides did not end. */
  isSettled: boolean
}

/** Guides this near to each other or to a clamp along the pipe are one place, as in the beam upright. */
const SAME_PLACE_M = 0.02

/**
 * Side forces of guides and clamps on a straight pipe without weight in plan.
 *
 * Model:  Euler–Bernoulli, small slope, no load but the guides, no friction along. A guide holds the pipe on its own line
 *         until its hold is used up, then gives that much and no more. Guides within 20 mm of each other count as one at
 *         the first place, holds added, offsets weighted by them; one that near to a clamp gives nothing.
 * Method: the contact beam with every place two-way gives the stiffness between the places, one solve each; its own weight,
 *         which it cannot do without, is taken out by a solve with all places on the line. Which guides are full follows
 *         from letting the offsets grow to what they are.
 * Output: forces balance to 1e-6 of the largest; mirrored offsets give mirrored forces.
 * Valid:  slopes to 0.1. A run bent in plan is another model (EI/R at each guide pair, docs/formulas/pull.md).
 * Fails:  RangeError naming the field that is not a number, or fewer than two clamps.
 * Source: derived; closed forms of a propped overhang in the tests.
 */
export function solveSideForces(input: SideBeamInput): SideBeamResult {
  const { bendingStiffnessNm2, clamps, guides, jointM } = input
  requireNumber('bendingStiffnessNm2', bendingStiffnessNm2, { above: 0 })
  if (clamps.length < 2) throw new RangeError('clamps must be two or more')
  if (clamps.every(({ xM }) => Number.isFinite(xM)) && !standApart(clamps.map(({ xM }) => xM))) throw new RangeError(`clamps must stand more than ${SAME_PLACE_M} m apart`)
  clamps.forEach(({ xM, offsetM }, i) => [['xM', xM], ['offsetM', offsetM]].forEach(([name, value]) => requireNumber(`clamps[${i}].${name}`, value as number)))
  guides.forEach(({ xM, offsetM, holdN }, i) => {
    requireNumber(`guides[${i}].xM`, xM)
    requireNumber(`guides[${i}].offsetM`, offsetM)
    requireNumber(`guides[${i}].holdN`, holdN, { atLeast: 0 })
  })
  const places = placesOf(input)
  const shape = planShape(bendingStiffnessNm2, [...places.map(({ xM }) => xM), ...clamps.map(({ xM }) => xM)], [jointM, ...guides.map(({ xM }) => xM)])
  const clampOffsets = clamps.map(({ offsetM }) => offsetM)
  const straight = places.map(() => 0)
  // Places are few; each column is the force at every place for 1 m of offset at one.
  const columns = places.map((_, j) => shape([...straight.map((_zero, i) => (i === j ? 1 : 0)), ...clamps.map(() => 0)]).forcesN)
  const fromClamps = shape([...straight, ...clampOffsets]).forcesN
  const settled = boxedEquilibrium({
    stiffness: places.map((_, i) => columns.map((column) => column[i]!)),
    loads: places.map((_, i) => fromClamps[i]!),
    targets: places.map(({ offsetM }) => offsetM),
    bounds: places.map(({ holdN }) => holdN),
  })
  const solved = shape([...settled.positions, ...clampOffsets])
  return {
    guides: guides.map((guide, index) => {
      const at = places.findIndex(({ members }) => members.includes(index))
      if (at < 0) return { forceN: 0, isFull: false, pipeOffsetM: solved.at(guide.xM).offsetM }
      const share = guide.holdN / places[at]!.holdN
      return { forceN: settled.forces[at]! * share, isFull: settled.isFull[at]!, pipeOffsetM: settled.positions[at]! }
    }),
    clampForcesN: clamps.map((_, i) => solved.forcesN[places.length + i]!),
    joint: solved.at(jointM),
    isSettled: settled.isSettled,
  }
}

/** Whether clamps hold a pipe in plan: two in one place are a hinge. */
export const standApart = (clampsM: readonly number[]): boolean => clampsM.length > 1 && Math.max(...clampsM) - Math.min(...clampsM) > SAME_PLACE_M

interface Place extends SideGuide {
  /** Guides of the input that make it. */
  members: number[]
}

function placesOf({ clamps, guides }: SideBeamInput): Place[] {
  const places: Place[] = []
  const inOrder = guides.map((guide, index) => ({ ...guide, index })).filter(({ holdN, xM }) => holdN > 0 && clamps.every((clamp) => Math.abs(clamp.xM - xM) > SAME_PLACE_M))
  for (const { xM, offsetM, holdN, index } of inOrder.toSorted((a, b) => a.xM - b.xM || a.index - b.index)) {
    const last = places.at(-1)
    if (last !== undefined && xM - last.xM <= SAME_PLACE_M) {
      last.offsetM = (last.offsetM * last.holdN + offsetM * holdN) / (last.holdN + holdN)
      last.holdN += holdN
      last.members.push(index)
    } else places.push({ xM, offsetM, holdN, members: [index] })
  }
  return places
}

interface PlanShape {
  forcesN: number[]
  at: (xM: number) => { offsetM: number; slopeRatio: number }
}

/** Forces and shape for the offsets of all places, by the contact beam less its own weight. */
function planShape(bendingStiffnessNm2: number, xs: readonly number[], asked: readonly number[]): (offsetsM: readonly number[]) => PlanShape {
  const all = [...xs, ...asked]
  const startM = Math.min(...all)
  const lengthM = Math.max(...all) - startM
  // So light that its forces stay far under those of a millimetre of offset; every place is two-way, so the answer is linear.
  const lineLoadNPerM = (1e-6 * bendingStiffnessNm2) / lengthM ** 3
  const beam = (offsetsM: readonly number[]): ContactBeamResult => {
    const result = solveContactBeam({ startM, lengthM, section: { bendingStiffnessNm2, lineLoadNPerM }, supports: xs.map((xM, i) => ({ xM, levelM: offsetsM[i]!, twoWay: true })) })
    if (result.status !== 'ok') throw new RangeError(`the beam in plan did not settle: ${result.reason ?? result.status}`)
    return result
  }
  const own = beam(xs.map(() => 0))
  return (offsetsM) => {
    const result = beam(offsetsM)
    return {
      forcesN: result.supports.map(({ reactionN }, i) => reactionN - own.supports[i]!.reactionN),
      at: (xM) => ({ offsetM: result.at(xM).levelM - own.at(xM).levelM, slopeRatio: result.at(xM).slopeRatio - own.at(xM).slopeRatio }),
    }
  }
}
