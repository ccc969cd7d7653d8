import { describe, expect, it } from 'vitest'
import { overheadClearanceM } from '../../../src/engine/safety/overheadClearance.ts'
import { overheadRuleSets, overheadRulesOf } from '../../../src/engine/safety/tables.ts'
import { footM } from '../../../src/units/factors.ts'

const feetBy = (rules: string, kv: number): number => Math.round(((overheadClearanceM(kv, overheadRuleSets[rules]!).clearanceM ?? NaN) / footM) * 100) / 100

describe('rule sets of overhead lines', () => {
  it('are taken by the profile of the layout, the federal one where it names none', () => {
    expect([overheadRulesOf('US').id, overheadRulesOf('metric-generic').id, overheadRulesOf('nowhere').id]).toEqual(['federal', 'federal', 'federal'])
  })

  it('replace each other: mines ask for their own distances, a bound belongs to the next band', () => {
    // 30 CFR 77.807-2: below 69 kV 10 ft, 69 to below 115 12 ft, to 230 15 ft, to 345 20 ft, to 500 25 ft, 500 and over 35 ft.
    expect([68.9, 69, 114.9, 115, 229.9, 230, 345, 499.9, 500, 1200].map((kv) => feetBy('mines', kv))).toEqual([10, 12, 12, 15, 15, 20, 25, 25, 35, 35])
    // 29 CFR 1926.1408 Table A: to and including 50 kV 10 ft, 200 kV 15 ft.
    expect([50, 50.1, 200, 200.1].map((kv) => feetBy('federal', kv))).toEqual([10, 15, 15, 20])
  })

  it('name their own source', () => {
    expect(overheadClearanceM(100, overheadRuleSets['mines']).source).toBe('30 CFR 77.807-2')
    expect(overheadClearanceM(100).source).toContain('1926.1408')
  })
})
