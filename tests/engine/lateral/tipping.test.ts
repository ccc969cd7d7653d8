import { describe, expect, it } from 'vitest'
import { nosePush, standingRatio } from '../../../src/engine/lateral/tipping.ts'

describe('a stand pushed at its saddle', () => {
  it('stands while (load + own weight) × half its base is more than push × height', () => {
    // (2,000 + 500) · 0.3 = 750 N·m against 300 · 0.9 = 270: 2.7778.
    expect(standingRatio({ pushN: 300, heightM: 0.9, loadN: 2000, standN: 500, baseM: 0.6 })).toBeCloseTo(2.7777778, 7)
    // A push the other way is the same.
    expect(standingRatio({ pushN: -300, heightM: 0.9, loadN: 2000, standN: 500, baseM: 0.6 })).toBeCloseTo(2.7777778, 7)
  })
  it('by drag alone and without weight of its own it depends on shape only: b / (2 µ h)', () => {
    // 0.6 / (2 · 0.15 · 0.9) = 2.2222, whatever the load.
    for (const loadN of [10, 1000, 1e5]) expect(standingRatio({ pushN: 0.15 * loadN, heightM: 0.9, loadN, standN: 0, baseM: 0.6 })).toBeCloseTo(2.2222222, 6)
  })
  it('is in no danger where nothing pushes', () => expect(standingRatio({ pushN: 0, heightM: 0.9, loadN: 0, standN: 0, baseM: 0.6 })).toBe(Infinity))
})

describe('a nose that rides up a roller', () => {
  const steepestRad = Math.PI / 4
  it('pushes most part of the way up: with little droop near two thirds of the way', () => {
    // Small droop z0: tanψ ≈ √(2z/r), weight liftN·(1 − z/z0); largest at z = z0/3: liftN · 2/3 · √(2 z0 / (3 r)).
    const { pushN, loadN } = nosePush({ droopM: 0.0005, liftN: 900, rollerRadiusM: 0.05, steepestRad })
    expect(pushN).toBeCloseTo(600 * Math.sqrt((2 * 0.0005) / (3 * 0.05)), 0)
    expect(loadN).toBeCloseTo(600, -1)
  })
  it('never pushes more than the weight × the steepest slope, and nothing where it comes level', () => {
    expect(nosePush({ droopM: 0.076, liftN: 900, rollerRadiusM: null, steepestRad }).pushN).toBeLessThanOrEqual(900)
    expect(nosePush({ droopM: 0, liftN: 900, rollerRadiusM: 0.05, steepestRad })).toEqual({ pushN: 0, loadN: 0 })
    expect(nosePush({ droopM: -0.01, liftN: 900, rollerRadiusM: 0.05, steepestRad }).pushN).toBe(0)
  })
  it('a larger roller and less droop push less', () => {
    const push = (droopM: number, rollerRadiusM: number): number => nosePush({ droopM, liftN: 900, rollerRadiusM, steepestRad }).pushN
    expect(push(0.01, 0.1)).toBeLessThan(push(0.01, 0.05))
    expect(push(0.005, 0.05)).toBeLessThan(push(0.01, 0.05))
  })
})
