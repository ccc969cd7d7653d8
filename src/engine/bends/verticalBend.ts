/** Bends in section: crests and dips (docs/formulas/bends.md). */
import { requireNumber } from '../outcome.ts'

export interface ProfilePoint {
  /** Along the line, and level of the bottom of the pipe. */
  atM: number
  levelM: number
}

/**
 * Radius of the circle through three bottoms of pipe, m; over a crest positive, in a dip negative, Infinity on one line.
 *
 * Input:  three points in order along the line, two of them never at one distance.
 * Fails:  RangeError where two lie at one distance.
 * Source: geometry, R = abc/(4·area).
 */
export function circleThroughM(a: ProfilePoint, b: ProfilePoint, c: ProfilePoint): number {
  if (!(a.atM < b.atM && b.atM < c.atM)) throw new RangeError('the three points must follow each other along the line')
  const side = (p: ProfilePoint, q: ProfilePoint): number => Math.hypot(q.atM - p.atM, q.levelM - p.levelM)
  const twiceArea = (b.levelM - a.levelM) * (c.atM - a.atM) - (c.levelM - a.levelM) * (b.atM - a.atM)
  return twiceArea === 0 ? Infinity : (side(a, b) * side(b, c) * side(a, c)) / (2 * twiceArea)
}

/** Radius a moment bends the pipe to, EI/|M|, m; Infinity where there is none. */
export function bentRadiusM(bendingStiffnessNm2: number, momentNm: number): number {
  requireNumber('bendingStiffnessNm2', bendingStiffnessNm2, { above: 0 })
  return momentNm === 0 ? Infinity : bendingStiffnessNm2 / Math.abs(momentNm)
}
