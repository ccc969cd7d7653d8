import { describe, expect, it } from 'vitest'
import { emergencyLaneClear } from '../../../src/checks/list/emergencyLaneClear.ts'
import { item } from '../../helpers/documents.ts'
import { boxM, findingsOf, ftM, inM, siteOf, withFigures } from '../yardCase.ts'

const lane = (over: Record<string, unknown> = {}, figures: Record<string, number | null> = {}, yM = 30) => withFigures('emergencyLane', 'emergencyLane:1', [{ xM: 0, yM }, { xM: 60, yM }], { widthM: 20 * ftM, clearHeightM: 13 * ftM + 6 * inM, ...figures }, over)
const found = (...records: Parameters<typeof siteOf>[1][]) => findingsOf(emergencyLaneClear, siteOf({}, ...records)).map(({ level, key, isUnknown }) => `${level} ${key.split(':').at(-1)}${isUnknown ? '?' : ''}`)

describe('the emergency lane', () => {
  it('is 20 ft wide and 13 ft 6 in high (International Fire Code 503.2.1)', () => {
    expect(found(lane())).toEqual(['met emergency-lane-clear'])
    expect(found(lane({}, { widthM: 20 * ftM - inM }))).toEqual(['FIX width'])
    expect(found(lane({}, { clearHeightM: 13 * ftM + 5 * inM }))).toEqual(['FIX height'])
    expect(found(lane({}, { widthM: null, clearHeightM: null }))).toEqual(['CHECK missing?'])
  })
  it('has nothing in it: half of 20 ft is 3.048 m either side of its line at y = 30 m', () => {
    expect(found(lane(), item('building', 'building:1', boxM(10, 12, 33.05, 40)))).toEqual(['met emergency-lane-clear'])
    const [thing] = findingsOf(emergencyLaneClear, siteOf({}, lane(), item('building', 'building:1', boxM(10, 12, 32, 40))))
    expect([thing!.level, thing!.measured!.value]).toEqual(['FIX', expect.closeTo(32 - 33.048, 9)])
  })
  it('has no wire lower than 13 ft 6 in over it', () => {
    const wire = (lowestHeightM: number) => found(lane(), withFigures('overheadLine', 'overheadLine:1', [{ xM: 20, yM: 20 }, { xM: 20, yM: 40 }], { lowestHeightM }))
    expect(wire(4.12)).toEqual(['met emergency-lane-clear'])
    expect(wire(4.1)).toEqual(['FIX 1'])
  })
  it('with a string across needs a plan to open it', () => {
    const across = (gapPlan: boolean | null) => found(lane({ gapPlan, points: [{ xM: 40, yM: -20 }, { xM: 40, yM: 20 }] }))
    expect([across(false), across(null), across(true)]).toEqual([['FIX string'], ['CHECK string?'], ['NOTE string']])
  })
})
