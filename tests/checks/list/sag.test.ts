import { describe, expect, it } from 'vitest'
import { sag } from '../../../src/checks/list/sag.ts'
import { applyEdit } from '../../../src/scene/edit.ts'
import { commandOf } from '../../../src/scene/commands/index.ts'
import { testEnv } from '../../helpers/documents.ts'
import { fusionYard, levelsOf, runOne, textOf } from '../../helpers/fusionYard.ts'

describe('sag between jaws and stands', () => {
  it('12 in pipe is met, with the worst span beside the limit', () => {
    const [one] = runOne(sag, fusionYard())
    expect([one!.level, one!.limit!.value]).toEqual(['met', 0.005])
  })
  it('4 in pipe is FIX in its long spans, one finding a span', () => {
    const found = runOne(sag, fusionYard({ size: '4', dr: 11 }))
    expect(found.map(({ key, level }) => `${level} ${key}`)).toEqual(['FIX sag@rack:1-rack:1', 'FIX sag@machine:1-stand:e1'])
    expect(textOf(found[0]!)).toMatch(/between R2 and R1\.$/)
  })
  it('its remedy puts a stand in the span and mends it', () => {
    const document = fusionYard({ size: '4', dr: 11 })
    const { remedy } = runOne(sag, document)[1]!
    const mended = applyEdit(document, commandOf(remedy!.command)!.run(document, remedy!.args, testEnv()))
    expect(levelsOf(sag, mended)['machine:1-stand:e1']).toBeUndefined()
  })
})
