import { describe, expect, it } from 'vitest'
import { groundGuessed } from '../../../src/checks/list/groundGuessed.ts'
import { free, item } from '../../helpers/documents.ts'
import { fusionYard, ft, runOne, textOf } from '../../helpers/fusionYard.ts'
import type { YardRecord } from '../../../src/scene/document.ts'

const level = (atFt: number): YardRecord => item('level', `level:${atFt < 0 ? 'm' : ''}${Math.abs(atFt)}`, free(ft(atFt), 0), { figures: { levelM: { value: 0, basis: 'measured' } } })

describe('ground guessed', () => {
  it('names the supports more than 25 ft from a level', () => {
    const [one] = runOne(groundGuessed, fusionYard())
    // R2 at −31 ft 8 in and E2 at 35 ft; E1 at 25 ft is 25 ft from the datum.
    expect([one!.level, textOf(one!)]).toEqual(['CHECK', 'Ground guessed at R2 and E2: no level within 25 ft 0 in of them.'])
  })
  it('levels along the line settle it', () => expect(runOne(groundGuessed, fusionYard({ more: [level(-30), level(30)] }))[0]!.level).toBe('met'))
})
