import { describe, expect, it } from 'vitest'
import { footM, inchM, poundForceN } from '../../../src/units/factors.ts'
import { ownRun, quarterPoints, softStart, statedNoseIn, sunk, without, type Stand } from '../../helpers/workedLayout.ts'

/** Larger of the exit clamps far from the nose, lb. */
const fightLb = (stands: readonly Stand[]): number => {
  const jaws = ownRun(stands).stages.find(({ stage }) => stage.id === 'fuse:5')!.jaws!
  return Math.max(Math.abs(jaws.innerExitN), Math.abs(jaws.outerExitN)) / poundForceN
}

describe('the worked 12 in layout as a yard of this product (docs/verification.md)', () => {
  it('has jaws that fight with one level stand and do not with two and a soft start', () => {
    expect(fightLb([[12.5, 30], ...quarterPoints(12.5)])).toBeGreaterThan(600)
    expect(fightLb(softStart)).toBeLessThan(150)
  })

  it('guards its last level stand: without it the jaws fight more, without the one nearest them they hardly notice', () => {
    expect(fightLb(without(25))).toBeGreaterThan(1.5 * fightLb(softStart))
    expect(Math.abs(fightLb(without(12.5)) - fightLb(softStart))).toBeLessThan(25)
  })

  it('does not feel what stands from 46 ft outward by 5 lb', () => {
    const base = fightLb(softStart)
    for (const xFt of [46.4, 57.1, 67.8]) expect(Math.abs(fightLb(without(xFt)) - base)).toBeLessThan(5)
    expect(Math.abs(fightLb(sunk(softStart, 25)) - base)).toBeGreaterThan(5)
  })

  it('meets its supports from the third on as the stated convention does, to 0.45 in', () => {
    const arrivals = ownRun(softStart).stages.flatMap((stage) => stage.arrivals)
    for (const xFt of [35.7, 46.4, 57.1, 67.8, 80.3, 92.8, 105.3, 142.8]) {
      const { droopM } = arrivals.find(({ runningM }) => Math.abs(runningM / footM - xFt) < 0.01)!
      expect(Math.abs(0 - droopM / inchM - statedNoseIn(xFt)), `${xFt} ft`).toBeLessThan(0.45)
    }
  })

  it('asks for a lift of the free nose at 57, 68 and 80 ft, and not at 35.7 and 46.4 ft', () => {
    const arrivals = ownRun(softStart).stages.flatMap((stage) => stage.arrivals)
    const outcomeAt = (xFt: number) => arrivals.find(({ runningM }) => Math.abs(runningM / footM - xFt) < 0.01)!.outcome
    expect([35.7, 46.4, 57.1, 67.8, 80.3].map(outcomeAt)).toEqual(['ridesOn', 'ridesOn', 'hits', 'hits', 'hits'])
  })
})
