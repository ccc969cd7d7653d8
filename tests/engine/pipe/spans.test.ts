import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { equalSpans, layDownForces, layDownHeightRatio, layDownLengthM, noseDroopFactor, noseDroopM, noseSpacingM, overhangRootFactor, simpleSpanForSagM, simpleSpanSagM } from '../../../src/engine/pipe/spans.ts'

// One seed, so that a failing run can be repeated.
fc.configureGlobal({ seed: 20_261 })

const unit = { lineLoadNPerM: 1, rigidityNm2: 1 }
const beam = { lineLoadNPerM: 180, rigidityNm2: 1.1e5 }

describe('equal spans', () => {
  it('carry the whole weight, in mirror image, for any count', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 60 }), fc.double({ min: 0.5, max: 20, noNaN: true }), (spanCount, spanM) => {
      const { reactionsN, supportMomentsNm, sagsM } = equalSpans(beam, { spanCount, spanM })
      expect(reactionsN.reduce((a, b) => a + b, 0) / (180 * spanM * spanCount)).toBeCloseTo(1, 9)
      expect(reactionsN[0]! / reactionsN.at(-1)!).toBeCloseTo(1, 9)
      expect(Math.max(...supportMomentsNm)).toBe(0) // hogging or free, never sagging
      expect(sagsM[0]! / sagsM.at(-1)!).toBeCloseTo(1, 9)
    }))
  })

  it('approach the fixed-fixed span far from the ends: wL²/12 and wL⁴/384', () => {
    const { supportMomentsNm, sagsM } = equalSpans(unit, { spanCount: 40, spanM: 1 })
    expect(supportMomentsNm[20]).toBeCloseTo(-1 / 12, 9)
    expect(sagsM[20]).toBeCloseTo(1 / 384, 9)
  })

  it('refuse half a span by name', () => expect(() => equalSpans(unit, { spanCount: 1.5, spanM: 1 })).toThrow('spanCount'))
})

describe('the nose', () => {
  it('droops 0.2453 wS⁴/EI past many spans, 94 times an inner span; an independent beam gave 0.2453', () => {
    expect(noseDroopFactor).toBeCloseTo(0.2453, 4)
    expect(noseDroopFactor / (1 / 384)).toBeCloseTo(94.2, 1)
  })

  it('has the root turn that thirty spans under an overhang give', () => {
    // M₀ = −½ over the last support; three-moment chain M(i−1) + 4 M(i) + M(i+1) = −½ run from a far fixed end by substitution.
    let carry = 0
    let right = 0
    for (let index = 0; index < 30; index += 1) {
      // M(i) = right − carry · M(i+1)
      right = (-0.5 - right) / (4 - carry)
      carry = 1 / (4 - carry)
    }
    const before = right - carry * -0.5
    expect(-((2 * -0.5 + before) / 6 + 1 / 24)).toBeCloseTo(overhangRootFactor, 9)
  })

  it('has spacing as the inverse of droop, and simple sag likewise', () => {
    expect(noseDroopM(beam, noseSpacingM(beam, 0.0762))).toBeCloseTo(0.0762, 12)
    expect(simpleSpanSagM(beam, simpleSpanForSagM(beam, 0.0254))).toBeCloseTo(0.0254, 12)
  })
})

describe('the lay-down', () => {
  it('stands at 74, 31 and 5 % of its height at ¾, ½ and ¼, level at both ends', () => {
    expect(layDownHeightRatio(0.75)).toBeCloseTo(0.738, 3)
    expect(layDownHeightRatio(0.5)).toBeCloseTo(0.3125, 9)
    expect(layDownHeightRatio(0.25)).toBeCloseTo(0.0508, 4)
    expect(layDownHeightRatio(1)).toBe(1)
    expect((layDownHeightRatio(1) - layDownHeightRatio(1 - 1e-6)) / 1e-6).toBeCloseTo(0, 4) // level: the chord over 1e-6 turns by 6e-6
  })

  it('is in balance: weight = saddle shear and touchdown load, moments about the touchdown add to nothing', () => {
    const L = layDownLengthM(beam, 0.6)
    const { saddleMomentNm, touchdownLoadN } = layDownForces(180, L)
    const shearN = 180 * L - touchdownLoadN
    // about the touchdown: shear · L − saddle moment − w L · L/2 = 0
    expect(shearN * L - saddleMomentNm - (180 * L * L) / 2).toBeCloseTo(0, 6)
  })
})
