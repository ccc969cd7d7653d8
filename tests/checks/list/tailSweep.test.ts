import { describe, expect, it } from 'vitest'
import { tailSweep } from '../../../src/checks/list/tailSweep.ts'
import { item, onRun } from '../../helpers/documents.ts'
import { boxM, findingsOf, levelsOf, siteOf } from '../yardCase.ts'

/** A left turn of 90° with R 20 m: from 20, 0 round 20, 20 to 40, 20. Half the pipe is 5.375 in = 0.1365 m. */
const run = { vertices: [{ xM: 40, yM: 0, radiusM: 20 }, { xM: 40, yM: 100, radiusM: null }] }
const shed = (...box: Parameters<typeof boxM>) => item('building', 'building:1', boxM(...box))
const HALF_M = (10.75 * 0.0254) / 2

describe('room beside the bends', () => {
  it('the tail swings outside as far as the tangent at the next guide', () => {
    // Let go at 20, 0 the tail lies straight back from 40, 20, on x = 40 down to y = −11.4: a shed from x = 40.5 on is 0.5 m less half a pipe away.
    const [one] = findingsOf(tailSweep, siteOf({ run }, shed(40.5, 45, -8, -4)))
    expect([one!.level, one!.phases, one!.key]).toEqual(['CHECK', ['move'], 'tail-sweep@tail:building:1'])
    expect(one!.measured!.value).toBeCloseTo(0.5 - HALF_M, 3)
    expect(levelsOf(tailSweep, siteOf({ run }, shed(38, 45, -8, -4)))).toEqual(['CHECK'])
    // 3 ft of walking room beside it is enough.
    expect(levelsOf(tailSweep, siteOf({ run }, shed(41.2, 45, -8, -4)))).toEqual(['met'])
  })
  it('guides in the bend keep the tail in', () => {
    const guides = [25, 30, 35, 40, 45].map((at, i) => item('guide', `guide:${i + 1}`, onRun(at)))
    expect(levelsOf(tailSweep, siteOf({ run }, shed(40.5, 45, -8, -4), ...guides))).toEqual(['met'])
  })
  it('drawn tight the string cuts the corner to the chord', () => {
    // Chord from 20, 0 to 40, 20: its middle is 30, 10; the arc there passes at 34.14, 5.86. A post at 31, 9 stands between them.
    const [one] = findingsOf(tailSweep, siteOf({ run }, shed(30.6, 31.4, 8.6, 9.4)))
    expect([one!.level, one!.phases, one!.key]).toEqual(['CHECK', ['pull'], 'tail-sweep@tight:building:1'])
    expect(one!.measured!.value).toBeLessThanOrEqual(0)
  })
  it('a walkway in the swing is told', () => {
    const walk = item('walkway', 'walkway:1', [{ xM: 38, yM: -9 }, { xM: 60, yM: -9 }])
    expect(levelsOf(tailSweep, siteOf({ run }, walk))).toEqual(['CHECK'])
  })
  it('says nothing of a straight run', () => expect(findingsOf(tailSweep, siteOf({}))).toEqual([]))
})
