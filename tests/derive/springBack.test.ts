import { describe, expect, it } from 'vitest'
import { freeTailM, guidedStretchesOf, guidesOf, springBacksOf } from '../../src/derive/springBack.ts'
import { holdCurve } from '../../src/engine/bends/holdCurve.ts'
import { distanceM, type Vec } from '../../src/geometry/vector.ts'
import { item, onRun } from '../helpers/documents.ts'
import { siteOf } from '../checks/yardCase.ts'

/** A left turn of 90° with R 20 m: the corner at 40, 0; the arc from 20 m on, 31.416 m long, to 40, 20. */
const run = { vertices: [{ xM: 40, yM: 0, radiusM: 20 }, { xM: 40, yM: 100, radiusM: null }] }
const site = siteOf({ run })
const has = (ring: readonly Vec[], xM: number, yM: number): boolean => ring.some((p) => distanceM(p, { xM, yM }) < 0.01)

describe('where a bent string goes when its guides let go', () => {
  it('swings its nose from the bend to the straight line ahead, as much of it as the bend can drag', () => {
    const [back] = springBacksOf(site, { tailM: 0, noseM: 200 })
    const freeM = freeTailM(site, 20, 52)!
    expect(freeM).toBeLessThan(149)
    expect(back!.rings).toHaveLength(1)
    // Bent end: up the leg x = 40 from y = 20 by the free tail. Straight end: from 20 m on by the arc and the tail.
    expect(has(back!.rings[0]!, 40, 20 + freeM)).toBe(true)
    expect(has(back!.rings[0]!, 20 + 10 * Math.PI + freeM, 0)).toBe(true)
  })

  it('drags a tail for which µ w ℓ²/2 is EI/R, on the low friction of grass, 0.1', () => {
    const couple = holdCurve({ bendingStiffnessNm2: site.pipe.stiffnessNm2('pull')!, radiusM: 20, armM: 1 }).coupleNm
    const freeM = freeTailM(site, 20, 52)!
    expect((0.1 * site.pipe.properties!.lineLoadNPerM * freeM ** 2) / 2).toBeCloseTo(couple, 6)
  })

  it('takes only the pipe that is there: a nose within the bend has no straight beyond it', () => {
    const [back] = springBacksOf(site, { tailM: 0, noseM: 20 + 5 * Math.PI })
    // Half the bend: end at 20 + 20 sin 45°, 20 (1 − cos 45°); straight 5π on from 20.
    expect(has(back!.rings[0]!, 20 + 14.142, 5.858)).toBe(true)
    expect(has(back!.rings[0]!, 20 + 5 * Math.PI, 0)).toBe(true)
    expect(springBacksOf(site, { tailM: 0, noseM: 15 })).toEqual([])
  })

  it('swings the tail too once it is out of the machine', () => {
    const [back] = springBacksOf(site, { tailM: 10, noseM: 60 })
    expect(back!.rings).toHaveLength(2)
    // Held at 40, 20 looking back down the leg: bent end 10, 0; straight end on x = 40 below it by 31.416 + 10 m.
    expect(has(back!.rings[1]!, 10, 0)).toBe(true)
    expect(has(back!.rings[1]!, 40, 20 - 10 * Math.PI - 10)).toBe(true)
  })
})

describe('ground beside a bend while the string is drawn round it', () => {
  it('is parted at the guides on the plan', () => {
    expect(guidedStretchesOf(site).map(({ fromM, toM }) => [fromM, toM])).toEqual([[expect.closeTo(20, 6), expect.closeTo(20 + 10 * Math.PI, 6)]])
    const guided = siteOf({ run }, item('guide', 'guide:1', onRun(35)), item('guide', 'guide:2', onRun(10)), item('guide', 'guide:3', onRun(40, { offsetM: 5 })))
    expect(guidesOf(guided).map(({ id }) => id)).toEqual(['guide:2', 'guide:1'])
    expect(guidedStretchesOf(guided).map(({ toM }) => toM)).toEqual([35, expect.closeTo(20 + 10 * Math.PI, 6)])
  })
  it('reaches outside to the tangent at the end of the bend and inside to the chord', () => {
    const [stretch] = guidedStretchesOf(site)
    // The tail let go at 20, 0 lies straight back from 40, 20: at 40, 20 − 31.416.
    expect(has(stretch!.tailRing, 40, 20 - 10 * Math.PI)).toBe(true)
    expect([stretch!.chordRing[0], stretch!.chordRing.at(-1)]).toEqual([{ xM: expect.closeTo(20, 6), yM: expect.closeTo(0, 6) }, { xM: expect.closeTo(40, 6), yM: expect.closeTo(20, 6) }])
  })
  it('says nothing of a corner nobody has rounded', () => {
    expect(guidedStretchesOf(siteOf({ run: { vertices: [{ xM: 40, yM: 0, radiusM: null }, { xM: 40, yM: 100, radiusM: null }] } }))).toEqual([])
  })
})
