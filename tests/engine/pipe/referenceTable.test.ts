import { describe, expect, it } from 'vitest'
import file from '../../../shared/cases/reference-table.json' with { type: 'json' }
import { referenceFigures } from '../../helpers/verificationRows.ts'

const rowsWithOurs = file.rows.map((row) => ({ row, ours: referenceFigures(row) }))

// Half a unit of the last digit the table prints, where that is more than 1 %. The table is good to 2 % by its own word: its hot row
// prints a lay-down of 45 ft where 55 × 0.43^¼ = 44.5, so that column gets 2 %.
const halfDigit = { wallIn: 0.0005, lbPerFt: 0.05, sagIn: 0.005, noseIn: 0.5, noseSpacingFt: 0.05, layDownFt: 0.5, bendFt: 0.1, fittingFt: 0.5, allowableKlb: 0.1 }

describe('the reference table of fourteen pipes', () => {
  it.each(Object.keys(halfDigit) as (keyof typeof halfDigit)[])('%s agrees in every row within the digits printed', (column) => {
    const off = rowsWithOurs.flatMap(({ row, ours }) => {
      const theirs = row[column]
      if (theirs === null) return []
      const allowed = Math.max((column === 'layDownFt' ? 0.02 : 0.01) * theirs, halfDigit[column]) * 1.0001
      return Math.abs(ours[column] - theirs) <= allowed ? [] : [`${row.label}: ${ours[column]} against ${theirs}`]
    })
    expect(off).toEqual([])
  })

  it('reads all fourteen rows', () => expect(rowsWithOurs).toHaveLength(14))
})
