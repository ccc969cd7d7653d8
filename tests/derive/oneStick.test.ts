import { describe, expect, it } from 'vitest'
import { runChecks } from '../../src/checks/runner.ts'
import { fusionYard, mechanicsOf } from '../helpers/fusionYard.ts'

describe('a job of one stick', () => {
  const document = fusionYard({ neededFt: 40 })

  it('has no joint: nothing is judged at the jaws', () => {
    const mechanics = mechanicsOf(document)
    expect(mechanics.joints).toEqual([])
    expect(mechanics.solvedJoints()).toEqual([])
    expect(mechanics.worstEffortRatio()).toBeNull()
    expect(mechanics.effortWithShift('stand:e1', 0.01)).toBeNull()
    expect(mechanics.liftClearances()).toEqual([])
    expect(mechanics.feed()).toBeNull()
  })

  it('is fed where it is not set by the loader', () => expect(mechanicsOf(fusionYard({ neededFt: 40, job: { firstStick: 'fedThrough' } })).feed()).not.toBeNull())

  it('raises no finding about jaws, feeding or nose, and none that could not be worked out', () => {
    const ids = runChecks(document).findings.filter(({ key }) => /jaw-effort|lifts-out|face-gap|offset-change|feed|balance|pipe-lifts|nose-landing|@failed/.test(key)).map(({ key }) => key)
    expect(ids).toEqual([])
  })
})
