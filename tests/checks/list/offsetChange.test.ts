import { describe, expect, it } from 'vitest'
import { offsetChange } from '../../../src/checks/list/offsetChange.ts'
import { fusionYard, runOne } from '../../helpers/fusionYard.ts'

describe('change of offset when a stand sinks', () => {
  it('is met with the usual stands', () => expect(runOne(offsetChange, fusionYard())[0]!.level).toBe('met'))
  it('is FIX with a stand that pushes the pipe up right at the jaws, and names it', () => {
    const [one] = runOne(offsetChange, fusionYard({ size: '8', exits: [[4, -4], [25, 0]] }))
    expect(one!.level).toBe('FIX')
    expect(one!.itemIds).toEqual(['stand:e1'])
    expect(one!.margin!.value).toBeLessThan(0)
  })
})
