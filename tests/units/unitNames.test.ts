import { describe, expect, it } from 'vitest'
import { kindUnits } from '../../src/units/unitNames.ts'

describe('the units of each kind', () => {
  it.each(Object.entries(kindUnits))('%s: spellings are unique and bare numbers name a unit there is', (_kind, { units, bare }) => {
    const names = units.flatMap((unit) => unit.names)
    expect(new Set(names).size).toBe(names.length)
    const labels = units.map(({ label }) => label)
    for (const label of [...bare.feetInches, ...bare.metric]) expect(labels).toContain(label)
  })
})
