import { describe, expect, it } from 'vitest'
import { generatorPlace } from '../../../src/checks/list/generatorPlace.ts'
import { free } from '../../helpers/documents.ts'
import { findingsOf, ftM, levelsOf, siteOf, withFigures } from '../yardCase.ts'

// Shelter from x = −2.25 to 2.25 m; generator 1.8 m long with its near end `feet` from the wall.
const at = (feet: number, over: Record<string, unknown> = {}) => siteOf({}, withFigures('shelter', 'shelter:1', free(0, 0), { lengthM: 4.5, widthM: 4, guyM: 1.4 }), withFigures('generator', 'generator:1', free(2.25 + feet * ftM + 0.9, 0), { lengthM: 1.8, widthM: 1 }, { isRunning: true, ...over }))

describe('the generator', () => {
  it('never stands in the shelter: STOP', () => expect(levelsOf(generatorPlace, at(-5))).toEqual(['STOP']))
  it('nor right beside it: FIX under 3 ft, CHECK under 20 ft; common practice, no source', () => {
    expect([levelsOf(generatorPlace, at(2.9)), levelsOf(generatorPlace, at(3)), levelsOf(generatorPlace, at(19.9))]).toEqual([['FIX'], ['CHECK'], ['CHECK']])
  })
  it('beyond is asked about, because the wind is not in the plan', () => expect(findingsOf(generatorPlace, at(30))[0]!.what.text.en).toContain('downwind'))
  it('that does not run is let be, one of which nobody has said is asked about', () => {
    expect(levelsOf(generatorPlace, at(-5, { isRunning: false }))).toEqual([])
    expect(levelsOf(generatorPlace, at(-5, { isRunning: null }))).toEqual(['CHECK?'])
  })
})
