import { describe, expect, it } from 'vitest'
import { rackLoad } from '../../src/checks/list/rackLoad.ts'
import { onRun } from '../helpers/documents.ts'
import { findingsOf, ftM, lbN, levelsOf, siteOf, withFigures } from './yardCase.ts'

const stickN = (): number => siteOf({}).pipe.properties!.lineLoadNPerM * 40 * ftM

describe('pipe on the rack', () => {
  const rack = (stickCount: number, ratedLoadN: number | null, capacityCount: number | null = 12) => withFigures('rack', 'rack:1', onRun(-6), { ratedLoadN, capacityCount }, { stickCount })

  it('may weigh what its plate says', () => {
    // 5 sticks of 351 lb = 1,756 lb.
    expect(5 * stickN() / lbN).toBeCloseTo(1756, -1)
    expect(levelsOf(rackLoad, siteOf({}, rack(5, 5 * stickN())))).toEqual(['met'])
    const [over] = findingsOf(rackLoad, siteOf({}, rack(5, 5 * stickN() - 1)))
    expect([over!.level, over!.source.class]).toEqual(['FIX', 'plate'])
    expect(over!.remedy).toMatchObject({ command: 'setField', args: { path: 'stickCount', value: 4 } })
  })

  it('may not be more sticks than it holds', () => {
    expect(levelsOf(rackLoad, siteOf({}, rack(6, 1e6, 6)))).toEqual(['met'])
    expect(levelsOf(rackLoad, siteOf({}, rack(7, 1e6, 6)))).toEqual(['FIX'])
  })

  it('does not pass without a plate, and an empty rack needs none', () => {
    expect(levelsOf(rackLoad, siteOf({}, rack(5, null)))).toEqual(['CHECK?'])
    expect(levelsOf(rackLoad, siteOf({}, rack(0, null)))).toEqual([])
  })
})
