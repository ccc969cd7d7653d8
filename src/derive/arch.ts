/** Arch into a bore, pit and parked string of the job, as checks and panel need them (docs/formulas/bends.md). */
import { archFor, archSupports, parkedCurve, reverseCurveM, type Arch, type ArchSupport } from '../engine/bends/arch.ts'
import { holdCurve, USUAL_GUIDE_SPACING_M } from '../engine/bends/holdCurve.ts'
import { minimumBendRadiusM } from '../engine/pipe/bendRadius.ts'
import type { MissingInput, SiteModel } from './types.ts'

/** Slings or rollers under the arch where nobody has said how far apart: 15 ft, common practice, no published source. */
export const USUAL_SPACING_M = 4.572

export interface ArchView {
  /** Least radius by the handbook and by the owner, m; null: not known, not asked. */
  leastM: number | null
  ownerM: number | null
  /** Radius worked with: typed, else the larger of the two. */
  radiusM: number
  radiusIsTyped: boolean
  rollerHeightM: number
  spacingM: number
  arch: Arch
  supports: readonly (ArchSupport & { loadN: number | null })[]
}

/** Least radius of the job's pipe by the table, m; null where pipe or table has none. */
export function leastRadiusM(site: SiteModel): number | null {
  const { properties } = site.pipe
  const least = properties === null ? null : minimumBendRadiusM({ odM: properties.odM, dr: properties.dr, fittingInBend: false })
  return least?.status === 'ok' ? least.value : null
}

/** Height of the pipe on the last roller or stand of the exit, else 0: it lies on the ground. */
export const lastRollerM = (site: SiteModel): number => site.supports.findLast(({ side, saddleM }) => side === 'exit' && saddleM !== null)?.saddleM ?? 0

/**
 * The arch the job asks for. Null where none is planned; the list of what is missing where it cannot be worked out.
 */
export function archOf(site: SiteModel): ArchView | { missing: readonly MissingInput[] } | null {
  const { arch, id } = site.job
  if (arch === null) return null
  const leastM = leastRadiusM(site)
  const ownerM = arch.ownerTimesOd === null || site.pipe.odM === null ? null : arch.ownerTimesOd * site.pipe.odM
  const radiusM = arch.radiusM ?? (leastM === null && ownerM === null ? null : Math.max(leastM ?? 0, ownerM ?? 0))
  const missing: MissingInput[] = [
    ...(arch.entryAngleRad === null ? [{ recordId: id, path: 'arch.entryAngleRad', label: { en: 'entry angle', es: 'ángulo de entrada' } }] : []),
    ...(radiusM === null ? [{ recordId: id, path: 'arch.radiusM', label: { en: 'radius of the arch', es: 'radio del arco' } }] : []),
    ...(site.pipe.properties === null ? site.pipe.missing.filter(({ path }) => path === 'pipe') : []),
  ]
  if (arch.entryAngleRad === null || radiusM === null || missing.length > 0) return { missing }
  const rollerHeightM = arch.rollerHeightM ?? lastRollerM(site)
  const spacingM = arch.supportSpacingM ?? USUAL_SPACING_M
  const made = archFor({ entryAngleRad: arch.entryAngleRad, radiusM, rollerHeightM })
  const lineLoadNPerM = site.pipe.properties?.lineLoadNPerM ?? null
  return {
    leastM, ownerM, radiusM, radiusIsTyped: arch.radiusM !== null, rollerHeightM, spacingM, arch: made,
    supports: archSupports(made, spacingM).map((one) => ({ ...one, loadN: lineLoadNPerM === null ? null : lineLoadNPerM * one.carriesM })),
  }
}

/** Length of a pit, m; null where depth or radius are unknown or the depth is more than two radii. */
export const pitLengthM = (depthM: number | null, radiusM: number | null): number | null => (depthM === null || radiusM === null || depthM > 2 * radiusM ? null : reverseCurveM(depthM, radiusM))

export interface ParkedView {
  turnRad: number
  isOverHalfTurn: boolean
  chordM: number
  depthM: number
  /** Couple that holds the curve and the force on each guide at the usual distance, at first; null while the stiffness is unknown. */
  coupleNm: number | null
  guideN: number | null
  /** The same after a night. */
  guideLaterN: number | null
}

/** A string parked on a curve: what room it takes and what holds it. Null where length or radius are not above 0. */
export function parkedView(site: SiteModel, lengthM: number | null, radiusM: number | null): ParkedView | null {
  if (lengthM === null || radiusM === null || !(lengthM > 0) || !(radiusM > 0)) return null
  const held = (question: 'pull' | 'rest'): { coupleNm: number; guideN: number } | null => {
    const bendingStiffnessNm2 = site.pipe.stiffnessNm2(question)
    return bendingStiffnessNm2 === null ? null : holdCurve({ bendingStiffnessNm2, radiusM, armM: USUAL_GUIDE_SPACING_M })
  }
  const [first, later] = [held('pull'), held('rest')]
  return { ...parkedCurve(lengthM, radiusM), coupleNm: first?.coupleNm ?? null, guideN: first?.guideN ?? null, guideLaterN: later?.guideN ?? null }
}
