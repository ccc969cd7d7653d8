import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { houseJointLossM, madeLengthM, stickPlan } from '../../../src/engine/pipe/stickPlan.ts'
import type { StickPlanInput } from '../../../src/engine/pipe/stickPlan.ts'
import { footM, inchM } from '../../../src/units/factors.ts'
import { must } from './caseChecks.ts'

// One seed, so that a failing run can be repeated.
fc.configureGlobal({ seed: 20_261 })

const plan = (over: Partial<StickPlanInput> = {}): StickPlanInput => ({ neededLengthM: 280 * footM, tailsM: 0, stickLengthM: 40 * footM, jointLossM: 0.875 * inchM, ...over })
const inFeet = (lengthM: number) => lengthM / footM

describe('stick plan', () => {
  it('finds the five-inch surprise: seven 40 ft sticks come up 5 ¼ in short of 280 ft', () => {
    const eight = must(stickPlan(plan()))
    // 8 × 40 ft − 7 × 7/8 in = 319 ft 5 7/8 in; 7 × 40 ft − 6 × 7/8 in = 279 ft 6 3/4 in
    expect(eight).toMatchObject({ sticks: 8, joints: 7, isShort: false })
    expect(eight.madeLengthM / inchM).toBeCloseTo(320 * 12 - 6.125, 9)
    expect(eight.oneFewer).toMatchObject({ sticks: 7, joints: 6 })
    expect(eight.oneFewer!.madeLengthM / inchM).toBeCloseTo(279 * 12 + 6.75, 9)
    expect(eight.oneFewer!.shortM / inchM).toBeCloseTo(5.25, 9)
  })

  it('keeps a count somebody decided and says that it is short', () => {
    const seven = must(stickPlan(plan({ stickCount: 7 })))
    expect(seven.isShort).toBe(true)
    expect(seven.overM / inchM).toBeCloseTo(-5.25, 9)
  })

  // Yards of our own, worked by hand: sticks × length − joints × loss.
  it.each([
    ['1,320 ft of 40 ft sticks at 3/4 in', 1320, 40, 0.75, 34, 1357.9375],
    ['5,000 ft of 50 ft sticks at 2 in', 5000, 50, 2, 101, 5033.3333],
    ['760 ft of 50 ft sticks at 1 1/4 in', 760, 50, 1.25, 16, 798.4375],
  ])('%s', (_name, neededFt, stickFt, lossIn, sticks, madeFt) => {
    const result = must(stickPlan(plan({ neededLengthM: neededFt * footM, stickLengthM: stickFt * footM, jointLossM: lossIn * inchM })))
    expect(result.sticks).toBe(sticks)
    expect(inFeet(result.madeLengthM)).toBeCloseTo(madeFt, 3)
  })

  it('counts tails on top and offers the other stick length', () => {
    const result = must(stickPlan(plan({ tailsM: 14 * footM, otherStickLengthsM: [50 * footM, 40 * footM] })))
    expect(inFeet(result.wantedLengthM)).toBeCloseTo(294, 9)
    expect(result.alternatives).toHaveLength(1) // the same length is no alternative
    expect(result.alternatives[0]).toMatchObject({ sticks: 6, joints: 5 }) // 6 × 50 ft − 5 × 7/8 in = 299.6 ft
  })

  it('does with one stick what one stick reaches, and then has no fewer', () => {
    const one = must(stickPlan(plan({ neededLengthM: 40 * footM })))
    expect(one).toMatchObject({ sticks: 1, joints: 0, oneFewer: null })
    expect(one.overM).toBeCloseTo(0, 9)
  })

  it('always reaches the length with the fewest sticks', () => {
    const length = fc.double({ min: 0.1, max: 5000, noNaN: true })
    fc.assert(fc.property(length, fc.double({ min: 1, max: 20, noNaN: true }), fc.double({ min: 0, max: 0.2, noNaN: true }), (neededLengthM, stickLengthM, jointLossM) => {
      const result = must(stickPlan(plan({ neededLengthM, stickLengthM, jointLossM })))
      expect(result.madeLengthM).toBeGreaterThanOrEqual(neededLengthM - 1e-9)
      expect(result.joints).toBe(result.sticks - 1)
      if (result.sticks > 1) expect(madeLengthM(result.sticks - 1, stickLengthM, jointLossM)).toBeLessThan(neededLengthM)
    }))
  })

  it('names what is missing and refuses what makes no sense', () => {
    expect(stickPlan(plan({ stickLengthM: null, jointLossM: null }))).toEqual({ status: 'missing', fields: ['stickLengthM', 'jointLossM'] })
    expect(stickPlan(plan({ jointLossM: 13 }))).toMatchObject({ status: 'uncovered', field: 'jointLossM' })
    expect(() => stickPlan(plan({ neededLengthM: 0 }))).toThrow('neededLengthM')
    expect(() => stickPlan(plan({ stickCount: 2.5 }))).toThrow('stickCount')
  })
})

describe('house table of joint loss (common practice, no source)', () => {
  it.each([[4.5, 0.75], [8.625, 0.789], [12, 1], [24, 1.5], [36, 2], [54, 2.75]])('%d in loses %d in', (odIn, lossIn) => {
    // 8.625: 0.75 + 0.125 × 0.625 / 2 = 0.789; 54: 2 + 18 × 0.5 / 12 = 2.75
    expect(houseJointLossM(odIn * inchM) / inchM).toBeCloseTo(lossIn, 3)
  })
})
