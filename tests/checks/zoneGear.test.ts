import { describe, expect, it } from 'vitest'
import { cutHeld } from '../../src/checks/list/cutHeld.ts'
import { noIgnition } from '../../src/checks/list/noIgnition.ts'
import { rollOff } from '../../src/checks/list/rollOff.ts'
import { stackHeld } from '../../src/checks/list/stackHeld.ts'
import type { YardRecord } from '../../src/scene/document.ts'
import { free, item, onRun } from '../helpers/documents.ts'
import { ftM, levelsOf, siteOf, withFigures } from './yardCase.ts'

const stack = (over: Record<string, unknown>, rowCount = 3): YardRecord => withFigures('stack', 'stack:1', onRun(20, { offsetM: 10 }), { lengthM: 12, widthM: 2, rowCount }, over)
const falling = (crossFallRatio: number, ...records: YardRecord[]) => siteOf({ setUp: { fallRatio: 0, crossFallRatio } }, ...records)

describe('a stick rolling off a stack', () => {
  it('is a fix where nothing stops it, and none of its business where it is chocked', () => {
    // Grass, c = 0.05 low: from 2.5 % on nothing is certain to stop it.
    expect(levelsOf(rollOff, falling(0.03, stack({ chocked: false })))).toEqual(['FIX'])
    expect(levelsOf(rollOff, falling(0.03, stack({ chocked: true })))).toEqual([])
    expect(levelsOf(rollOff, falling(0.03, stack({ chocked: null })))).toEqual([])
  })
  it('is told with its distance where it comes to rest, and a fix where somebody stands in its way', () => {
    // 0.745986 / (0.05 − 0.01) = 18.6 m to the right of y = −10.
    expect(levelsOf(rollOff, falling(0.01, stack({ chocked: false })))).toEqual(['NOTE'])
    expect(levelsOf(rollOff, falling(0.01, stack({ chocked: false }), item('crew', 'crew:1', free(20, -28))))).toEqual(['FIX'])
    expect(levelsOf(rollOff, falling(0.01, stack({ chocked: false }), item('crew', 'crew:1', free(20, -29))))).toEqual(['NOTE'])
  })
})

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

describe('rows of a stack', () => {
  it('are a fix over the table', () => {
    // PPI Handbook ch. 2, from memory: the table's own row for 10 in DR 17, and one more.
    const levels = (rows: number) => levelsOf(stackHeld, siteOf({}, stack({ chocked: true }, rows)))
    const most = Array.from({ length: 30 }, (_, i) => i + 1).filter((rows) => levels(rows).length === 0).at(-1)!
    expect(most).toBeGreaterThan(1)
    expect(levels(most + 1)).toEqual(['FIX'])
    expect(levelsOf(stackHeld, siteOf({ job: { pipe: null } }, stack({}, 30)))).toEqual([])
  })
})

describe('a cut', () => {
  it('is held on both sides, or said to be', () => {
    const cut = (bothSidesHeld: boolean | null) => levelsOf(cutHeld, siteOf({}, item('cuttingPlace', 'cuttingPlace:1', free(0, 20 * ftM), { bothSidesHeld })))
    expect([cut(true), cut(false), cut(null)]).toEqual([[], ['FIX'], ['CHECK?']])
  })
})
