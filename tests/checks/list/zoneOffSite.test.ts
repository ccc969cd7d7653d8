import { describe, expect, it } from 'vitest'
import { zoneOffSite } from '../../../src/checks/list/zoneOffSite.ts'
import { item } from '../../helpers/documents.ts'
import { boxM, findingsOf, levelsOf, siteOf } from '../yardCase.ts'

const yard = (toYM: number) => item('boundary', 'boundary:1', boxM(-200, 400, -200, toYM))
const zone = (over: Record<string, unknown> = {}) => item('zone', 'zone:1', boxM(20, 30, 50, 60), { phases: ['tieIn'], zoneClass: 'RED', name: 'test', ...over })
/** No sticks, so that only what is drawn by hand makes zones. */
const bare = (...records: Parameters<typeof siteOf>[1][]) => siteOf({ job: { stickLengthM: null } }, ...records)

describe('zones beyond the boundary', () => {
  it('are told with how far they reach', () => {
    const [over] = findingsOf(zoneOffSite, bare(yard(57), zone()))
    expect([over!.level, over!.measured!.value, over!.phases]).toEqual(['CHECK', expect.closeTo(3, 9), ['tieIn']])
  })
  it('are met within it, and nothing is said without one', () => {
    expect(levelsOf(zoneOffSite, bare(yard(60), zone()))).toEqual(['met'])
    expect(levelsOf(zoneOffSite, bare(zone()))).toEqual([])
  })
  it('BLUE ones are for the public and do not count', () => expect(levelsOf(zoneOffSite, bare(yard(57), zone({ zoneClass: 'BLUE' })))).toEqual(['met']))
})
