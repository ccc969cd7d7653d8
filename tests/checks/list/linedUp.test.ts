import { describe, expect, it } from 'vitest'
import { linedUp } from '../../../src/checks/list/linedUp.ts'
import { applyEdit } from '../../../src/scene/edit.ts'
import { commandOf } from '../../../src/scene/commands/index.ts'
import { item, onRun, testEnv } from '../../helpers/documents.ts'
import { fusionYard, ft, inch, levelsOf, runOne, textOf } from '../../helpers/fusionYard.ts'
import type { YardDocument, YardRecord } from '../../../src/scene/document.ts'

const withStand = (atFt: number, over: Parameters<typeof onRun>[1], kind: 'stand' | 'roller' = 'stand'): YardDocument => fusionYard({ exits: kind === 'roller' ? [[20, 0]] : [], more: [item(kind, `${kind}:x`, onRun(ft(atFt), over)) as YardRecord] })

describe('lined up', () => {
  it('on the line is met', () => expect(levelsOf(linedUp, fusionYard())['all']).toBe('met'))
  it('the first stand beside the jaws may be ¼ in off, others 1 in, rollers 2 in', () => {
    expect(Object.values(levelsOf(linedUp, withStand(20, { offsetM: inch(0.2) })))).toEqual(['met'])
    expect(levelsOf(linedUp, withStand(20, { offsetM: inch(0.3) }))['stand:x:offset']).toBe('CHECK')
    const second = fusionYard({ exits: [[20, 0]], more: [item('stand', 'stand:x', onRun(ft(35), { offsetM: inch(0.9) }))] })
    expect(Object.values(levelsOf(linedUp, second))).toEqual(['met'])
    expect(Object.values(levelsOf(linedUp, withStand(60, { offsetM: inch(1.9) }, 'roller')))).toEqual(['met'])
    expect(levelsOf(linedUp, withStand(60, { offsetM: inch(2.1) }, 'roller'))['roller:x:offset']).toBe('CHECK')
  })
  it('says which side, and slides it back', () => {
    const document = withStand(20, { offsetM: -inch(3) })
    const [one] = runOne(linedUp, document)
    expect(textOf(one!)).toBe('E1 stands off the line, L 3 in: it pushes the end sideways in the jaws.')
    const mended = applyEdit(document, commandOf(one!.remedy!.command)!.run(document, one!.remedy!.args, testEnv()))
    expect(Object.values(levelsOf(linedUp, mended))).toEqual(['met'])
  })
  it('a stand attached but beside the pipe carries nothing: CHECK', () => expect(textOf(runOne(linedUp, withStand(20, { offsetM: 1.5 }))[0]!)).toMatch(/the pipe does not lie on it/))
  it('turned over 2° is CHECK', () => {
    expect(levelsOf(linedUp, withStand(20, { turnRad: 0.03 }))['all']).toBe('met')
    expect(levelsOf(linedUp, withStand(20, { turnRad: 0.05 }))['stand:x:turn']).toBe('CHECK')
  })
})
