import { describe, expect, it } from 'vitest'
import { quantity, quantityKinds, siUnitOf } from '../../src/units/quantity.ts'

describe('quantities', () => {
  it('list every kind once with its SI unit', () => {
    expect(quantityKinds).toHaveLength(21)
    expect(new Set(quantityKinds).size).toBe(21)
    expect(quantityKinds.every((kind) => siUnitOf[kind].length > 0)).toBe(true)
  })

  it('keep unknown as null', () => expect(quantity('force', null)).toEqual({ kind: 'force', value: null }))
})
