import { describe, expect, it } from 'vitest'
import { loaderPlate } from '../../src/checks/list/loaderPlate.ts'
import { free } from '../helpers/documents.ts'
import { findingsOf, ftM, lbN, levelsOf, siteOf, withFigures } from './yardCase.ts'

const stickN = (): number => siteOf({}).pipe.properties!.lineLoadNPerM * 40 * ftM

describe('loader against the stick', () => {
  const loader = (plateLoadN: number | null) => withFigures('loader', 'loader:1', free(0, 20), { plateLoadN })

  it('lifts up to 80 % of its plate as a house rule and never over the plate', () => {
    expect(levelsOf(loaderPlate, siteOf({}, loader(stickN() / 0.8)))).toEqual(['met'])
    expect(levelsOf(loaderPlate, siteOf({}, loader(stickN() / 0.8001)))).toEqual(['CHECK'])
    expect(levelsOf(loaderPlate, siteOf({}, loader(stickN())))).toEqual(['CHECK'])
    const [over] = findingsOf(loaderPlate, siteOf({}, loader(stickN() / 1.001)))
    expect([over!.level, over!.source.class]).toEqual(['FIX', 'plate'])
  })

  it('passes 351 lb on a plate of 1,800 lb', () => {
    expect(levelsOf(loaderPlate, siteOf({}, loader(1800 * lbN)))).toEqual(['met'])
  })

  it('does not pass without a plate', () => {
    expect(levelsOf(loaderPlate, siteOf({}, loader(null)))).toEqual(['CHECK?'])
    expect(levelsOf(loaderPlate, siteOf({}))).toEqual([])
  })
})
