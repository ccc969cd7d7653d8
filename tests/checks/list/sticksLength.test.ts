import { describe, expect, it } from 'vitest'
import { sticksLength } from '../../../src/checks/list/sticksLength.ts'
import { fusionYard, ft, inch, moveOf, runOne, textOf, type YardSpec } from '../../helpers/fusionYard.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import { commandOf } from '../../../src/scene/commands/index.ts'
import type { YardRecord } from '../../../src/scene/document.ts'
import { applyEdit } from '../../../src/scene/edit.ts'
import { testEnv } from '../../helpers/documents.ts'
import { mapleFirstSketch } from '../../helpers/makeExamples.ts'

const tenInch: YardSpec = { size: '10', neededFt: 280, job: { jointLossM: { value: inch(0.875), basis: 'measured' } } }
const seven: YardRecord = { id: 'string:1', kind: 'string', setUpId: 'setUp:1', runId: 'run:1', name: '', stickCount: 7, parkingRow: null, parkingSide: 'right', order: 0, joinedToId: null, note: null }

describe('sticks and length', () => {
  it('seven sticks for 280 ft is FIX, 5¼ in short', () => {
    const [one] = runOne(sticksLength, fusionYard({ ...tenInch, more: [seven] }))
    expect(one!.level).toBe('FIX')
    expect(textOf(one!)).toBe('7 sticks of 40 ft 0 in come up 5 ¼ in short of 280 ft 0 in.')
    expect(moveOf(one!)).toBe('Take 8 sticks: they make 319 ft 5 ⅞ in.')
    expect(one!.margin!.value! / inch(1)).toBeCloseTo(-5.25, 6)
  })
  it('has one click for the count that was fixed too low: it is worked out again', () => {
    const document = fusionYard({ ...tenInch, more: [seven] })
    const { command, args } = runOne(sticksLength, document)[0]!.remedy!
    const after = applyEdit(document, commandOf(command)!.run(document, args, testEnv()))
    expect(deriveSite(after).sticks.stickCount).toBe(8)
    expect(runOne(sticksLength, after).map(({ level }) => level)).toEqual(['NOTE'])
  })
  it('the first sketch of Maple Fork offers it', () => {
    const document = mapleFirstSketch()
    const { remedy } = runOne(sticksLength, document)[0]!
    expect(remedy).toMatchObject({ command: 'setStickCount', args: { stickCount: null } })
    expect(runOne(sticksLength, applyEdit(document, commandOf('setStickCount')!.run(document, remedy!.args, testEnv())))[0]!.level).toBe('NOTE')
  })
  it('eight is NOTE, and says what seven would lack', () => {
    const [one] = runOne(sticksLength, fusionYard(tenInch))
    expect(one!.level).toBe('NOTE')
    expect(moveOf(one!)).toBe('7 would come up 5 ¼ in short.')
  })
  it('offers the other stick length', () => {
    const [one] = runOne(sticksLength, fusionYard({ ...tenInch, job: { ...tenInch.job, otherStickLengthM: ft(50) } }))
    // 6 × 50 ft − 5 × ⅞ in = 299 ft 7 ⅝ in.
    expect(moveOf(one!)).toBe('With sticks of 50 ft 0 in: 6 make 299 ft 7 ⅝ in, 19 ft 7 ⅝ in over.')
  })
  it('is silent while the needed length is unknown', () => expect(runOne(sticksLength, fusionYard({ neededFt: null }))).toEqual([]))
})
