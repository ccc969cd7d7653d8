import { describe, expect, it } from 'vitest'
import { normalizeTyped, numberPattern, readNumber } from '../../src/units/scan.ts'

describe('one spelling for what is typed', () => {
  it.each([
    ['12’ 6”', `12' 6"`],
    ["12' 6''", `12' 6"`],
    ['12\u00a0ft\u20096½ in', '12 ft 6 1/2 in'],
    ['12³⁄₁₆', '12 3/16'],
    ['  −5 °C ', '-5 °c'],
    ['12–6', '12-6'],
  ])('%s', (typed, plain) => expect(normalizeTyped(typed)).toBe(plain))
})

describe('numbers', () => {
  it.each([
    ['12', 12], ['12.5', 12.5], ['.5', 0.5], [',5', 0.5], ['3,81', 3.81], ['0,250', 0.25], ['1234,567', 1234.567], ['1 234', 1234], ['1 234,5', 1234.5],
    ['1,234.5', 1234.5], ['1.234,5', 1234.5], ['1,234,567', 1234567], ['1.234.567', 1234567], ['1/2', 0.5], ['6 1/2', 6.5], ['6-1/2', 6.5],
  ])('%s is %d', (text, value) => {
    expect(new RegExp(`^${numberPattern}$`).test(text)).toBe(true)
    expect(readNumber(text)).toMatchObject({ ok: true, value })
  })

  it.each(['1,234', '123,456', '12.', '1.2.3', '12,34,5', '1,23,456', '3/2', '1/0', '0/4', '6.5 1/2'])('%s is refused with a reason', (text) => {
    const read = readNumber(text)
    expect(read.ok).toBe(false)
    if (!read.ok) expect(read.detail.en && read.detail.es).toBeTruthy()
  })
})
