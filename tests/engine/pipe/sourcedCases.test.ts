import { describe, expect, it } from 'vitest'
import file from '../../../shared/cases/pipe-cases.json' with { type: 'json' }
import { caseChecks } from './caseChecks.ts'
import type { CaseRow } from './caseChecks.ts'

const cases = file.cases as readonly CaseRow[]

/** A check counts once per source and quantity; ten values of one table count as one. 'calculated' has no source. */
export function countSourced(rows: readonly CaseRow[]): number {
  const groups = new Map<string, number>()
  for (const { source, check, basis } of rows) {
    if (basis !== 'calculated') groups.set(`${source} | ${check}`, (groups.get(`${source} | ${check}`) ?? 0) + 1)
  }
  return [...groups.values()].reduce((sum, values) => sum + Math.ceil(values / 10), 0)
}

describe('pipe and safety figures against their sources', () => {
  const checks = [...new Set(cases.map(({ check }) => check))]

  it.each(checks)('%s agrees in every case', (check) => {
    const off = cases.filter((row) => row.check === check).flatMap(({ id, input, unit, expected, tolerance, source }) => {
      const ours = caseChecks[check]!(input, unit)
      const allowed = (tolerance.absolute ?? tolerance.relative! * Math.abs(expected)) + 1e-12
      return Math.abs(ours - expected) <= allowed ? [] : [`${id}: ${ours} ${unit}, ${source} gives ${expected} ± ${allowed}`]
    })
    expect(off).toEqual([])
  })

  it('names a source and a basis beside every case', () => {
    for (const { id, source, basis } of cases) {
      expect(source.length, id).toBeGreaterThan(5)
      expect(['read', 'from memory, confirm', 'published form, calculated value', 'calculated'], id).toContain(basis)
    }
  })

  it('holds at least 30 checks by the counting rule', () => expect(countSourced(cases)).toBeGreaterThanOrEqual(30))
})
