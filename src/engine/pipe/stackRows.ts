/** How many rows of loose pipe may lie in a stack. */
import { inchM } from '../../units/factors.ts'
import { known, missingAmong, uncovered } from '../outcome.ts'
import type { Outcome } from '../outcome.ts'
import { stackRowTable, usSizes } from './tables.ts'

/**
 * Rows by outside diameter and DR. A pipe between two IPS sizes takes the row of the larger one.
 *
 * Output: 'uncovered' over 63 in.
 * Source: PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 2, from memory, confirm.
 */
export function stackRows(input: { odM: number | null; dr: number | null }): Outcome<number> {
  const { odM, dr } = input
  if (odM === null || dr === null) return missingAmong({ odM, dr })!
  const odOfRow = (sizeIn: number): number => usSizes.IPS.find(({ size }) => Number(size) === sizeIn)!.odIn * inchM
  const row = stackRowTable.find(({ sizeIn }) => odM <= odOfRow(sizeIn) + 1e-9)
  if (!row) return uncovered('odM', 'the stacking table ends at 63 in', 'la tabla de apilado termina en 63 pulg')
  return known(dr <= 17 ? row.thick : row.thin)
}
