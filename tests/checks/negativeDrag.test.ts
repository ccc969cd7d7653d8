import { describe, expect, it } from 'vitest'
import { negativeDrag } from '../../src/checks/list/negativeDrag.ts'
import { carriageDragsOf } from '../../src/derive/carriageDrags.ts'
import { item, onRun } from '../helpers/documents.ts'
import type { YardRecord } from '../../src/scene/document.ts'
import { findingsOf, ftM, levelsOf, machineAt0, rollersAt, siteOf, withFigures } from './yardCase.ts'

const rollers = rollersAt(11 * ftM, 320 * ftM, 11 * ftM)
const yard = (fallRatio: number | null, carriageSide: 'infeed' | 'exit', ...more: readonly YardRecord[]) => siteOf({ setUp: { fallRatio } }, machineAt0({ carriageSide }), ...rollers, ...more)
const anchor = (ratedHoldN: number | null, runningM: number) => withFigures('anchor', 'anchor:1', onRun(runningM, { offsetM: 2 }), { ratedHoldN })

describe('carriage drawn shut by the slope', () => {
  it('the loose stick stays up to 2 % of fall to the exit (low friction 0.02, common practice), above it is STOP', () => {
    expect([levelsOf(negativeDrag, yard(0.0199, 'infeed')), levelsOf(negativeDrag, yard(0.03, 'infeed'))]).toEqual([['met'], ['STOP']])
    // 3 % less 2 %: a hundredth of a stick of some 351 lb.
    const site = yard(0.03, 'infeed')
    expect(findingsOf(negativeDrag, site)[0]!.measured!.value! / (site.pipe.properties!.lineLoadNPerM * site.sticks.stickLengthM!)).toBeCloseTo(0.01, 4)
  })
  it('falling to the infeed it is the carriage on the exit that is drawn shut', () => {
    expect(levelsOf(negativeDrag, yard(-0.03, 'infeed'))).toEqual(['met'])
    expect(levelsOf(negativeDrag, yard(-0.03, 'exit'))).toEqual(['STOP'])
    expect(levelsOf(negativeDrag, yard(0.03, 'exit'))).toEqual(['met'])
  })
  it('an anchor uphill holds what it is good for; downhill it holds nothing; of unknown strength it is asked for', () => {
    const pullN = -carriageDragsOf(yard(0.03, 'infeed'))[0]!.lowN
    expect(levelsOf(negativeDrag, yard(0.03, 'infeed', anchor(pullN + 1, -5)))).toEqual(['met'])
    expect(levelsOf(negativeDrag, yard(0.03, 'infeed', anchor(pullN - 1, -5)))).toEqual(['STOP'])
    expect(levelsOf(negativeDrag, yard(0.03, 'infeed', anchor(pullN + 1, 9)))).toEqual(['STOP'])
    expect(levelsOf(negativeDrag, yard(0.03, 'infeed', anchor(null, -5)))).toEqual(['CHECK?'])
  })
  it('a puller’s rope alone is CHECK, and holds no stick that falls to the exit', () => {
    expect(levelsOf(negativeDrag, yard(-0.03, 'exit', item('puller', 'puller:1', onRun(110))))).toEqual(['CHECK'])
    expect(levelsOf(negativeDrag, yard(0.03, 'infeed', item('puller', 'puller:1', onRun(110))))).toEqual(['STOP'])
  })
  it('leaves an unknown fall to hold-back, which asks for it', () => expect(levelsOf(negativeDrag, yard(null, 'infeed'))).toEqual([]))
})
