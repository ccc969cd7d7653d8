import { describe, expect, it } from 'vitest'
import { rollOff } from '../../../src/checks/list/rollOff.ts'
import type { YardRecord } from '../../../src/scene/document.ts'
import { free, item, onRun } from '../../helpers/documents.ts'
import { levelsOf, siteOf, withFigures } from '../yardCase.ts'

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
