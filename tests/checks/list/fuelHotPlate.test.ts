import { describe, expect, it } from 'vitest'
import { fuelHotPlate } from '../../../src/checks/list/fuelHotPlate.ts'
import { free } from '../../helpers/documents.ts'
import { findingsOf, ftM, levelsOf, siteOf, withFigures } from '../yardCase.ts'

// Outline to outline: fuel from x = −0.6 to 0.6 m, plate holder 0.9 m long.
const apart = (feet: number) => siteOf({}, withFigures('fuel', 'fuel:1', free(0, 0), { lengthM: 1.2, widthM: 0.9 }), withFigures('plateHolder', 'plateHolder:1', free(0.6 + feet * ftM + 0.45, 0), { lengthM: 0.9, widthM: 0.5 }))

describe('fuel and hot plate', () => {
  it('stand 50 ft apart; common practice, no source', () => {
    expect(levelsOf(fuelHotPlate, apart(50))).toEqual(['met'])
    const [near] = findingsOf(fuelHotPlate, apart(49))
    expect([near!.level, near!.measured!.value]).toEqual(['CHECK', expect.closeTo(49 * ftM, 9)])
  })
})
