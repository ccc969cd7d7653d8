import { describe, expect, it } from 'vitest'
import { clearance } from '../../src/checks/list/clearance.ts'
import { walkCrossings } from '../../src/checks/list/walkCrossings.ts'
import { crossingsOf, walkOf } from '../../src/derive/walking.ts'
import { textOf } from '../helpers/fusionYard.ts'
import { driveway, END_FT, laneFindings, laneSite } from './walkCase.ts'
import { ftM } from './yardCase.ts'

/** Joint k of the lane, ft from the datum. */
const jointFt = (k: number): number => END_FT - (k * 40 - (k - 1) * 0.0625)
/** Eleven driveways in the middles of sticks, 14 ft wide: a machine of 11 ft over the joint 20 ft away stays clear by 7.5 ft. */
const eleven = (traffic: 'open' | 'closed' | null = null) => Array.from({ length: 11 }, (_, i) => driveway(i + 1, jointFt(3 * i + 1) - 20, 14, traffic))

describe('driveways under the strung pipe', () => {
  it('are all told, eleven of eleven, with where they lie', () => {
    const found = laneFindings(walkCrossings, {}, ...eleven())
    expect(found.map(({ key, level }) => `${key} ${level}`)).toEqual(['walk-crossings@blocked CHECK'])
    expect(found[0]!.measured!.value).toBe(11)
    expect(found[0]!.itemIds).toHaveLength(11)
    expect(textOf(found[0]!)).toContain('drive 11')
  })

  it('are as wide on the run as they are drawn', () => {
    const site = laneSite({}, driveway(1, 500, 24))
    const [crossing] = crossingsOf(site, walkOf(site)!)
    // 488 to 512 ft, looked at every foot.
    expect(Math.abs(crossing!.fromM / ftM - 488)).toBeLessThanOrEqual(1)
    expect(Math.abs(crossing!.toM / ftM - 512)).toBeLessThanOrEqual(1)
  })

  it('with a joint on one: FIX while it is open, CHECK while nobody said, with joint and place', () => {
    const on = (traffic: 'open' | 'closed' | null) => laneFindings(walkCrossings, {}, driveway(1, jointFt(7), 16, traffic)).find(({ key }) => key.endsWith('@landing'))!
    expect([on('open').level, on('closed').level, on(null).level]).toEqual(['FIX', 'CHECK', 'CHECK'])
    expect(on('open').joints).toEqual([7])
    expect(textOf(on('open'))).toContain('J7 on drive 1')
  })

  it('count as landed on as far as the machine reaches', () => {
    // Edge of a 16 ft drive 8 ft from its middle; half a machine 5.5 ft.
    const lands = (offFt: number) => laneFindings(walkCrossings, {}, driveway(1, jointFt(7) + offFt, 16)).some(({ key }) => key.endsWith('@landing'))
    expect([lands(12), lands(15)]).toEqual([true, false])
  })

  it('are not told a second time by the clearances', () => {
    expect(laneFindings(clearance, {}, ...eleven()).filter(({ itemIds }) => itemIds.some((id) => id.startsWith('road')))).toEqual([])
    expect(laneFindings(clearance, { job: { method: 'stationary' } }, ...eleven()).filter(({ itemIds }) => itemIds.some((id) => id.startsWith('road')))).not.toEqual([])
  })
})
