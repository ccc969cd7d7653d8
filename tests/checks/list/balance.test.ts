import { describe, expect, it } from 'vitest'
import { balance } from '../../../src/checks/list/balance.ts'
import { fusionYard, levelsOf } from '../../helpers/fusionYard.ts'

describe('a stick balanced on one stand', () => {
  it('a lone stand within 5 % of a stick of its middle is CHECK', () => {
    // 5 % of 40 ft is 2 ft.
    expect(levelsOf(balance, fusionYard({ exits: [[20, 0]] }))['exit']).toBe('CHECK')
    expect(levelsOf(balance, fusionYard({ exits: [[21.9, 0]] }))['exit']).toBe('CHECK')
  })
  it('farther out is met', () => expect(levelsOf(balance, fusionYard({ exits: [[22.1, 0]] }))['exit']).toBe('met'))
  it('does not ask where two or more carry', () => expect(levelsOf(balance, fusionYard())).toEqual({}))
  it('judges the infeed stick the same way', () => expect(levelsOf(balance, fusionYard({ infeed: [-20] }))['infeed']).toBe('CHECK'))
})
