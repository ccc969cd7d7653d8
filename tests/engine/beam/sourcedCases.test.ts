import { describe, expect, it } from 'vitest'
import file from '../../../shared/cases/beam-cases.json' with { type: 'json' }
import { beamCheck } from './beamChecks.ts'

describe('contact beam against published and derived values', () => {
  it.each(file.cases.map((row) => [row.id, row.source, row] as const))('%s (%s)', (_id, _source, row) => {
    const ours = beamCheck(row.check, row.input)
    expect(ours).toHaveLength(row.expected.length)
    ours.forEach((value, i) => expect(Math.abs(value - row.expected[i]!)).toBeLessThanOrEqual(row.tolerance.absolute))
  })

  it('every row says whether its source was read, recalled or is our own arithmetic', () => {
    expect(file.cases.filter(({ basis }) => !['read', 'from memory, confirm', 'calculated'].includes(basis))).toEqual([])
    expect(file.cases.filter(({ basis }) => basis !== 'calculated').length).toBeGreaterThanOrEqual(40)
  })
})
