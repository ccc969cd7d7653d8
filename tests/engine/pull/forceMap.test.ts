import { describe, expect, it } from 'vitest'
import { type ForceMap, UNCHANGED, applyMap, followedBy, mapRuns, withoutFloor } from '../../../src/engine/pull/forceMap.ts'
import { seededRandom } from '../../helpers/seededRandom.ts'

const map = (scaleFactor: number, shiftN: number, floorN = 0): ForceMap => ({ scaleFactor, shiftN, floorN })

describe('what a piece does to the pull', () => {
  it('scales, shifts, and holds at the floor', () => {
    expect(applyMap(map(2, 10), 5)).toBe(20)
    expect(applyMap(map(1, -10), 5)).toBe(0)
    expect(applyMap(withoutFloor(map(1, -10)), 5)).toBe(-5)
    expect(applyMap(UNCHANGED, -7)).toBe(-7)
  })

  it('one after another is one map: held in the first, it starts again in the second', () => {
    const both = followedBy(map(1, -10), map(1.5, 4))
    expect(applyMap(both, 2)).toBe(4) // 2 − 10 held at 0, then + 4
    expect(applyMap(both, 20)).toBe(19) // (20 − 10)·1.5 + 4
  })

  it('any run of many equals one after another', () => {
    const random = seededRandom(5)
    const maps = Array.from({ length: 37 }, () => map(1 + 0.2 * random(), 100 * (random() - 0.6)))
    const runs = mapRuns(maps)
    for (let trial = 0; trial < 300; trial++) {
      const from = Math.floor(random() * 38)
      const to = Math.min(37, from + Math.floor(random() * (38 - from)))
      const start = 200 * random()
      const expected = maps.slice(from, to).reduce((force, one) => applyMap(one, force), start)
      expect(applyMap(runs.run(from, to), start)).toBeCloseTo(expected, 8)
    }
    expect(runs.run(3, 3)).toEqual(UNCHANGED)
    expect(mapRuns([]).run(0, 0)).toEqual(UNCHANGED)
  })
})
