import { describe, expect, it } from 'vitest'
import { known, missingAmong, requireNumber, uncovered, valueOrNull } from '../../src/engine/outcome.ts'

describe('answers that may lack an input', () => {
  it('name every null and undefined field, and nothing when all are there', () => {
    expect(missingAmong({ a: null, b: 0, c: undefined })).toEqual({ status: 'missing', fields: ['a', 'c'] })
    expect(missingAmong({ a: 0, b: false, c: '' })).toBeUndefined()
  })

  it('give a value or null, never 0 for unknown', () => {
    expect(valueOrNull(known(0))).toBe(0)
    expect(valueOrNull(uncovered('dr', 'a', 'b'))).toBeNull()
  })

  it('refuse numbers out of range by field name', () => {
    expect(() => requireNumber('odM', Number.NaN)).toThrow('odM')
    expect(() => requireNumber('odM', 0, { above: 0 })).toThrow('odM')
    expect(() => requireNumber('tailsM', -1, { atLeast: 0 })).toThrow('tailsM')
    expect(() => requireNumber('tailsM', 0, { atLeast: 0 })).not.toThrow()
  })
})
