/** Ground a bent pipe sweeps while it straightens, exactly (docs/formulas/bends.md). */
import { add, rotate, type Pose, type Vec } from '../../geometry/vector.ts'
import { requireNumber } from '../outcome.ts'

/** Chords of an outline stay within this of the curve they follow, unless told. */
const SAG_M = 0.001
const MOST_STEPS = 2000

/**
 * Outline swept by a pipe bent to an arc and held at its start, when what holds it along the arc and beyond lets go.
 *
 * Model:  it stays an arc of one curvature k, from 1/R down to 0, tangent to its start; the tail beyond goes on straight. A point s along
 *         is at (sin ks / k, (1 − cos ks)/k). Circles of different curvature touch
 *         at the start and meet nowhere else, so what is swept lies between the bent shape, the straight one and the path of the free end.
 * Input:  `start`: place and direction of the held end; turn, left positive, at most 180° either way; radius > 0; tail ≥ 0, m.
 * Output: one ring in the site frame: bent shape outward, path of the free end, straight line back. No width of the pipe. Chords within `sagM`, 1 mm unless told.
 * Fails:  RangeError naming the figure.
 * Source: geometry, derived.
 */
export function springBackRing(start: Pose, bend: { radiusM: number; turnRad: number; tailM: number }, sagM = SAG_M): Vec[] {
  const { radiusM, turnRad, tailM } = bend
  requireNumber('radiusM', radiusM, { above: 0 })
  requireNumber('tailM', tailM, { atLeast: 0 })
  requireNumber('turnRad', turnRad, { atLeast: -Math.PI, atMost: Math.PI })
  const arcM = radiusM * Math.abs(turnRad)
  const at = (sM: number, turnedRad: number): Vec => placed(start, shapeAt({ arcM, turnRad: turnedRad }, sM))
  const steps = stepsFor(radiusM, Math.abs(turnRad), sagM)
  const bent = Array.from({ length: steps + 1 }, (_, i) => at((arcM * i) / steps, turnRad))
  // The free end goes round on a path flatter than a circle of the whole length.
  const pathSteps = stepsFor(arcM + tailM, Math.abs(turnRad), sagM)
  const path = Array.from({ length: pathSteps + 1 }, (_, i) => at(arcM + tailM, turnRad * (1 - i / pathSteps)))
  return [...bent, ...path]
}

/** Chords of an arc, each within `sagM` of it. */
const stepsFor = (radiusM: number, turnRad: number, sagM: number): number => Math.min(MOST_STEPS, Math.max(1, Math.ceil(turnRad / Math.sqrt((8 * sagM) / Math.max(radiusM, sagM)))))

/** Place `sM` along a pipe of `arcM` turned by `turnRad` in all, straight beyond; x along its start, y to the left. */
function shapeAt({ arcM, turnRad }: { arcM: number; turnRad: number }, sM: number): Vec {
  const share = arcM > 0 ? Math.min(sM, arcM) / arcM : 0
  const turned = turnRad * share
  const onArcM = Math.min(sM, arcM)
  // sin(a)/a, 1 for a straight pipe.
  const chord = Math.abs(turned) < 1e-9 ? { xM: onArcM, yM: 0 } : { xM: (onArcM * Math.sin(turned)) / turned, yM: (onArcM * (1 - Math.cos(turned))) / turned }
  const beyondM = Math.max(0, sM - arcM)
  return add(chord, rotate({ xM: beyondM, yM: 0 }, turned))
}

const placed = (start: Pose, local: Vec): Vec => add(start, rotate(local, start.headingRad))

/**
 * Outline between an arc and its chord: how far a pipe pulled tight cuts the corner between two guides.
 * Input:  place and direction where the arc starts, its radius and turn. Output: ring of the arc, closed by the chord.
 */
export function chordCutRing(start: Pose, bend: { radiusM: number; turnRad: number }): Vec[] {
  const arcM = bend.radiusM * Math.abs(bend.turnRad)
  const steps = stepsFor(bend.radiusM, Math.abs(bend.turnRad), SAG_M)
  return Array.from({ length: steps + 1 }, (_, i) => placed(start, shapeAt({ arcM, turnRad: bend.turnRad }, (arcM * i) / steps)))
}
