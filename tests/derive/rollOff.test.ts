import { describe, expect, it } from 'vitest'
import { dropHeightM } from '../../src/derive/dropHeight.ts'
import { fallAt, fallToward, FARTHEST_M, rollOffAt } from '../../src/derive/rollOff.ts'
import { runAwayWay } from '../../src/derive/runAwayWay.ts'
import type { SiteModel } from '../../src/derive/types.ts'
import type { YardRecord } from '../../src/scene/document.ts'
import { item, onRun } from '../helpers/documents.ts'
import { boxM, ftM, machineAt0, siteOf, withFigures } from '../checks/yardCase.ts'

/** Grass: c = 0.05 at its low end (house rule). Falls to the right (−y) by so much. */
const slope = (crossFallRatio: number | null, ...records: YardRecord[]): SiteModel => siteOf({ setUp: { fallRatio: 0, crossFallRatio }, run: { surfaces: ['grass'] } }, ...records)
const barrier = (yM: number, fromXM: number, toXM: number, stopsPipe: boolean | null, id = 'barrier:1'): YardRecord => item('barrier', id, [{ xM: fromXM, yM }, { xM: toXM, yM }], { stopsPipe })
const start = { xM: 10, yM: 0 }

describe('fall of the ground', () => {
  it('is the steepest of grade and cross-fall, and where it points', () => {
    // 3 % along and 4 % across make 5 %, at −53.13° of the axis.
    const { fallRatio, headingRad } = fallAt(siteOf({ setUp: { fallRatio: 0.03, crossFallRatio: 0.04 } }), start)
    expect([fallRatio, headingRad]).toEqual([expect.closeTo(0.05, 9), expect.closeTo(-Math.atan2(4, 3), 9)])
    expect(fallToward(siteOf({ setUp: { fallRatio: 0.03, crossFallRatio: 0.04 } }), start, 0)).toBeCloseTo(0.03, 9)
    expect(fallToward(siteOf({ setUp: { fallRatio: 0.03, crossFallRatio: 0.04 } }), start, Math.PI / 2)).toBeCloseTo(-0.04, 9)
  })
})

describe('a dropped pipe', () => {
  it('stays on level ground, and where the fall would not start it', () => {
    expect(rollOffAt(slope(0), start)).toMatchObject({ end: 'staysPut', reachM: 0, headingRad: null })
    // Half of c: 0.025.
    expect(rollOffAt(slope(0.0249), start).end).toBe('staysPut')
    expect(rollOffAt(slope(0.025), start).end).not.toBe('staysPut')
  })

  it('rolls down the fall and nothing stops it where the ground goes on falling', () => {
    const roll = rollOffAt(slope(0.06), start)
    expect([roll.end, roll.reachM, roll.headingRad]).toEqual(['unstopped', FARTHEST_M, expect.closeTo(-Math.PI / 2, 9)])
    // One stick of 40 ft wide, from the start to where it is followed no farther.
    expect(Math.max(...roll.lane.map(({ xM }) => xM)) - Math.min(...roll.lane.map(({ xM }) => xM))).toBeCloseTo(40 * ftM, 6)
    expect(Math.min(...roll.lane.map(({ yM }) => yM))).toBeCloseTo(-FARTHEST_M, 6)
  })

  it('comes to rest when the height it fell from is used up: h / (c − s)', () => {
    // 0.6 m on 1 %: 0.6 / (0.05 − 0.01) = 15 m.
    const roll = rollOffAt(slope(0.01), start, 0.6)
    expect([roll.end, roll.reachM]).toEqual(['rests', expect.closeTo(15, 6)])
  })

  it('is stopped by a barrier that is said to stop a pipe, across the middle third of the stick', () => {
    // 40 ft stick from x = 3.9 to 16.1; middle third 7.97 to 12.03.
    expect(rollOffAt(slope(0.06, barrier(-8, 7.9, 12.1, true)), start)).toMatchObject({ end: 'stopped', reachM: expect.closeTo(8, 9) as number, itemId: 'barrier:1' })
    expect(rollOffAt(slope(0.06, barrier(-8, 8.1, 12.1, true)), start).end).toBe('unstopped')
    expect(rollOffAt(slope(0.06, barrier(-8, 0, 20, false)), start).end).toBe('unstopped')
  })

  it('takes the first stop, and a building for one', () => {
    const site = slope(0.06, barrier(-20, 0, 20, true), item('building', 'building:1', boxM(0, 20, -16, -12)))
    expect(rollOffAt(site, start)).toMatchObject({ end: 'stopped', reachM: expect.closeTo(12, 9) as number, itemId: 'building:1' })
  })

  it('does not count fences, trees or a barrier nobody has spoken of, and names the last', () => {
    const roll = rollOffAt(slope(0.06, barrier(-8, 0, 20, null), item('fence', 'fence:1', [{ xM: 0, yM: -9 }, { xM: 20, yM: -9 }])), start)
    expect([roll.end, roll.doubtIds]).toEqual(['unstopped', ['barrier:1']])
  })

  it('drops into a trench or water', () => {
    // Drawn 6 m off, 1 m wide: its near edge is 5.5 m off.
    const trench = withFigures('trench', 'trench:1', [{ xM: 0, yM: -6 }, { xM: 30, yM: -6 }], { widthM: 1, depthM: 2 })
    expect(rollOffAt(slope(0.06, trench), start)).toMatchObject({ end: 'drops', reachM: expect.closeTo(5.5, 9) as number, itemId: 'trench:1' })
    expect(rollOffAt(slope(0.06, item('water', 'water:1', boxM(0, 30, -20, -10))), start)).toMatchObject({ end: 'drops', itemId: 'water:1' })
  })

  it('names what nobody has said', () => {
    expect(rollOffAt(slope(null), start).missing.map(({ path }) => path)).toEqual(['crossFallRatio'])
    expect(rollOffAt(siteOf({ setUp: { crossFallRatio: 0.06 }, run: { surfaces: [null] } }), start).missing.map(({ path }) => path)).toEqual(['surfaces'])
  })

  it('falls from the rack or stack it lies on', () => {
    // Three rows of 10.75 in: 0.745986 m.
    const site = slope(0.01, machineAt0(), withFigures('stack', 'stack:1', onRun(10, { offsetM: 10 }), { lengthM: 12, widthM: 2, rowCount: 3 }, { chocked: false }))
    expect(dropHeightM(site, { xM: 10, yM: -10 })).toBeCloseTo(0.745986, 5)
    expect(dropHeightM(site, { xM: 10, yM: 10 })).toBe(0)
  })
})

describe('a string that leaves by itself', () => {
  it('goes on until the ground falls under the limit, or something positive stops it, or 60 m', () => {
    const down = (...records: YardRecord[]) => siteOf({ setUp: { fallRatio: 0.02, crossFallRatio: 0 } }, ...records)
    expect(runAwayWay(down(), 100, 1, 0.01)).toEqual({ reachM: 60, isStopped: false })
    expect(runAwayWay(down(), 100, -1, 0.01)).toEqual({ reachM: 2, isStopped: true })
    expect(runAwayWay(down(item('barrier', 'barrier:1', [{ xM: 111, yM: -3 }, { xM: 111, yM: 3 }], { stopsPipe: true })), 100, 1, 0.01)).toEqual({ reachM: 12, isStopped: true })
  })
})
