import { describe, expect, it } from 'vitest'
import file from '../../../shared/cases/pull-cases.json' with { type: 'json' }
import { pullCheck, type PullCaseInput } from '../../helpers/pullChecks.ts'

interface CaseRow {
  id: string
  check: string
  input: PullCaseInput
  expected: number
  tolerance: { relative?: number; absolute?: number }
  unit: string
  source: string
  basis: string
}

const cases = file.cases as readonly CaseRow[]

const num = (value: number | undefined): number => {
  if (value === undefined) throw new Error('the case lacks a number its check needs')
  return value
}

describe('pull against its sources', () => {
  it.each(cases.map((row) => [row.id, row] as const))('%s', (_id, row) => {
    const ours = pullCheck(row.check, row.input, row.unit)
    const allowed = row.tolerance.absolute ?? num(row.tolerance.relative) * row.expected
    expect(Math.abs(ours - row.expected), `${ours} ${row.unit}`).toBeLessThanOrEqual(allowed)
  })

  it('names a source and a basis beside every case', () => {
    for (const { id, source, basis } of cases) {
      expect(source.length, id).toBeGreaterThan(5)
      expect(['read', 'from memory, confirm', 'published form, calculated value', 'calculated'], id).toContain(basis)
    }
  })
})
