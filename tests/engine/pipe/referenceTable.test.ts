import { describe, expect, it } from 'vitest'
import file from '../../../shared/cases/reference-table.json' with { type: 'json' }
import { freeLayDownLengthM, noseDroopM, noseLandingSpacingM } from '../../../src/engine/beam/closedForms.ts'
import { allowableTensileLoadN } from '../../../src/engine/pipe/allowablePull.ts'
import { minimumBendRadiusM } from '../../../src/engine/pipe/bendRadius.ts'
import { pipeProperties } from '../../../src/engine/pipe/pipeProperties.ts'
import { innerSpanSagM } from '../../../src/engine/pipe/spans.ts'
import type { PipeSystem } from '../../../src/engine/pipe/tables.ts'
import { footM, inchM, poundForceN, poundPerFootNPerM, psiPa } from '../../../src/units/factors.ts'
import { must } from './caseChecks.ts'

// The table's convention: mean wall 1.06 × OD/DR for weight and stiffness, 0.955, 78,000 psi. Metric walls are OD/DR there,
// not the metric table's, so the wall is given.
const rowsWithOurs = file.rows.map((row) => {
  const system = row.system as PipeSystem
  const common = { system, size: row.size, dr: row.dr, material: 'PE4710' as const }
  const minimum = must(pipeProperties(common))
  const wallM = system === 'metric' ? minimum.odM / row.dr : minimum.minimumWallM
  const pipe = must(pipeProperties({ ...common, weightWall: 'given', stiffnessWall: 'given', givenWallM: 1.06 * wallM }))
  const modulusPa = 78_000 * psiPa * (row.wallC === null ? 1 : 0.43)
  const beam = { lineLoadNPerM: pipe.lineLoadNPerM, bendingStiffnessNm2: modulusPa * pipe.inertiaM4 }
  const ours = {
    wallIn: wallM / inchM,
    lbPerFt: pipe.lineLoadNPerM / poundPerFootNPerM,
    sagIn: innerSpanSagM(beam, 20 * footM) / inchM,
    noseIn: noseDroopM({ ...beam, spacingM: 20 * footM, root: 'manySpans' }) / inchM,
    noseSpacingFt: noseLandingSpacingM({ ...beam, droopM: 3 * inchM, root: 'manySpans' }) / footM,
    layDownFt: freeLayDownLengthM({ ...beam, heightM: row.layDownHeightIn * inchM }) / footM,
    bendFt: must(minimumBendRadiusM({ ...pipe, fittingInBend: false })) / footM,
    fittingFt: must(minimumBendRadiusM({ ...pipe, fittingInBend: true })) / footM,
    allowableKlb: must(allowableTensileLoadN({ edition: 'F1804', material: 'PE4710', odM: pipe.odM, dr: pipe.dr, durationS: 3600, wallTemperatureC: 23 })).loadN / poundForceN / 1000,
  }
  return { row, ours }
})

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
