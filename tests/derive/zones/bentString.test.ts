import { describe, expect, it } from 'vitest'
import { freeTailM } from '../../../src/derive/springBack.ts'
import { zonesAt, type Zone } from '../../../src/derive/zones.ts'
import type { SiteModel } from '../../../src/derive/types.ts'
import { siteOf } from '../../checks/yardCase.ts'
import { boxOf } from './zoneBox.ts'

/** A left turn of 90° with R 20 m from 20 m on. */
const bent = (radiusM: number | null) => siteOf({ run: { vertices: [{ xM: 40, yM: 0, radiusM }, { xM: 40, yM: 200, radiusM: null }] } })
const zone = (site: SiteModel): Zone | undefined => zonesAt(site, { phase: 'pull', joint: 7 }).find(({ id }) => id === 'Z-11')

describe('bent string (Z-11)', () => {
  it('reaches 10 ft beyond the swing from the bent line to the straight one', () => {
    // Bent end up x = 40 by the free tail, straight end from 20 m on by 31.416 m of arc and the tail; 3.048 m and 0.1 m for the chords about both.
    const site = bent(20)
    const freeM = freeTailM(site, 20, 52)!
    const box = boxOf(zone(site)!)
    expect(box.maxXM).toBeCloseTo(20 + 10 * Math.PI + freeM + 3.148, 0)
    expect(box.maxYM).toBeGreaterThanOrEqual(20 + freeM + 3.048 - 0.05)
    expect(box.minXM).toBeCloseTo(20 - 3.148, 1)
  })
  it('asks for the radius of a corner nobody has rounded, and is never silent about it', () => {
    expect(zone(bent(null))!.missing.map(({ path }) => path)).toEqual(['vertices.0.radiusM'])
  })
  it('is not there on a straight run', () => expect(zone(siteOf({}))).toBe(undefined))
})
