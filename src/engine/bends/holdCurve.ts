/** Force that holds a pipe to a curve in plan (docs/formulas/bends.md). */
import { requireNumber } from '../outcome.ts'

/** Guides at a bend stand this far apart where nobody has said: 15 ft, common practice, no published source. */
export const USUAL_GUIDE_SPACING_M = 4.572

/**
 * What holds a straight-born pipe to an arc.
 *
 * Model:  an arc of one radius is held by a couple EI/R at either end and nothing between; a pair of guides `armM` apart gives
 *         the couple with equal and opposite forces. Elastic, without friction of the ground: it helps to hold, so the figure is the most.
 * Input:  stiffness EI for the time the curve is held (N·m²), radius of the pipe's axis and arm, m, all above 0.
 * Output: couple in N·m, force on each guide of a pair in N.
 * Fails:  RangeError naming the figure.
 * Source: beam theory, M = EI/R.
 */
export function holdCurve(input: { bendingStiffnessNm2: number; radiusM: number; armM: number }): { coupleNm: number; guideN: number } {
  const { bendingStiffnessNm2, radiusM, armM } = input
  requireNumber('bendingStiffnessNm2', bendingStiffnessNm2, { above: 0 })
  requireNumber('radiusM', radiusM, { above: 0 })
  requireNumber('armM', armM, { above: 0 })
  const coupleNm = bendingStiffnessNm2 / radiusM
  return { coupleNm, guideN: coupleNm / armM }
}

/**
 * Length of straight pipe, m, that a bend drags along where it springs back: it turns about the bend with friction across it,
 * and stays where µ·w·ℓ²/2 reaches the couple EI/R. Longer tails lie still beyond it.
 *
 * Input:  couple in N·m ≥ 0, weight by length in N/m > 0, friction across the pipe > 0 (the low one, for safety).
 * Source: derived, statics of a rod turned about its end on a rough plane.
 */
export function draggedTailM(input: { coupleNm: number; lineLoadNPerM: number; frictionRatio: number }): number {
  const { coupleNm, lineLoadNPerM, frictionRatio } = input
  requireNumber('coupleNm', coupleNm, { atLeast: 0 })
  requireNumber('lineLoadNPerM', lineLoadNPerM, { above: 0 })
  requireNumber('frictionRatio', frictionRatio, { above: 0 })
  return Math.sqrt((2 * coupleNm) / (frictionRatio * lineLoadNPerM))
}
