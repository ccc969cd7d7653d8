import { describe, expect, it } from 'vitest'
import {
  freeLayDownLengthM,
  layDownEndForces,
  layDownHeightM,
  NOSE_DROOP_JAWS_FACTOR,
  NOSE_DROOP_MANY_SPANS_FACTOR,
  noseDroopM,
  noseLandingSpacingM,
  OVERHANG_ROOT_FACTOR,
} from '../../../src/engine/beam/closedForms.ts'
import { solveContactBeam } from '../../../src/engine/beam/solveContactBeam.ts'

const section = { bendingStiffnessNm2: 1.3e5, lineLoadNPerM: 181 }
const IN = 0.0254

describe('closed forms', () => {
  it('nose droop past many spans is 1/8 + 5/(24√3) = 0.2453, past jaws 1/8', () => {
    expect(NOSE_DROOP_MANY_SPANS_FACTOR).toBeCloseTo(0.2453, 4)
    expect(NOSE_DROOP_JAWS_FACTOR).toBe(0.125)
    // 94 times the sag wS⁴/384EI between the stands
    expect(NOSE_DROOP_MANY_SPANS_FACTOR * 384).toBeCloseTo(94.2, 1)
  })

  it('the root of an overhang turns as thirty spans behind it give', () => {
    // M₀ = −½ over the last support; three-moment chain M(i−1) + 4 M(i) + M(i+1) = −½ run from a far fixed end by substitution.
    let carry = 0
    let right = 0
    for (let index = 0; index < 30; index += 1) {
      // M(i) = right − carry · M(i+1)
      right = (-0.5 - right) / (4 - carry)
      carry = 1 / (4 - carry)
    }
    const before = right - carry * -0.5
    expect(-((2 * -0.5 + before) / 6 + 1 / 24)).toBeCloseTo(OVERHANG_ROOT_FACTOR, 9)
  })

  it('the contact beam gives the same droop past twelve level stands', () => {
    const spacingM = 4
    const result = solveContactBeam({ lengthM: 13 * spacingM, section, supports: Array.from({ length: 13 }, (_, i) => ({ xM: i * spacingM, levelM: 0 })) })
    // The end far behind fades by (2 − √3) a span: 13 spans leave 1e-7.
    expect(-result.ends.levelM[1] / noseDroopM({ ...section, spacingM, root: 'manySpans' })).toBeCloseTo(1, 6)
  })

  it('the contact beam gives the same droop past a clamp', () => {
    const result = solveContactBeam({ lengthM: 4, section, supports: [], clamps: [{ xM: 0, levelM: 0, slopeRatio: 0 }] })
    expect(-result.ends.levelM[1] / noseDroopM({ ...section, spacingM: 4, root: 'closedJaws' })).toBeCloseTo(1, 12)
  })

  it('the landing spacing brings back the droop it allows', () => {
    const droopM = 3 * IN
    const spacingM = noseLandingSpacingM({ ...section, droopM, root: 'manySpans' })
    expect(noseDroopM({ ...section, spacingM, root: 'manySpans' })).toBeCloseTo(droopM, 12)
  })

  it('the lay-down stands at 74, 31 and 5 % of the height at ¾, ½ and ¼ (4ξ³ − 3ξ⁴)', () => {
    const at = (share: number): number => layDownHeightM({ distanceM: share * 12, lengthM: 12, heightM: 1 })
    // 4·27/64 − 3·81/256 = 0.73828; 4/8 − 3/16 = 0.3125; 4/64 − 3/256 = 0.05078
    expect(at(0.75)).toBeCloseTo(0.73828, 5)
    expect(at(0.5)).toBe(0.3125)
    expect(at(0.25)).toBeCloseTo(0.05078, 5)
    expect(at(-1)).toBe(0)
    expect(at(2)).toBe(1)
    // Level at the saddle: the chord over 1e-6 of the length turns by 6e-6.
    expect((at(1) - at(1 - 1e-6)) / 1e-6).toBeCloseTo(0, 4)
  })

  it('the lay-down is in balance: weight = saddle shear and touchdown load, moments about the touchdown add to nothing', () => {
    const L = freeLayDownLengthM({ ...section, heightM: 0.6 })
    const { saddleMomentNm, touchdownForceN } = layDownEndForces({ lineLoadNPerM: section.lineLoadNPerM, lengthM: L })
    const shearN = section.lineLoadNPerM * L - touchdownForceN
    // About the touchdown: shear · L + saddle moment (hogging, negative) − w L · L/2 = 0.
    expect(shearN * L + saddleMomentNm - (section.lineLoadNPerM * L * L) / 2).toBeCloseTo(0, 6)
  })

  it('the contact beam lays down in the same length, shape, moment and touchdown force from a level clamp', () => {
    const heightM = 0.7
    const lengthM = freeLayDownLengthM({ ...section, heightM })
    const result = solveContactBeam({
      lengthM: 60,
      section,
      supports: [],
      clamps: [{ xM: 0, levelM: heightM, slopeRatio: 0 }],
      ground: { xM: [0], levelM: [0] },
    })
    const lies = result.groundContacts[0]!
    expect(lies.startM).toBeCloseTo(lengthM, 9)
    for (const share of [0.2, 0.5, 0.8]) {
      expect(result.at((1 - share) * lengthM).levelM).toBeCloseTo(layDownHeightM({ distanceM: share * lengthM, lengthM, heightM }), 10)
    }
    const ends = layDownEndForces({ lineLoadNPerM: section.lineLoadNPerM, lengthM })
    expect(result.clamps[0]!.momentRightNm / ends.saddleMomentNm).toBeCloseTo(1, 9)
    // the stretch carries its own weight and the touchdown force
    const touchdownN = lies.forceN - section.lineLoadNPerM * (lies.endM - lies.startM)
    expect(touchdownN / ends.touchdownForceN).toBeCloseTo(1, 8)
  })

  it('refuses what is not above 0, naming it', () => {
    expect(() => freeLayDownLengthM({ ...section, heightM: 0 })).toThrow(/heightM/)
    expect(() => noseDroopM({ ...section, spacingM: -1, root: 'manySpans' })).toThrow(/spacingM/)
    expect(() => noseLandingSpacingM({ bendingStiffnessNm2: NaN, lineLoadNPerM: 1, droopM: 1, root: 'manySpans' })).toThrow(/bendingStiffnessNm2/)
  })
})
