import { describe, expect, it } from 'vitest'
import { stackHeld } from '../../../src/checks/list/stackHeld.ts'
import type { YardRecord } from '../../../src/scene/document.ts'
import { onRun } from '../../helpers/documents.ts'
import { levelsOf, siteOf, withFigures } from '../yardCase.ts'

const stack = (over: Record<string, unknown>, rowCount = 3): YardRecord => withFigures('stack', 'stack:1', onRun(20, { offsetM: 10 }), { lengthM: 12, widthM: 2, rowCount }, over)

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
