import { describe, expect, it } from 'vitest'
import { noIgnition } from '../../../src/checks/list/noIgnition.ts'
import { free, item } from '../../helpers/documents.ts'
import { levelsOf, siteOf, withFigures } from '../yardCase.ts'

describe('ignition', () => {
  it('keeps 10 ft from a vent that read clear today and 25 ft from fuel, to the outline', () => {
    // A generator 1.8 m long whose near end lies d from the vent: 3.048 m and 0.9 m.
    const at = (xM: number, over: Record<string, unknown> = {}) => levelsOf(noIgnition, siteOf({}, item('vent', 'vent:1', free(0, 0), { isClear: true }), withFigures('generator', 'generator:1', free(xM, 0), { lengthM: 1.8, widthM: 1 }, over)))
    expect([at(3.94), at(3.96), at(3.94, { isRunning: false })]).toEqual([['FIX'], [], []])
    // Fuel 0 × 0 does not exist; 1.2 × 0.9 m has half a diagonal of 0.75 m: 7.62 + 0.75 + 0.9 = 9.27 m.
    const fuel = (xM: number) => levelsOf(noIgnition, siteOf({}, withFigures('fuel', 'fuel:1', free(0, 0), { lengthM: 1.2, widthM: 0.9 }), withFigures('generator', 'generator:1', free(xM, 0), { lengthM: 1.8, widthM: 1 })))
    expect([fuel(9.26), fuel(9.28)]).toEqual([['FIX'], []])
  })
})
