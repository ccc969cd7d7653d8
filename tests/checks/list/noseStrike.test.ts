import { describe, expect, it } from 'vitest'
import { noseLanding } from '../../../src/checks/list/noseLanding.ts'
import { item, onRun } from '../../helpers/documents.ts'
import { levelsOf, machineAt0, siteOf, withFigures } from '../yardCase.ts'

describe('a free nose that strikes a stand', () => {
  // A stand with its top 2 ft 6 in up, 60 ft out, the next support 35 ft before it: nothing takes the nose in.
  const stand = (atM: number, over: Record<string, unknown> = {}) => withFigures('stand', `stand:${Math.round(atM)}`, onRun(atM), over as Record<string, number>, { height: { rule: 'aboveGround', saddleM: 0.76 } })
  const at = (...more: Parameters<typeof siteOf>[1][]) => levelsOf(noseLanding, siteOf({ job: { noseHold: 'free' } }, machineAt0(), stand(4), stand(8), stand(20), ...more))
  it('is FIX, and STOP beside a crew spot of the pull or an open way', () => {
    expect(at()).toEqual(['FIX'])
    expect(at(item('crew', 'crew:1', onRun(20, { offsetM: 3 }), { role: 'exitHand', phases: ['pull'] }))).toEqual(['STOP'])
    expect(at(item('crew', 'crew:1', onRun(20, { offsetM: 3.1 }), { role: 'exitHand', phases: ['pull'] }))).toEqual(['FIX'])
    expect(at(item('crew', 'crew:1', onRun(20, { offsetM: 3 }), { role: 'exitHand', phases: ['load'] }))).toEqual(['FIX'])
    const way = (access: string) => withFigures('walkway', 'walkway:1', [{ xM: 15, yM: 4 }, { xM: 25, yM: 4 }], { widthM: 2 }, { access })
    expect([at(way('open')), at(way('closed'))]).toEqual([['STOP'], ['FIX']])
  })
})
