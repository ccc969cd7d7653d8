import { describe, expect, it } from 'vitest'
import { lastJoint } from '../../../src/checks/list/lastJoint.ts'
import { clockOf } from '../../../src/derive/clock.ts'
import { findingsOf, levelsOf, siteOf } from '../yardCase.ts'

describe('the last joint of the day', () => {
  const at = (startMin: number | null, endMin: number | null) => siteOf({ job: { clock: { startMin, endMin, breaks: [] } } })
  it('is not held against an end nobody gave', () => expect(levelsOf(lastJoint, at(420, null))).toEqual([]))
  it('is CHECK after the end by likely times, NOTE where only slow times run over, met before it', () => {
    const open = clockOf(at(420, null))
    const [likely, high] = [open.likely!.rows.at(-1)!.cooledMin, open.high!.rows.at(-1)!.cooledMin]
    expect(high).toBeGreaterThan(likely)
    expect([likely - 1, (likely + high) / 2, high + 1].map((endMin) => levelsOf(lastJoint, at(420, Math.ceil(endMin))))).toEqual([['CHECK'], ['NOTE'], ['met']])
  })
  it('is CHECK where not one joint fits, NOTE where the work takes three days or more, asked where the start is unknown', () => {
    expect(levelsOf(lastJoint, at(420, 430))).toEqual(['CHECK'])
    // One joint a day: seven days.
    const oneJointMin = clockOf(at(420, null)).likely!.rows[0]!.cooledMin - 420
    expect(findingsOf(lastJoint, at(420, 420 + Math.ceil(oneJointMin)))[0]).toMatchObject({ level: 'NOTE', what: { values: { days: 7, fits: 1 } } })
    expect(levelsOf(lastJoint, at(null, 900))).toEqual(['CHECK?'])
  })
})
