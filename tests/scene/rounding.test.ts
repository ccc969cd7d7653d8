import { expect, it } from 'vitest'
import { rounded } from '../../src/scene/rounding.ts'

it.each([
  [21.000000000000004, 21], [0.1 + 0.2, 0.3], [-1e-12, 0], [1 / 3, 0.333333333], [-2.5000000004, -2.5], [6.096, 6.096],
])('%d is %d to a billionth', (value, expected) => expect(rounded(value)).toBe(expected))
it('never gives minus zero', () => expect(Object.is(rounded(-0), 0) && Object.is(rounded(-1e-10), 0)).toBe(true))
it('leaves numbers alone that have no room for nine decimals', () => expect(rounded(123456789.12345679)).toBe(123456789.12345679))
it('changes nothing the second time', () => {
  for (let i = 0; i < 2000; i++) {
    const once = rounded(Math.tan(i) * 10 ** (i % 7))
    expect(rounded(once)).toBe(once)
  }
})
