import { describe, expect, it } from 'vitest'
import { saddleHeight } from '../../../src/checks/list/saddleHeight.ts'
import { applyEdit } from '../../../src/scene/edit.ts'
import { commandOf } from '../../../src/scene/commands/index.ts'
import { testEnv } from '../../helpers/documents.ts'
import { fusionYard, levelsOf, runOne, textOf } from '../../helpers/fusionYard.ts'

describe('saddle heights against the range', () => {
  it('within is met', () => expect(levelsOf(saddleHeight, fusionYard())['all']).toBe('met'))
  it('below the lowest is FIX with both figures, the remedy sets it there', () => {
    // 30 in less 17 in is 13 in; typical stands start at 18 in.
    const document = fusionYard({ exits: [[25, 0], [35, 17]] })
    const [one] = runOne(saddleHeight, document)
    expect(textOf(one!)).toBe('E2 should stand 13 in high; its stand goes no lower than 18 in.')
    const mended = applyEdit(document, commandOf(one!.remedy!.command)!.run(document, one!.remedy!.args, testEnv()))
    expect(levelsOf(saddleHeight, mended)['all']).toBe('met')
  })
  it('above the highest is FIX', () => expect(levelsOf(saddleHeight, fusionYard({ bopIn: 48 }))['stand:e1']).toBe('FIX'))
  it('ground rollers have no range', () => expect(levelsOf(saddleHeight, fusionYard({ infeed: 'none', exits: [], rollers: [60] }))).toEqual({}))
})
