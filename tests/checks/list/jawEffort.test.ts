import { describe, expect, it } from 'vitest'
import { jawEffort } from '../../../src/checks/list/jawEffort.ts'
import { applyEdit } from '../../../src/scene/edit.ts'
import { commandOf } from '../../../src/scene/commands/index.ts'
import { testEnv } from '../../helpers/documents.ts'
import { fusionYard, levelsOf, runOne, textOf } from '../../helpers/fusionYard.ts'

describe('effort at the jaws', () => {
  it('level stands at 25 and 35 ft are met on both sides', () => expect(levelsOf(jawEffort, fusionYard())).toEqual({ infeed: 'met', exit: 'met' }))
  it('between 1 and 2 is CHECK, above 2 FIX', () => {
    expect(levelsOf(jawEffort, fusionYard({ exits: [[25, 3], [35, 3]] }))['exit']).toBe('CHECK')
    expect(levelsOf(jawEffort, fusionYard({ exits: [[25, 6], [35, 6]] }))['exit']).toBe('FIX')
  })
  it('names both clamp forces and the joint', () => {
    const one = runOne(jawEffort, fusionYard({ exits: [] })).find(({ key }) => key === 'jaw-effort@exit')!
    expect(textOf(one)).toMatch(/^The exit jaws fight the pipe at joint 1: inner −[\d\s]+ lb, outer [\d\s]+ lb\.$/u)
    expect(one.measured!.value).toBeCloseTo(4.27, 1)
  })
  it.each([['low stands', [[25, 6], [35, 6]]], ['one low stand', [[20, 6], [35, 0]]], ['no stands', []]] as const)('its remedy for %s brings C to 1 or less', (_name, exits) => {
    const document = fusionYard({ exits: exits as unknown as [number, number][] })
    const one = runOne(jawEffort, document).find(({ level }) => level !== 'met')!
    const { command, args } = one.remedy!
    const mended = applyEdit(document, commandOf(command)!.run(document, args, testEnv()))
    expect(levelsOf(jawEffort, mended)['exit']).toBe('met')
  })
  it('a layout with an edited limit is held against that', () => {
    const strict = fusionYard({ more: [{ id: 'limitChange:1', kind: 'limitChange', limitId: 'jaw-effort', bound: 'check', value: 0.5, reason: 'own rule', who: 'lead', when: '2025-06-03' }] })
    const one = runOne(jawEffort, strict).find(({ key }) => key === 'jaw-effort@exit')!
    expect([one.level, one.source.edited]).toEqual(['CHECK', true])
  })
})
