import { describe, expect, it } from 'vitest'
import { draggedTailM, holdCurve } from '../../../src/engine/bends/holdCurve.ts'

describe('force that holds a curve', () => {
  it('is the couple EI/R over the arm of the first two guides', () => {
    // 36,000 N·m² on 20 m: 1,800 N·m; guides 4.5 m apart: 400 N each.
    expect(holdCurve({ bendingStiffnessNm2: 36_000, radiusM: 20, armM: 4.5 })).toEqual({ coupleNm: 1800, guideN: 400 })
  })
  it('drags as much straight tail as its couple overcomes friction for', () => {
    // µ w ℓ²/2 = M: 0.1 × 128 × ℓ²/2 = 1,800 gives ℓ² = 281.25, ℓ = 16.77 m.
    expect(draggedTailM({ coupleNm: 1800, lineLoadNPerM: 128, frictionRatio: 0.1 })).toBeCloseTo(16.7705, 4)
    expect(draggedTailM({ coupleNm: 0, lineLoadNPerM: 128, frictionRatio: 0.1 })).toBe(0)
  })
  it('refuses figures that cannot be, by name', () => {
    expect(() => holdCurve({ bendingStiffnessNm2: 1, radiusM: 0, armM: 1 })).toThrow('radiusM is 0')
    expect(() => holdCurve({ bendingStiffnessNm2: 1, radiusM: 1, armM: 0 })).toThrow('armM is 0')
    expect(() => draggedTailM({ coupleNm: 1, lineLoadNPerM: 1, frictionRatio: 0 })).toThrow('frictionRatio is 0')
  })
})
