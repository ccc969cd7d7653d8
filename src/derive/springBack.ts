/** Where a bent string goes when what holds it lets go, and the ground its tail takes round a bend (docs/formulas/bends.md). */
import { draggedTailM, holdCurve } from '../engine/bends/holdCurve.ts'
import { chordCutRing, springBackRing } from '../engine/bends/springBack.ts'
import { frictionOf } from '../engine/pipe/tables.ts'
import type { Pose, Vec } from '../geometry/vector.ts'
import type { RunBend, SiteModel } from './types.ts'

/** Ground swept at one bend. Rings lie on the pipe's axis in the site frame; half the pipe and any margin come on top. */
export interface SpringBack {
  /** Index into the run's vertices. */
  vertex: number
  radiusM: number
  rings: readonly (readonly Vec[])[]
}

/** Radius drawn at a bend; null for a corner nobody has rounded. */
export const drawnRadiusM = ({ fromM, toM, turnRad }: RunBend): number | null => (toM > fromM && turnRad !== 0 ? (toM - fromM) / Math.abs(turnRad) : null)

/**
 * Straight pipe, m, that springs back with a bend before friction holds it, on the low friction of the surface there.
 * Null while the pipe is unknown.
 */
export function freeTailM(site: SiteModel, radiusM: number, atM: number): number | null {
  const bendingStiffnessNm2 = site.pipe.stiffnessNm2('pull')
  if (bendingStiffnessNm2 === null || site.pipe.properties === null) return null
  const { coupleNm } = holdCurve({ bendingStiffnessNm2, radiusM, armM: 1 })
  return draggedTailM({ coupleNm, lineLoadNPerM: site.pipe.properties.lineLoadNPerM, frictionRatio: frictionOf(site.surfaceAt(atM)).runAwayLow })
}

/**
 * Ground a string between `tailM` and `noseM` (running distances) sweeps at each bend it lies in, if all guides there let go.
 *
 * Model:  the nose's side swings about the start of the bend. The tail's side swings about its end only where the tail is out of the
 *         machine: in it the jaws hold. Straight pipe beyond the bend swings as far as the couple EI/R drags it over the low friction
 *         (`freeTailM`), all of it while the pipe is unknown.
 * Output: bends without a radius are left out; their own check asks for it. Chords within `sagM` of the curves, 1 mm unless told.
 */
export function springBacksOf(site: SiteModel, { tailM, noseM, sagM }: { tailM: number; noseM: number; sagM?: number }): SpringBack[] {
  return site.bends.flatMap((bend): SpringBack[] => {
    const radiusM = drawnRadiusM(bend)
    const [inM, outM] = [Math.max(bend.fromM, tailM), Math.min(bend.toM, noseM)]
    if (radiusM === null || outM <= inM) return []
    const turnRad = (Math.sign(bend.turnRad) * (outM - inM)) / radiusM
    const freeM = freeTailM(site, radiusM, outM) ?? Infinity
    const rings = [springBackRing(site.atRunning(inM), { radiusM, turnRad, tailM: Math.min(noseM - outM, freeM) }, sagM)]
    if (tailM > site.jaws.outerClampM) rings.push(springBackRing(backwards(site.atRunning(outM)), { radiusM, turnRad: 0 - turnRad, tailM: Math.min(inM - tailM, freeM) }, sagM))
    return [{ vertex: bend.vertex, radiusM, rings }]
  })
}

/** Stretch of a bend between two neighbouring guides, or its ends where none stand. */
export interface GuidedStretch {
  vertex: number
  fromM: number
  toM: number
  radiusM: number
  /** Outside of the bend: the tail straightens against the guide ahead as soon as it leaves the one behind. */
  tailRing: readonly Vec[]
  /** Inside: a string drawn tight lies on the chord between two guides. */
  chordRing: readonly Vec[]
}

/**
 * Ground a string takes beside its line while it is drawn round the bends: exact between the guides on the plan.
 *
 * Model:  a guide holds the pipe to the line; between two it lies anywhere from the chord to the arc, and the tail that has passed a guide
 *         anywhere from the arc to the tangent at the next one. The ends of a bend count as guides: the pipe there lies on the straight.
 */
export function guidedStretchesOf(site: SiteModel): GuidedStretch[] {
  const guidesM = guidesOf(site).map(({ runningM }) => runningM)
  return site.bends.flatMap((bend): GuidedStretch[] => {
    const radiusM = drawnRadiusM(bend)
    if (radiusM === null) return []
    const places = [bend.fromM, ...guidesM.filter((at) => at > bend.fromM && at < bend.toM), bend.toM]
    return places.slice(1).map((toM, i) => {
      const fromM = places[i]!
      const turnRad = (Math.sign(bend.turnRad) * (toM - fromM)) / radiusM
      return {
        vertex: bend.vertex, fromM, toM, radiusM,
        tailRing: springBackRing(backwards(site.atRunning(toM)), { radiusM, turnRad: 0 - turnRad, tailM: 0 }),
        chordRing: chordCutRing(site.atRunning(fromM), { radiusM, turnRad }),
      }
    })
  })
}

/** Guides and stakes of the shown run, from the datum on. */
export interface GuideView {
  id: string
  label: string
  runningM: number
  /** Null: nobody has said what it holds. */
  holdN: number | null
}

/** A guide this far from the line holds something else. */
const BESIDE_M = 1

export const guidesOf = (site: SiteModel): GuideView[] =>
  [...site.placed.values()].flatMap(({ id, label, record, runningM, offsetM }): GuideView[] =>
    record.kind !== 'guide' || runningM === null || Math.abs(offsetM ?? 0) > BESIDE_M ? [] : [{ id, label, runningM, holdN: record.figures.ratedHoldN.value }],
  ).toSorted((a, b) => a.runningM - b.runningM)

const backwards = (pose: Pose): Pose => ({ ...pose, headingRad: pose.headingRad + Math.PI })
