import { describe, expect, it } from 'vitest'
import { interpolate } from '../../src/engine/interpolate.ts'

const rows = [[0, 10], [2, 20], [4, 0]] as const

describe('interpolation in a table', () => {
  it.each([[0, 10], [1, 15], [2, 20], [3, 10], [4, 0]])('at %d is %d', (at, value) => expect(interpolate(rows, at)).toBe(value))
  it('never extends the table', () => {
    expect(interpolate(rows, -0.1)).toBeUndefined()
    expect(interpolate(rows, 4.1)).toBeUndefined()
    expect(interpolate([], 1)).toBeUndefined()
  })
})
