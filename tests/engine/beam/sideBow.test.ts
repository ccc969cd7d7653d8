import { describe, expect, it } from 'vitest'
import { solveContactBeam } from '../../../src/engine/beam/solveContactBeam.ts'
import { solveSideBow } from '../../../src/engine/beam/sideBow.ts'
import { seededRandom } from '../../helpers/seededRandom.ts'

const EI = 50_000

describe('a bowed pipe held to a line in plan', () => {
  it('between two holds is its own arc: no force, κ(b − a)/2 + κa at a free end a beyond the last', () => {
    // Holds at 0.1 and 0.7 m from the end, κ = 0.002: slope at the last hold 0.002·0.6/2 = 0.0006, at the end 0.0006 + 0.002·0.1 = 0.0008.
    const bow = solveSideBow({ startM: -12, endM: 0, holdsM: [-0.7, -0.1], curvaturePerM: 0.002, bendingStiffnessNm2: EI })!
    expect(bow.forcesN).toEqual([0, 0])
    expect(bow.at(0).slopeRatio).toBeCloseTo(0.0008, 12)
    // 0.0006·0.1 + 0.002·0.1²/2 = 0.00007 m.
    expect(bow.at(0).offsetM).toBeCloseTo(0.00007, 12)
  })
  it('over two equal spans is held by −3κEI/2L·2 in the middle', () => {
    // L·0 + 4L·M + L·0 = −3EIκ·2L: M = −1.5 EIκ = −150 Nm; shears ∓150/5, middle force 2·30 = 60 N, ends −30 N each.
    const bow = solveSideBow({ startM: 0, endM: 10, holdsM: [0, 5, 10], curvaturePerM: 0.002, bendingStiffnessNm2: EI })!
    expect(bow.forcesN[0]).toBeCloseTo(-30, 9)
    expect(bow.forcesN[1]).toBeCloseTo(60, 9)
    expect(bow.forcesN[2]).toBeCloseTo(-30, 9)
  })
  it('with one hold or none is not held in line', () => {
    expect(solveSideBow({ startM: 0, endM: 10, holdsM: [3], curvaturePerM: 0.002, bendingStiffnessNm2: EI })).toBeNull()
    expect(solveSideBow({ startM: 0, endM: 10, holdsM: [3, 3.01], curvaturePerM: 0.002, bendingStiffnessNm2: EI })).toBeNull()
  })
  it('agrees with the contact beam on two-way supports, where the bow is the difference of two solves', () => {
    const random = seededRandom(20_250_611)
    for (let count = 0; count < 200; count += 1) {
      const lengthM = 6 + 20 * random()
      const holdsM = Array.from({ length: 2 + Math.floor(5 * random()) }, () => random() * lengthM).toSorted((a, b) => a - b).filter((x, i, all) => i === 0 || x - all[i - 1]! > 0.3)
      if (holdsM.length < 2) continue
      const curvaturePerM = 0.004 * (random() - 0.5)
      const side = solveSideBow({ startM: 0, endM: lengthM, holdsM, curvaturePerM, bendingStiffnessNm2: EI })!
      const solve = (bow: { curvaturePerM: number; angleRad: number } | null) => solveContactBeam({ lengthM, section: { bendingStiffnessNm2: EI, lineLoadNPerM: 20 }, supports: holdsM.map((xM) => ({ xM, levelM: 0, twoWay: true })), bow })
      const [bowed, straight] = [solve({ curvaturePerM, angleRad: 0 }), solve(null)]
      const scaleN = Math.max(...side.forcesN.map(Math.abs), 1)
      side.forcesN.forEach((forceN, i) => expect(Math.abs(forceN - (bowed.supports[i]!.reactionN - straight.supports[i]!.reactionN)) / scaleN).toBeLessThan(1e-6))
      for (const share of [0, 0.3, 0.7, 1]) {
        const xM = share * lengthM
        expect(side.at(xM).offsetM).toBeCloseTo(bowed.at(xM).levelM - straight.at(xM).levelM, 6)
        expect(side.at(xM).slopeRatio).toBeCloseTo(bowed.at(xM).slopeRatio - straight.at(xM).slopeRatio, 6)
      }
    }
  })
})
