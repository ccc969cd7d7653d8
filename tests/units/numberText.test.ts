import { describe, expect, it } from 'vitest'
import { decimalsOfStep, groupSpace, numberText, roundToStep, significantText } from '../../src/units/numberText.ts'

describe('numbers as text', () => {
  it('rounds halves away from zero and never gives −0', () => {
    expect(roundToStep(2.5, 1)).toBe(3)
    expect(roundToStep(-2.5, 1)).toBe(-3)
    expect(Object.is(roundToStep(-0.2, 1), 0)).toBe(true)
    expect(roundToStep(3.805, 0.01)).toBe(3.81)
    expect(roundToStep(37605, 100)).toBe(37600)
  })

  it('keeps the digits that count, not finer than the step allows', () => {
    expect(significantText(37605, 3, 1)).toBe(`37${groupSpace}600`)
    expect(significantText(12.362, 3, 0.01)).toBe('12.4')
    expect(significantText(999.7, 3, 1)).toBe('1000')
    expect(significantText(0, 3, 0.1)).toBe('0')
  })

  it('drops trailing zeros and sets thousands apart from five digits on', () => {
    expect(numberText(3.5, 2)).toBe('3.5')
    expect(numberText(3.5, 2, true)).toBe('3.50')
    expect(numberText(1357, 0)).toBe('1357')
    expect(numberText(-1234567, 0)).toBe(`−1${groupSpace}234${groupSpace}567`)
    expect(numberText(-0.001, 2)).toBe('0')
  })

  it.each([[0.01, 2], [0.1, 1], [1, 0], [100, 0]])('a step of %d needs %d decimals', (step, decimals) => expect(decimalsOfStep(step)).toBe(decimals))
})
