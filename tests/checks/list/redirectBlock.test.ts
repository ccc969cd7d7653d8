import { describe, expect, it } from 'vitest'
import { redirectBlockHolds } from '../../../src/checks/list/redirectBlock.ts'
import { stringPullOf } from '../../../src/derive/stringPull.ts'
import { depthIn } from '../../../src/derive/zoneStages.ts'
import { zonesAt } from '../../../src/derive/zones.ts'
import { free, onRun } from '../../helpers/documents.ts'
import { ftM, levelsOf, machineAt0, rollersAt, siteOf, withFigures } from '../yardCase.ts'

describe('a rope led round a block', () => {
  const winch = withFigures('puller', 'puller:1', free(110, 30), { towRatingN: 50_000, ropeRatingN: 50_000 }, { pullerKind: 'winch', guardedCab: true })
  const block = (ratedLoadN: number | null, anchorHoldN: number | null) => withFigures('redirectBlock', 'redirectBlock:1', onRun(110), { ratedLoadN, anchorHoldN })
  const site = (ratedLoadN: number | null, anchorHoldN: number | null) => siteOf({}, machineAt0(), ...rollersAt(11 * ftM, 320 * ftM, 11 * ftM), winch, block(ratedLoadN, anchorHoldN))
  it('has block and anchor good for twice the pull', () => {
    // Rope led straight back pulls twice; mechanics.
    const twiceN = 2 * Math.max(...stringPullOf(site(1, 1)).joints.map(({ needN }) => needN))
    expect(levelsOf(redirectBlockHolds, site(twiceN, twiceN))).toEqual(['met'])
    expect(levelsOf(redirectBlockHolds, site(twiceN - 1, twiceN - 1))).toEqual(['FIX', 'FIX'])
    expect(levelsOf(redirectBlockHolds, site(null, twiceN))).toEqual(['CHECK?'])
  })
  it('keeps everybody out of the inside of the angle and of the line of the snap', () => {
    const held = site(1e6, 1e6)
    const zone = zonesAt(held, { phase: 'pull', joint: 7 }).find(({ id }) => id === 'Z-09')!
    // Inside the angle: between the line and the rope to the winch. Outside it, across the line: clear.
    expect(depthIn(zone, { xM: 100, yM: 8 })).toBeGreaterThan(0)
    expect(depthIn(zone, { xM: 108, yM: 15 })).toBeGreaterThan(0)
    expect(depthIn(zone, { xM: 130, yM: -15 })).toBe(0)
    // Half the angle at the block lies up and back: the block flies there, one rope length at most.
    expect(depthIn(zone, { xM: 105, yM: 5 })).toBeGreaterThan(0)
  })
})
