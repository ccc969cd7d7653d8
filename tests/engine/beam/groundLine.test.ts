import { describe, expect, it } from 'vitest'
import { groundUnder, profileLevelM } from '../../../src/engine/beam/groundLine.ts'
import { seededRandom } from '../../helpers/seededRandom.ts'

describe('ground under the pipe', () => {
  const profile = { xM: [0, 2, 5, 9], levelM: [1, 2, 0.5, 0.5] }

  it('is read between its points and flat beyond them', () => {
    expect(profileLevelM(profile, -3)).toBe(1)
    expect(profileLevelM(profile, 1)).toBe(1.5)
    expect(profileLevelM(profile, 2)).toBe(2)
    // 2 − 1.5·(1/3)
    expect(profileLevelM(profile, 3)).toBeCloseTo(1.5, 12)
    expect(profileLevelM(profile, 20)).toBe(0.5)
  })

  it('is cut at the ends of the pipe', () => {
    const line = groundUnder(profile, 1, 7, 0)
    expect([...line.xM]).toEqual([1, 2, 5, 7])
    expect([...line.levelM]).toEqual([1.5, 2, 0.5, 0.5])
    expect(line.slopeRatio[0]).toBeCloseTo(0.5, 12)
  })

  it('beyond its points is one flat piece; one point alone is flat ground', () => {
    expect([...groundUnder(profile, 10, 12, 0).levelM]).toEqual([0.5, 0.5])
    expect([...groundUnder({ xM: [4], levelM: [0.3] }, 0, 12, 0.3).levelM]).toEqual([0, 0])
  })

  it('leaves out corners on a straight run and no others', () => {
    const xM = Array.from({ length: 1000 }, (_, i) => i * 0.37)
    const straight = groundUnder({ xM, levelM: xM.map((x) => 3 - 0.013 * x) }, 0, 360, 0)
    expect(straight.slopeRatio).toHaveLength(1)
    const bent = groundUnder({ xM, levelM: xM.map((x) => (x < 100 ? 0 : 0.001 * (x - 100))) }, 0, 360, 0)
    // 100 is no point, so the bend has two corners
    expect(bent.slopeRatio).toHaveLength(3)
  })

  it('never strays from the profile by more than 1e-10, however rough', () => {
    const random = seededRandom(3)
    for (let round = 0; round < 50; round++) {
      const n = 2 + Math.floor(random() * 60)
      const xM: number[] = []
      const levelM: number[] = []
      for (let i = 0, x = 0; i < n; i++, x += 0.001 + random() ** 3) {
        xM.push(x)
        levelM.push(random() < 0.5 ? 0 : (random() - 0.5) * 10 ** (-12 * random()))
      }
      const startM = -0.5 + random()
      const endM = startM + 0.1 + xM[n - 1]! * random()
      const line = groundUnder({ xM, levelM }, startM, endM, 0)
      for (const x of [...xM.filter((value) => value > startM && value < endM), startM, endM]) {
        expect(Math.abs(profileLevelM({ xM: [...line.xM], levelM: [...line.levelM] }, x) - profileLevelM({ xM, levelM }, x))).toBeLessThan(1e-10)
      }
    }
  })
})
