import { describe, expect, it } from 'vitest'
import { solveSideForces } from '../../../src/engine/lateral/solveSideForces.ts'
import { bowByThreeMoments } from '../../helpers/threeMoments.ts'
import { seededRandom } from '../../helpers/seededRandom.ts'

const EI = 50_000
/** A bowed pipe held to the line is a straight one held off it by its own arc k·x²/2, x from the joint. */
const bowed = (clampsM: readonly number[], guidesM: readonly number[], k: number, holdN = 1e9) =>
  solveSideForces({ bendingStiffnessNm2: EI, clamps: clampsM.map((xM) => ({ xM, offsetM: (-k * xM * xM) / 2 })), guides: guidesM.map((xM) => ({ xM, offsetM: (-k * xM * xM) / 2, holdN })), jointM: 0 })

describe('a bowed pipe held to a line in plan', () => {
  it('between two clamps is its own arc: no force, κ(c − a)/2 + κa at the end a beyond the inner', () => {
    // Clamps at 0.1 and 0.7 m, κ = 0.002: slope at the inner 0.002·0.6/2 = 0.0006, at the end 0.0008; 0.0006·0.1 + 0.002·0.1²/2 = 0.00007 m.
    const { joint, clampForcesN } = bowed([-0.7, -0.1], [], 0.002)
    expect(joint.slopeRatio).toBeCloseTo(0.0008, 9)
    expect(joint.offsetM).toBeCloseTo(0.00007, 9)
    for (const forceN of clampForcesN) expect(Math.abs(forceN)).toBeLessThan(1e-4)
  })
  it('over two equal spans is held by 3κEI/L in the middle', () => {
    // 4L·M = −3EIκ·2L: M = −1.5·50,000·0.002 = −150 Nm; ends −150/5 = −30 N, middle 60 N.
    const { forcesN } = bowByThreeMoments([-10, -5, 0], 0.002, EI)
    expect(forcesN.map((forceN) => Math.round(forceN * 1e6) / 1e6)).toEqual([-30, 60, -30])
    expect(bowed([-5, 0], [-10], 0.002).clampForcesN[0]).toBeCloseTo(60, 3)
  })
  it('agrees with the three-moment equation for any places', () => {
    const random = seededRandom(20_250_611)
    for (let count = 0; count < 200; count += 1) {
      const k = 0.004 * (random() - 0.5)
      const guidesM = Array.from({ length: Math.floor(5 * random()) }, () => -1.5 - 15 * random()).toSorted((a, b) => a - b).filter((x, i, all) => i === 0 || x - all[i - 1]! > 0.3)
      const side = bowed([-0.7, -0.1], guidesM, k)
      const oracle = bowByThreeMoments([...guidesM, -0.7, -0.1], k, EI)
      const ours = [...side.guides.map(({ forceN }) => forceN), ...side.clampForcesN]
      const scaleN = Math.max(...oracle.forcesN.map(Math.abs), 1)
      ours.forEach((forceN, i) => expect(Math.abs(forceN - oracle.forcesN[i]!) / scaleN).toBeLessThan(1e-5))
      expect(side.joint.offsetM).toBeCloseTo(oracle.endOffsetM(0.1), 7)
      expect(side.joint.slopeRatio).toBeCloseTo(oracle.endSlope + k * 0.1, 7)
    }
  })
  it('is held less by a guide that gives all it can', () => {
    const free = bowed([-0.7, -0.1], [], 0.002).joint.slopeRatio
    const held = bowed([-0.7, -0.1], [-4], 0.002).joint.slopeRatio
    const weak = bowed([-0.7, -0.1], [-4], 0.002, 10)
    expect(weak.guides[0]!.isFull).toBe(true)
    expect(held).toBeLessThan(weak.joint.slopeRatio)
    expect(weak.joint.slopeRatio).toBeLessThan(free)
  })
})
