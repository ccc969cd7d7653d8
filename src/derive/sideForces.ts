/** Side forces of supports off the line, at the jaws and at each guide, while a joint is fused (docs/formulas/side-force.md). */
import { limitParam, type Limit } from '../engine/limits.ts'
import { sideHoldRatio, type GuideGeometry, type GuideShape } from '../engine/lateral/guideHold.ts'
import { solveSideForces, standApart, type SideGuide } from '../engine/lateral/solveSideForces.ts'
import type { JointSolve, Side } from './jawSolve.ts'
import type { SiteModel, SupportView } from './types.ts'

export interface GuideForce {
  view: SupportView
  /** Weight it carries in this body. */
  loadN: number
  /** On the pipe, right positive. */
  forceN: number
  /** What it can hold sideways under that load. */
  holdN: number
  /** It gives all it can: the pipe rides up the side of its V or cradle, or slides over a flat roller. */
  isFull: boolean
  /** How far the pipe lies past the middle of the guide, away from it; 0 where it holds. */
  pastM: number
}

export interface SideForces {
  joint: number
  side: Side
  guides: readonly GuideForce[]
  /** On the pipe, right positive. */
  innerN: number
  outerN: number
  /** Largest side force at a jaw × clamp spacing ÷ (stick weight × lever). */
  effortRatio: number
  /** Of the pipe end at the joint, right positive. */
  offsetM: number
  /** False where it was not found which guides are full; the figures are then near, not right. */
  isSettled: boolean
}

/** Guides looked at on one side of the jaws: the next one behind that many spans moves nothing at the jaws. */
const MOST_GUIDES = 24
/** Offsets under this are the rounding of a projection. */
const ON_LINE_M = 1e-6

/** The lane of a rack keeps a stick where it was rolled to, as a V does. */
export const guideShapeOf = ({ kind, roller }: SupportView): GuideShape => (kind === 'rack' ? 'V' : roller)

export const guideGeometryOf = (limit: Limit): GuideGeometry => ({
  vFlankRad: limitParam(limit, 'vFlankRad'), cradleEdgeRad: limitParam(limit, 'cradleEdgeRad'), sideFrictionRatio: limitParam(limit, 'sideFrictionRatio'),
})

/**
 * Side forces of the fed stick (once) and of the string at every joint solved.
 *
 * Model:  the same bodies as upright, in plan: both clamps of a side hold the pipe on the line, every support that carries
 *         holds it on its own offset with what its shape gives under its load. Of a run that bends, the part before the
 *         first bend; the bend's own couple is that of docs/formulas/pull.md.
 * Output: empty where nothing was solved upright.
 */
export function sideForcesOf(site: SiteModel, solves: readonly JointSolve[], limits: { guide: Limit; jaws: Limit }): readonly SideForces[] {
  return solves.flatMap((solve, i) => (['infeed', 'exit'] as const).flatMap((side) => {
    if (side === 'infeed' && i > 0) return []
    const made = ofSide(site, solve, side, limits)
    return made === null ? [] : [made]
  }))
}

function ofSide(site: SiteModel, solve: JointSolve, side: Side, limits: { guide: Limit; jaws: Limit }): SideForces | null {
  const { closed, body } = solve[side]
  const bendingStiffnessNm2 = site.pipe.stiffnessNm2(body.question)
  if (bendingStiffnessNm2 === null) return null
  const geometry = guideGeometryOf(limits.guide)
  const firstBendM = Math.min(Infinity, ...site.bends.map(({ fromM }) => fromM))
  const guides = closed.supports
    .filter(({ view, reactionN }) => reactionN > 0 && view.runningM < firstBendM)
    .toSorted((a, b) => Math.abs(a.view.runningM) - Math.abs(b.view.runningM))
    .slice(0, MOST_GUIDES)
    .map(({ view, reactionN }) => ({ view, loadN: reactionN, holdN: reactionN * sideHoldRatio(guideShapeOf(view), geometry) }))
  const clamps = closed.jaws.map(({ at, runningM }) => ({ at, xM: runningM, offsetM: 0 }))
  if (!standApart(clamps.map(({ xM }) => xM))) return null
  const common = { joint: solve.joint, side }
  if (guides.every(({ view }) => Math.abs(view.offsetM) < ON_LINE_M)) {
    return { ...common, guides: guides.map((guide) => ({ ...guide, forceN: 0, isFull: false, pastM: 0 })), innerN: 0, outerN: 0, effortRatio: 0, offsetM: 0, isSettled: true }
  }
  const places = guides.map(({ view, holdN }): SideGuide => ({ xM: view.runningM, offsetM: view.offsetM, holdN }))
  const result = solveSideForces({ bendingStiffnessNm2, clamps, guides: places, jointM: 0 })
  const at = (name: 'inner' | 'outer'): number => result.clampForcesN[clamps.findIndex((clamp) => clamp.at === name)] ?? 0
  const stickMomentNm = (site.pipe.properties?.lineLoadNPerM ?? 0) * (site.sticks.stickLengthM ?? 0) * limitParam(limits.jaws, 'leverM')
  return {
    ...common,
    guides: guides.map((guide, i) => {
      const { forceN, isFull, pipeOffsetM } = result.guides[i]!
      return { ...guide, forceN, isFull, pastM: isFull ? Math.abs(guide.view.offsetM - pipeOffsetM) : 0 }
    }),
    innerN: at('inner'), outerN: at('outer'),
    effortRatio: (Math.max(...result.clampForcesN.map(Math.abs)) * (site.jaws.outerClampM - site.jaws.innerClampM)) / stickMomentNm,
    offsetM: result.joint.offsetM,
    isSettled: result.isSettled,
  }
}
