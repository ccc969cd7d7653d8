import { describe, expect, it } from 'vitest'
import { trenchRules } from '../../../src/engine/safety/trenchRules.ts'
import { footM } from '../../../src/units/factors.ts'

describe('a trench', () => {
  it.each([
    // depth ft: way out from 4, protection from 5, guarded edge from 6, engineer from 20
    [3.9, false, false, false, false],
    [4, true, false, false, false],
    [5, true, true, false, false],
    [9, true, true, true, false],
    [20, true, true, true, true],
  ])('of %d ft', (depthFt, egress, protection, guard, engineer) => {
    expect(trenchRules(depthFt * footM)).toMatchObject({ needsEgress: egress, needsProtection: protection, needsGuard: guard, needsEngineer: engineer })
  })

  it('keeps machines one depth away, never less than the legal two feet', () => {
    expect(trenchRules(9 * footM).machineM! / footM).toBeCloseTo(9, 9)
    expect(trenchRules(1 * footM).machineM! / footM).toBeCloseTo(2, 9)
  })

  it('knows only the legal distance while the depth is unknown', () => {
    const rules = trenchRules(null)
    expect(rules.edgeM / footM).toBeCloseTo(2, 9)
    expect(rules).toMatchObject({ machineM: null, needsEgress: null, needsProtection: null })
    expect(() => trenchRules(-1)).toThrow('depthM')
  })

  it('names its source beside each figure', () => {
    const { sources } = trenchRules(3)
    expect(sources.edge).toContain('1926.651')
    expect(sources.machine).toContain('common practice')
  })
})
