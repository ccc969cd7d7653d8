import { describe, expect, it } from 'vitest'
import * as factors from '../../src/units/factors.ts'

describe('factors to SI', () => {
  // NIST SP 811 (2008), Appendix B.8, to the digits printed there.
  it.each([
    ['foot', factors.footM, 0.3048],
    ['inch', factors.inchM, 0.0254],
    ['mile', factors.mileM, 1609.344],
    ['pound', factors.poundMassKg, 0.45359237],
    ['pound-force', factors.poundForceN, 4.448222],
    ['psi', factors.psiPa, 6894.757],
    ['pound-force per foot', factors.poundPerFootNPerM, 14.5939],
    ['foot pound-force', factors.footPoundNm, 1.355818],
    ['inch pound-force', factors.inchPoundNm, 0.1129848],
    ['mile per hour', factors.mphMPerS, 0.44704],
    ['kilometre per hour', factors.kmhMPerS, 0.2777778],
    ['square foot', factors.squareFootM2, 0.09290304],
    ['square inch', factors.squareInchM2, 0.00064516],
    ['standard gravity', factors.gravityMPerS2, 9.80665],
    ['degree', factors.degreeRad, 0.01745329],
  ])('%s', (_name, ours, printed) => expect(Math.abs(ours / printed - 1)).toBeLessThan(4e-7))

  it('is exact where the unit is exact by definition', () => {
    expect(factors.poundForceN).toBe(4.4482216152605)
    expect(factors.footM / 12).toBeCloseTo(factors.inchM, 16)
  })

  it('turns degrees of temperature at the fixed points', () => {
    expect(factors.fahrenheitToC(32)).toBe(0)
    expect(factors.fahrenheitToC(212)).toBe(100)
    expect(factors.fahrenheitToC(-40)).toBe(-40)
    expect(factors.celsiusToF(60)).toBe(140)
  })
})
