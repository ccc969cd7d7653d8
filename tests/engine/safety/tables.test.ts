import { describe, expect, it } from 'vitest'
import { machineDepths, tableA, transitRules, trenchRows } from '../../../src/engine/safety/tables.ts'

describe('the safety tables', () => {
  it('rise with the voltage, in distance too', () => {
    for (const rows of [tableA.rows, transitRules.tableT.rows, transitRules.vehicles.rows]) {
      rows.slice(1).forEach(([kv, ft], index) => {
        expect(kv).toBeGreaterThan(rows[index]![0])
        expect(ft).toBeGreaterThan(rows[index]![1])
      })
    }
  })

  it('call the one-depth rule a house rule and the rest published', () => {
    expect(machineDepths.sourceClass).toBe('houseRule')
    expect(trenchRows.every(({ sourceClass, source }) => sourceClass === 'published' && source.startsWith('29 CFR'))).toBe(true)
  })
})
