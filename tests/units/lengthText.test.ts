import { describe, expect, it } from 'vitest'
import { inchM } from '../../src/units/factors.ts'
import { feetInchesText, metresText, millimetresText, shortInchesText } from '../../src/units/lengthText.ts'

const en = { style: 'long', language: 'en' } as const

describe('lengths as a tape shows them', () => {
  it('shows every sixteenth of an inch as a true fraction', () => {
    const shown = Array.from({ length: 16 }, (_, count) => feetInchesText((1 + count / 16) * inchM, { ...en, shortInInches: true }))
    expect(shown.map((text) => text.replace('\u2009', '_'))).toEqual(
      ['1 in', ...['1/16', '⅛', '3/16', '¼', '5/16', '⅜', '7/16', '½', '9/16', '⅝', '11/16', '¾', '13/16', '⅞', '15/16'].map((fraction) => `1_${fraction} in`)],
    )
  })

  it('carries a rounding into the inch, the foot and the change to feet', () => {
    expect(feetInchesText(11.97 * inchM, { ...en, shortInInches: false })).toBe('1 ft 0 in')
    expect(feetInchesText(119.97 * inchM, { ...en, shortInInches: true })).toBe('10 ft 0 in')
    expect(metresText(9.999)).toBe('10 m')
    expect(millimetresText(9.9996)).toBe('10 m')
    expect(millimetresText(0.00997)).toBe('10 mm')
  })

  it('keeps small lengths from showing as nothing', () => {
    expect(shortInchesText(0.019 * inchM, en)).toBe('0.019 in')
    expect(shortInchesText(0.1251 * inchM, en)).toBe('⅛ in')
    expect(shortInchesText(-0.019 * inchM, en)).toBe('−0.019 in')
    expect(millimetresText(0.00048)).toBe('0.48 mm')
  })
})
