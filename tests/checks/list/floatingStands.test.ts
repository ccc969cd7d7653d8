import { describe, expect, it } from 'vitest'
import { floatingStands } from '../../../src/checks/list/floatingStands.ts'
import { fusionYard, inch, runOne, textOf } from '../../helpers/fusionYard.ts'

describe('stands that carry nothing', () => {
  it('a low stand between two level ones floats: NOTE with its gap', () => {
    const [one] = runOne(floatingStands, fusionYard({ exits: [[15, 0], [25, 3], [35, 0]] }))
    expect([one!.level, one!.itemIds]).toEqual(['NOTE', ['stand:e2']])
    expect(one!.measured!.value).toBeGreaterThan(inch(2.5))
    expect(textOf(one!)).toMatch(/^E2 carries nothing at the last joint: the pipe passes .* in above it\.$/)
  })
  it('none floats: met', () => expect(runOne(floatingStands, fusionYard())[0]!.level).toBe('met'))
})
