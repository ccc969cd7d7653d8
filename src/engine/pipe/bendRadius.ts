/** Least cold bend radius of a pipe by its DR. */
import { known, missingAmong, requireNumber, uncovered } from '../outcome.ts'
import type { Outcome } from '../outcome.ts'
import { bendRows, fittingTimesOd } from './tables.ts'

/**
 * Least radius as a multiple of the outside diameter. Between two rows the larger multiple, below the first row its own;
 * undefined above the last row (DR 41): no published value.
 */
export function bendTimesOd(dr: number): number | undefined {
  return bendRows.find((row) => dr <= row.dr)?.timesOd
}

/**
 * Least bend radius in m, of the pipe's axis.
 *
 * Input:  the true outside diameter, not the nominal size; a fitting or flange in the bend takes 100 OD whatever the DR.
 * Output: 'uncovered' above DR 41.
 * Source: PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 7, open-cut table.
 */
export function minimumBendRadiusM(input: { odM: number | null; dr: number | null; fittingInBend: boolean }): Outcome<number> {
  const { odM, dr, fittingInBend } = input
  if (odM === null || (dr === null && !fittingInBend)) return missingAmong({ odM, dr: fittingInBend ? 0 : dr })!
  requireNumber('odM', odM, { above: 0 })
  if (fittingInBend || dr === null) return known(fittingTimesOd * odM)
  requireNumber('dr', dr, { above: 2 })
  const timesOd = bendTimesOd(dr)
  if (timesOd === undefined) return uncovered('dr', `the bend table ends at DR 41, this is DR ${dr}`, `la tabla de curvatura termina en DR 41, este es DR ${dr}`)
  return known(timesOd * odM)
}

/** Strain of the outer fibre in a bend: OD / 2R. */
export function bendStrainRatio(odM: number, radiusM: number): number {
  return odM / (2 * radiusM)
}
