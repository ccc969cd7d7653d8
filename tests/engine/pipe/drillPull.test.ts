import { describe, expect, it } from 'vitest'
import { drillPullN } from '../../../src/engine/pipe/drillPull.ts'
import { degreeRad, footM, poundForceN, poundPerFootNPerM } from '../../../src/units/factors.ts'

const crossing = {
  lineLoadNPerM: 18.412 * poundPerFootNPerM, fluidLoadNPerM: 64.578 * poundPerFootNPerM,
  extraM: 100 * footM, entryM: 200 * footM, levelM: 800 * footM, exitM: 200 * footM, depthM: 35 * footM,
  entryRad: 20 * degreeRad, exitRad: 20 * degreeRad, groundFrictionRatio: 0.5, boreFrictionRatio: 0.3,
}

describe('pull of a drilled crossing', () => {
  it('gives the four pulls of 12 IPS DR 11 (ASTM F1962 equations, from memory, confirm; worked by hand)', () => {
    const pulls = drillPullN(crossing)
    const expectedLb = { enterN: 14_250, entryN: 20_201, levelN: 25_962, exitN: 27_918 }
    for (const key of ['enterN', 'entryN', 'levelN', 'exitN'] as const) expect(pulls[key] / poundForceN / expectedLb[key], key).toBeCloseTo(1, 2)
  })

  it('is plain drag where nothing turns and nothing is deep: μ w L on the ground', () => {
    const { enterN } = drillPullN({ ...crossing, entryRad: 0, exitRad: 0, depthM: 0 })
    expect(enterN / (0.5 * crossing.lineLoadNPerM * 1300 * footM)).toBeCloseTo(1, 12)
  })

  it('refuses a negative friction by name', () => expect(() => drillPullN({ ...crossing, boreFrictionRatio: -0.1 })).toThrow('boreFrictionRatio'))
})
