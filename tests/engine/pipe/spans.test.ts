import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { equalSpans, simpleSpanForSagM, simpleSpanSagM } from '../../../src/engine/pipe/spans.ts'

// One seed, so that a failing run can be repeated.
fc.configureGlobal({ seed: 20_261 })

const unit = { lineLoadNPerM: 1, bendingStiffnessNm2: 1 }
const beam = { lineLoadNPerM: 180, bendingStiffnessNm2: 1.1e5 }

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

it('simple sag and the span for it are inverse', () => {
  expect(simpleSpanSagM(beam, simpleSpanForSagM(beam, 0.0254))).toBeCloseTo(0.0254, 12)
})
