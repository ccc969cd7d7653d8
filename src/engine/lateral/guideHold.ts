/** What a roller can hold the pipe with sideways, by its shape (docs/formulas/side-force.md). */

export type GuideShape = 'flat' | 'V' | 'cradle'

export interface GuideGeometry {
  /** Flank of a V roller against the level, 0 … π/2. */
  vFlankRad: number
  /** Slope of a cradle where the pipe leaves it: at its edge, or at the rollers it is made of. */
  cradleEdgeRad: number
  /** Friction of pipe across a roller that does not turn that way. */
  sideFrictionRatio: number
}

/**
 * Largest side force a guide gives over the load on it.
 *
 * Model:  V and cradle without friction. About to climb, the pipe bears on one flank only, square to it: force N·tanβ for a
 *         load N on a flank at β against the level. Friction would add to it and is not counted on. A cradle is the same
 *         at the slope of its edge; that the pipe shifts a little on the way there is left out, which makes it stiffer than
 *         it is. A flat roller has no side: it drags the pipe toward where it was laid with friction, and no more.
 * Valid:  flanks under π/2; past it RangeError naming the field.
 * Source: statics of a body on an incline; angles and friction of usual rollers are house rules (limit `guide-hold`).
 */
export function sideHoldRatio(shape: GuideShape, { vFlankRad, cradleEdgeRad, sideFrictionRatio }: GuideGeometry): number {
  if (shape === 'flat') return sideFrictionRatio
  const name = shape === 'V' ? 'vFlankRad' : 'cradleEdgeRad'
  const flankRad = shape === 'V' ? vFlankRad : cradleEdgeRad
  if (!(flankRad >= 0 && flankRad < Math.PI / 2)) throw new RangeError(`${name} is ${flankRad}, must be from 0 to less than π/2`)
  return Math.tan(flankRad)
}
