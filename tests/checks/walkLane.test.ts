import { describe, expect, it } from 'vitest'
import { walkLane } from '../../src/checks/list/walkLane.ts'
import { item } from '../helpers/documents.ts'
import { textOf } from '../helpers/fusionYard.ts'
import { laneFindings } from './walkCase.ts'
import { boxM, ftM } from './yardCase.ts'

/** 8.625 in pipe: half of it 0.359 ft. The lane: 6.2 ft of machine and 1 ft to either side. */
const NEED_FT = 0.359375 + 8.2

const way = (rightFt: number, leftFt: number) => item('boundary', 'boundary:1', boxM(-60 * ftM, 1400 * ftM, -rightFt * ftM, leftFt * ftM))

describe('the lane of a machine that walks', () => {
  it('is free on the side that is wide enough', () => {
    expect(laneFindings(walkLane, {}, way(NEED_FT + 0.01, 2)).map(({ level }) => level)).toEqual(['met'])
    expect(textOf(laneFindings(walkLane, {}, way(2, NEED_FT + 0.01))[0]!)).toContain('left')
  })

  it('does not fit a shoulder narrower by an inch', () => {
    const [none] = laneFindings(walkLane, {}, way(NEED_FT - 0.08, 2))
    expect(none!.level).toBe('FIX')
    expect(none!.limit!.value! / ftM).toBeCloseTo(8.2, 9)
  })

  it('keeps the legal 2 ft from the edge of a trench and names what stops it on either side', () => {
    // Edge of a 4 ft trench at 8.6 − right; its middle 2 ft beyond. Clear of the lane by 2 ft, then by 1.9.
    const trench = (clearFt: number) => item('trench', 'trench:1', [{ xM: -20, yM: -(NEED_FT + clearFt + 2) * ftM }, { xM: 450, yM: -(NEED_FT + clearFt + 2) * ftM }], { name: 'main trench', figures: { widthM: { value: 4 * ftM, basis: 'measured' }, depthM: { value: 2.7, basis: 'measured' } } })
    const fence = item('fence', 'fence:1', [{ xM: 0, yM: 5 * ftM }, { xM: 400, yM: 5 * ftM }])
    expect(laneFindings(walkLane, {}, trench(2.01), fence).map(({ level }) => level)).toEqual(['met'])
    const [none] = laneFindings(walkLane, {}, trench(1.9), fence)
    expect(none!.level).toBe('FIX')
    expect(none!.itemIds).toEqual(['machine:1', 'trench:1', 'fence:1'])
    expect(textOf(none!)).toContain('main trench')
  })
})
