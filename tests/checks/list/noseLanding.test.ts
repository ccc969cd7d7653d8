import { describe, expect, it } from 'vitest'
import { noseLanding } from '../../../src/checks/list/noseLanding.ts'
import { applyEdit } from '../../../src/scene/edit.ts'
import { commandOf } from '../../../src/scene/commands/index.ts'
import { item, onRun, testEnv } from '../../helpers/documents.ts'
import { changed, fusionYard, ft, inch, moveOf, runOne, textOf, withFigure, type YardSpec } from '../../helpers/fusionYard.ts'
import type { YardRecord } from '../../../src/scene/document.ts'

const every = (fromFt: number, stepFt: number, toFt: number): number[] => Array.from({ length: Math.floor((toFt - fromFt) / stepFt) + 1 }, (_, i) => fromFt + i * stepFt)
const yard = (spec: YardSpec): YardSpec => ({ size: '10', neededFt: 280, exits: [[20, 0], [35, 0]], ...spec, job: { noseHold: 'free', ...spec.job } })
const levels = (spec: YardSpec): string[] => runOne(noseLanding, fusionYard(spec)).map(({ level }) => level)

describe('a free nose', () => {
  it('rollers 20 ft apart are FIX, with 11 ft 0 in as the spacing that would do', () => {
    const [one] = runOne(noseLanding, fusionYard(yard({ rollers: every(75, 20, 315) })))
    expect(one!.level).toBe('FIX')
    expect(textOf(one!)).toMatch(/^G1 to G13 stand 20 ft 0 in apart: a free nose would hang 28 .* in below the next one, so it lies on the ground\.$/)
    expect(moveOf(one!)).toMatch(/^Set them 11 ft 0 in apart, \d+ more rollers; or sling the nose\.$/)
    expect(one!.limit!.value).toBeCloseTo(inch(10.75 / 4), 9)
  })
  it('its one-click remedy leaves no row that the nose misses', () => {
    const document = fusionYard(yard({ rollers: every(75, 20, 315) }))
    const { remedy } = runOne(noseLanding, document)[0]!
    const mended = applyEdit(document, commandOf(remedy!.command)!.run(document, remedy!.args, testEnv()))
    // What is left is where the string comes down from the stands; a second click plans the lifts there.
    const left = runOne(noseLanding, mended)
    expect(left.map(({ level }) => level)).toEqual(['FIX'])
    expect(textOf(left[0]!)).toBe('Coming down from the stands a free nose lies on the ground short of G2 to G4, 6 in low.')
    const lifted = applyEdit(mended, commandOf(left[0]!.remedy!.command)!.run(mended, left[0]!.remedy!.args, testEnv()))
    expect(runOne(noseLanding, lifted).map(({ level }) => level)).toEqual(['CHECK'])
  })
  it('within the lead-in depth is met', () => expect(levels(yard({ exits: every(20, 11, 315).map((x) => [x, 0] as const) }))).toEqual(['met']))
  it('above the roller’s centre it rides up: CHECK', () => {
    const document = fusionYard(yard({ neededFt: 75, exits: [[20, 0], [35, 0], [47, 0]] }))
    const shallow = changed(document, 'stand:e3', (record) => withFigure(withFigure(record, 'leadInM', 0.001) as YardRecord, 'rollerRadiusM', 0.2))
    expect(runOne(noseLanding, shallow).map(({ level }) => level)).toEqual(['CHECK'])
  })
})

describe('a landing aid', () => {
  const aided = (landingAid: string, size = '10'): ReturnType<typeof runOne> =>
    runOne(noseLanding, fusionYard(yard({ size, neededFt: 75, exits: [[20, 0], [35, 0]], more: [item('stand', 'stand:e3', onRun(ft(60)), { landingAid })] })))
  it('planned makes CHECK of it and says the force', () => {
    const [one] = aided('liftByLoader')
    expect(one!.level).toBe('CHECK')
    expect(textOf(one!)).toMatch(/^Lift the nose .* in on to E3 with the loader, \d+ lb\.$/)
  })
  it('a lift by hand over 50 lb is FIX, and the remedy takes the loader', () => {
    const [one] = aided('liftByHand', '24')
    expect([one!.level, one!.remedy!.args]).toEqual(['FIX', { ids: ['stand:e3'], path: 'landingAid', value: 'liftByLoader' }])
    expect(one!.measured!.value).toBeGreaterThan(one!.limit!.value!)
  })
  it('none is FIX for one stand, with a planned lift as the remedy', () => {
    const [one] = aided('none')
    expect(one!.level).toBe('FIX')
    expect(one!.remedy!.command).toBe('setField')
    expect(moveOf(one!)).toMatch(/^Plan a lift there, .* lb, or slide E3 to exit \d+ ft/)
  })
})

describe('a slung nose', () => {
  const slung = (plateN: number | null): ReturnType<typeof runOne> =>
    runOne(noseLanding, fusionYard(yard({ rollers: every(75, 20, 315), job: { noseHold: 'slung' }, more: [withFigure(item('loader', 'loader:1', onRun(100, { offsetM: 5 })) as YardRecord, 'plateLoadN', plateN)] })))
  it('is NOTE with the load at the sling', () => expect(slung(8000).map(({ level }) => level)).toEqual(['NOTE']))
  it('over the loader’s plate is FIX', () => expect(slung(100).map(({ level }) => level)).toEqual(['FIX']))
  it('unknown counts as slung', () => expect(levels(yard({ rollers: every(75, 20, 315), job: { noseHold: null } }))).toEqual(['NOTE']))
})

describe('no arrivals', () => {
  it('nothing to say where all supports lie under stick 1', () => expect(levels(yard({}))).toEqual([]))
})

describe('a nose slung at a height somebody gave', () => {
  const slung = (heightIn: number | null): YardSpec => yard({ rollers: every(75, 20, 315), job: { noseHold: 'slung', slingHeightM: { value: heightIn === null ? null : inch(heightIn), basis: 'measured' } } })
  const high = (heightIn: number | null) => fusionYard({ ...slung(heightIn), exits: [[20, 0], [35, 0], [60, 0]], rollers: every(85, 20, 315) })
  it('too low for a stand is FIX, and the button slings it to the top of the highest', () => {
    // BOP 30 in: the stand at 60 ft stands on the jaw line, 30 in up; the nose slung at 12 in meets it 18 in low.
    const [found] = runOne(noseLanding, high(12))
    expect(found!.level).toBe('FIX')
    expect(textOf(found!)).toMatch(/^Slung 12 in above the ground the nose comes to E3 .* below its top\.$/)
    expect(found!.remedy).toMatchObject({ command: 'setJob', args: { path: 'slingHeightM.value' } })
    expect((found!.remedy!.args as { value: number }).value).toBeCloseTo(inch(30), 6)
    const document = high(12)
    expect(runOne(noseLanding, applyEdit(document, commandOf('setJob')!.run(document, found!.remedy!.args, testEnv()))).map(({ level }) => level)).not.toContain('FIX')
  })
  it('high enough, the sling carries more the higher it is; without a height it is slung to the top', () => {
    const loadN = (heightIn: number | null): number => runOne(noseLanding, high(heightIn))[0]!.measured!.value!
    expect(loadN(40)).toBeGreaterThan(loadN(30))
    expect(runOne(noseLanding, high(null))[0]!.level).toBe('NOTE')
  })
})
