import { describe, expect, it } from 'vitest'
import { stickBow } from '../../../src/checks/list/stickBow.ts'
import { commandOf } from '../../../src/scene/commands/index.ts'
import { applyEdit } from '../../../src/scene/edit.ts'
import { bowTurnWords } from '../../../src/messages/bowTurn.ts'
import { fusionYard, inch, levelsOf, moveOf, runOne, textOf, type YardSpec } from '../../helpers/fusionYard.ts'

const bowed = (bowIn: number, turnRad: number | null = null, spec: YardSpec = {}) => fusionYard({ ...spec, job: { ...spec.job, stickBowM: { value: inch(bowIn), basis: 'measured' }, stickBowTurnRad: turnRad } })

describe('bowed sticks', () => {
  it('not turned are met, CHECK and FIX as the bow grows', () => {
    // 12 in DR 17, a tenth of the wall 0.075 in: on its side each inch of bow gapes 0.0142 in, 19 % of it, beside what the stands leave.
    expect([0.5, 1.5, 4].map((bowIn) => levelsOf(stickBow, bowed(bowIn))['all'])).toEqual(['met', 'CHECK', 'FIX'])
  })
  it('say the worst and the best turn, and the button turns them as one edit that mends it', () => {
    const document = bowed(3)
    const found = runOne(stickBow, document).find(({ key }) => key === 'stick-bow')!
    expect(found.level).toBe('FIX')
    expect(textOf(found)).toMatch(/^The sticks bow 3 in\. Turned as they happen to lie, the faces gape up to .* in, up and sideways together\.$/)
    expect(moveOf(found)).toMatch(/^Turn the sticks ends up: face gap .* in instead of .* in\.$/)
    expect(found.remedy).toMatchObject({ command: 'setJob', args: { path: 'stickBowTurnRad', value: 0 } })
    const turnedDocument = applyEdit(document, commandOf('setJob')!.run(document, found.remedy!.args, { newId: () => 'x', now: () => '' }))
    const after = runOne(stickBow, turnedDocument)[0]!
    expect(after.measured!.value!).toBeLessThan(found.measured!.value!)
    expect(after.level).toBe('CHECK')
  })
  it('turned badly are told the better turn; turned best no other', () => {
    const side = runOne(stickBow, bowed(3, Math.PI / 2))[0]!
    expect(textOf(side)).toMatch(/ends to the left .* sideways\.$/)
    expect(side.remedy).not.toBeNull()
    expect(runOne(stickBow, bowed(3, 0))[0]!.remedy).toBeNull()
  })
  it('that are straight say nothing', () => expect(runOne(stickBow, bowed(0))).toEqual([]))
  it('open the panel in which the bow is turned', () => expect(runOne(stickBow, bowed(3))[0]!.opens?.panel).toBe('bow'))
  it('name the effort only where some turn takes C past a limit that straight sticks keep', () => {
    // Stands at 25 and 35 ft: C 0.88 with straight sticks, over 1 where the bow adds to it.
    expect(runOne(stickBow, bowed(3)).map(({ key }) => key)).toEqual(['stick-bow', 'stick-bow@effort'])
    expect(runOne(stickBow, bowed(3, null, { exits: [[12.5, 0], [25, 0]] })).map(({ key }) => key)).toEqual(['stick-bow'])
  })
})

describe('a bow nobody measured', () => {
  it('is not asked for where a usual one keeps the limit', () => expect(runOne(stickBow, fusionYard())).toEqual([]))
  it('is asked for once where a usual one would break it and straight sticks do not', () => {
    // 40 ft · 0.2 % = 0.96 in: κ = 8·0.96/480² in; on its side 2·κ·16 in·OD = 0.0011 OD, of OD/325 a share of 0.35 beside what the stands leave.
    const found = runOne(stickBow, fusionYard({ size: '12', dr: 32.5 }))
    expect(found.map(({ level, isUnknown }) => [level, isUnknown])).toEqual([['CHECK', true]])
    expect(found[0]!.missing.map(({ path }) => path)).toEqual(['stickBowM.value'])
  })
})

describe('a turn in words', () => {
  it('is named at the quarters and by degrees between', () => {
    const words = (degrees: number): string => bowTurnWords((degrees * Math.PI) / 180).en
    expect([0, 90, 180, -90, 360, -180].map(words)).toEqual(['ends up', 'ends to the left', 'ends down', 'ends to the right', 'ends up', 'ends down'])
    expect([15, -15, 120, 345].map(words)).toEqual(['ends 15° left of up', 'ends 15° right of up', 'ends 120° left of up', 'ends 15° right of up'])
  })
})
