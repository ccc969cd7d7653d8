import { describe, expect, it } from 'vitest'
import { runAwayLine } from '../../../src/checks/list/runAwayLine.ts'
import { item, onRun } from '../../helpers/documents.ts'
import { boxM, ftM, levelsOf, machineAt0, rollersAt, siteOf, withFigures } from '../yardCase.ts'

describe('the run-away line', () => {
  const water = item('water', 'water:1', boxM(110, 140, -20, 20), { name: 'pond' })
  const rollers = rollersAt(11 * ftM, 320 * ftM, 11 * ftM)
  const at = (fallRatio: number, ...more: Parameters<typeof siteOf>[1][]) => levelsOf(runAwayLine, siteOf({ setUp: { fallRatio } }, machineAt0(), ...rollers, water, ...more))
  it('into water is FIX where the string leaves, CHECK where it would only be moved, NOTE once it is held', () => {
    // Low friction of rollers 0.02, common practice; a fall of 1 % wants a hold-back by the house rule.
    expect([at(0.05), at(0.015), at(0.005)]).toEqual([['FIX'], ['CHECK'], []])
    expect(at(0.05, withFigures('anchor', 'anchor:1', onRun(-3, { offsetM: 2 }), { ratedHoldN: 1e6 }))).toEqual(['NOTE'])
  })
})
