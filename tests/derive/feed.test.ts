import { describe, expect, it } from 'vitest'
import { bodySolverOf } from '../../src/derive/bodies.ts'
import { feedStartM, solveFeed } from '../../src/derive/feed.ts'
import { footM } from '../../src/units/factors.ts'
import { fusionYard, siteOf, type YardSpec } from '../helpers/fusionYard.ts'

const feedOf = (spec: YardSpec): NonNullable<ReturnType<typeof solveFeed>> => {
  const site = siteOf(fusionYard(spec))
  return solveFeed(site, bodySolverOf(site))!
}

describe('where the stick starts', () => {
  it('its middle over the middle of the rack', () => {
    // Rack at −26 ft, stick 40 ft: front end at −6 ft.
    expect(feedStartM(siteOf(fusionYard({ rackFt: -26 }))) / footM).toBeCloseTo(-6, 9)
  })
  it('never past the joint', () => expect(feedStartM(siteOf(fusionYard({ rackFt: -12 })))).toBe(0))
  it('without a rack it is set straight into the jaws', () => expect(feedStartM(siteOf(fusionYard({ infeed: [-10, -30] })))).toBe(0))
})

describe('tipping', () => {
  it('the usual rack carries the stick all the way', () => expect(feedOf({}).tips).toBeNull())
  it('a rack near the machine lets the stick fall back', () => {
    // Beams at −1.7 and −25 ft would do; a single stand 8 ft behind the jaws does not: weight at −20 ft, behind it by 12 ft.
    const { tips } = feedOf({ infeed: [-8] })
    expect(tips!.overByM / footM).toBeCloseTo(-12, 6)
    expect(tips!.frontM).toBe(0)
  })
  it('a rack far back lets it fall forward until the lift takes it', () => {
    // Beams at −39.3 and −62.7 ft; the middle passes the near beam at −39.3 long before the front end (20 ft ahead) reaches the lift at −3.9 ft.
    const { tips } = feedOf({ rackFt: -51 })
    expect(tips!.overByM).toBeGreaterThan(0)
    // Worst just short of the lift: middle at −3.94 − 20 = −23.94 ft, 15.4 ft past the beam at −39.33 ft.
    expect(tips!.overByM / footM).toBeCloseTo(39.333 - 23.937, 1)
  })
  it('no support at all is tipping, with nothing to measure', () => {
    const { tips } = feedOf({ infeed: 'none' })
    expect(tips!.frontM).toBe(0)
    expect(tips!.under).toBe(3)
  })
})

describe('the front end', () => {
  it('comes to lift and jaws within their reach from the usual rack a little farther back', () => {
    const { frontEnds } = feedOf({ rackFt: -24 })
    expect(frontEnds.map(({ place }) => place)).toEqual(['lift', 'outerJaw', 'innerJaw'])
    for (const { place, droopM, leadInM } of frontEnds) expect(droopM, place).toBeLessThan(leadInM)
  })
  it('droops more the farther it has to reach', () => {
    const near = feedOf({ size: '4', rackFt: -25 }).frontEnds.find(({ place }) => place === 'lift')!
    const far = feedOf({ size: '4', rackFt: -27 }).frontEnds.find(({ place }) => place === 'lift')!
    expect(far.droopM).toBeGreaterThan(near.droopM)
    expect(far.droopM).toBeGreaterThan(far.leadInM)
  })
})
