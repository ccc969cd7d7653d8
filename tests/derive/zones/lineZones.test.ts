import { describe, expect, it } from 'vitest'
import { zonesAt } from '../../../src/derive/zones.ts'
import type { Zone } from '../../../src/derive/zones.ts'
import type { SiteModel, Stage } from '../../../src/derive/types.ts'
import { phases } from '../../../src/scene/parts.ts'
import { item, onRun } from '../../helpers/documents.ts'
import { ftM, inM, machineAt0, siteOf, withFigures } from '../../checks/yardCase.ts'
import { boxOf } from './zoneBox.ts'

const puller = (over: Record<string, number | null> = {}, rest: Record<string, unknown> = {}) => withFigures('puller', 'puller:1', onRun(60), { ropeLengthM: 30 * ftM, ...over }, { guardedCab: true, ...rest })
const zone = (site: SiteModel, id: string, stage: Stage): Zone | undefined => zonesAt(site, stage).find((one) => one.id === id)
/** Length of k sticks of 40 ft less 7/8 in a joint. */
const stringM = (k: number): number => k * 40 * ftM - (k - 1) * 0.875 * inM

describe('rope tight (Z-09)', () => {
  it('covers rope and fans over the whole pull', () => {
    // Pull of joint 2: nose from 2 to 3 sticks, rope 30 ft = 9.144 m. Half width 10 ft = 3.048 m; fan 9.144 m long widening by tan 15° = 2.450 m.
    const box = boxOf(zone(siteOf({}, puller()), 'Z-09', { phase: 'pull', joint: 2 })!)
    expect(box.minXM).toBeCloseTo(stringM(2) - 9.144, 6)
    expect(box.maxXM).toBeCloseTo(stringM(3) + 2 * 9.144, 6)
    expect(box.maxYM).toBeCloseTo(3.048 + 9.144 * Math.tan(Math.PI / 12), 6)
  })

  it('is half a quarter of a long lead wide, its fan no longer than 50 ft', () => {
    // Rope 60 ft: a quarter is 15 ft = 4.572 m, the fan 50 ft = 15.24 m.
    const box = boxOf(zone(siteOf({}, puller({ ropeLengthM: 60 * ftM })), 'Z-09', { phase: 'pull', joint: 1 })!)
    expect(box.maxYM).toBeCloseTo(4.572 + 15.24 * Math.tan(Math.PI / 12), 6)
    expect(box.maxXM).toBeCloseTo(stringM(2) + 60 * ftM + 15.24, 6)
  })

  it('keeps a winch where it stands, its rope longest when it starts', () => {
    // Winch at 60 m; pull of joint 1 starts with the nose at 12.192 m: lead 47.808 m, a quarter 11.952 m.
    const box = boxOf(zone(siteOf({}, puller({}, { pullerKind: 'winch' })), 'Z-09', { phase: 'pull', joint: 1 })!)
    expect(box.maxXM).toBeCloseTo(60 + 15.24, 6)
    expect(box.maxYM).toBeCloseTo((60 - stringM(1)) / 4 + 15.24 * Math.tan(Math.PI / 12), 6)
  })

  it('shrinks to one place where the stage names the nose', () => {
    const box = boxOf(zone(siteOf({}, puller()), 'Z-09', { phase: 'pull', joint: 2, tipM: 30 })!)
    expect([box.minXM, box.maxXM]).toEqual([expect.closeTo(30 - 9.144, 6), expect.closeTo(30 + 2 * 9.144, 6)])
  })

  it('lets the puller operator in unless the cab has no guard', () => {
    const at = (guardedCab: boolean | null) => zone(siteOf({}, puller({}, { guardedCab })), 'Z-09', { phase: 'pull', joint: 1 })!.mayEnter
    expect([at(true), at(null), at(false)]).toEqual([['pullerOperator'], ['pullerOperator'], []])
  })

  it('names a rope length nobody gave', () => {
    expect(zone(siteOf({}, puller({ ropeLengthM: null })), 'Z-09', { phase: 'pull', joint: 1 })!.missing.map(({ path }) => path)).toEqual(['figures.ropeLengthM.value'])
  })

  it('is RED in pull and move, AMBER while fusing, not there else', () => {
    const site = siteOf({}, puller())
    expect(phases.map((phase) => zone(site, 'Z-09', { phase, joint: 1 })?.zoneClass ?? '')).toEqual(['', '', '', 'AMBER', 'RED', 'RED', '', ''])
  })
})

describe('ahead of the nose (Z-10)', () => {
  it('covers the pull and 15 ft, widening 1 in 10', () => {
    // Joint 3: from 3 to 4 sticks and 4.572 m; half width 3.048 m, at its end a tenth of its length more.
    const box = boxOf(zone(siteOf({}), 'Z-10', { phase: 'pull', joint: 3 })!)
    const lengthM = stringM(4) + 4.572 - stringM(3)
    expect([box.minXM, box.maxXM]).toEqual([expect.closeTo(stringM(3), 6), expect.closeTo(stringM(4) + 4.572, 6)])
    expect(box.maxYM).toBeCloseTo(3.048 + lengthM / 10, 6)
  })

  it('is wider by the height of a stand it may fall off', () => {
    const stand = item('stand', 'stand:1', onRun(15), { height: { rule: 'aboveGround', saddleM: 0.8 } })
    const [without, withStand] = [boxOf(zone(siteOf({}), 'Z-10', { phase: 'pull', joint: 1 })!), boxOf(zone(siteOf({}, stand), 'Z-10', { phase: 'pull', joint: 1 })!)]
    expect(withStand.maxYM - without.maxYM).toBeCloseTo(0.8, 6)
  })

  it('is RED in pull and move only', () => {
    expect(phases.map((phase) => zone(siteOf({}), 'Z-10', { phase, joint: 1 })?.zoneClass ?? '')).toEqual(['', '', '', '', 'RED', 'RED', '', ''])
  })

  it('is not there without a stick length, and names it', () => {
    expect(zone(siteOf({ job: { stickLengthM: null } }), 'Z-10', { phase: 'pull', joint: 1 })).toBeUndefined()
  })
})

describe('beside the string (Z-12)', () => {
  it('is the pipe and 3 ft to each side, from the machine to the nose', () => {
    // Half of 10.750 in = 0.1365 m and 0.9144 m.
    const box = boxOf(zone(siteOf({}, machineAt0()), 'Z-12', { phase: 'pull', joint: 2 })!)
    expect(box.maxYM).toBeCloseTo(0.136525 + 0.9144, 6)
    expect(box.maxXM).toBeCloseTo(stringM(3), 6)
  })

  it('is AMBER while fusing and pulling, RED while the whole string moves', () => {
    expect(phases.map((phase) => zone(siteOf({}), 'Z-12', { phase, joint: 1 })?.zoneClass ?? '')).toEqual(['', '', '', 'AMBER', 'AMBER', 'RED', '', ''])
  })

  it('names an unknown pipe and takes the largest', () => {
    const found = zone(siteOf({ job: { pipe: null } }), 'Z-12', { phase: 'pull', joint: 1 })!
    expect(found.missing.map(({ path }) => path)).toEqual(['pipe'])
    expect(boxOf(found).maxYM).toBeCloseTo(0.8 + 0.9144, 6)
  })
})

describe('between rack and machine (Z-03)', () => {
  it('is the pipe and 3 ft to each side, from the near beam to the outer clamp', () => {
    // Rack in the middle at −20 ft with beams 7.112 m apart: near beam at −6.096 + 3.556 = −2.54 m; clamp at −0.7112 m.
    const box = boxOf(zone(siteOf({}, machineAt0(), item('rack', 'rack:1', onRun(-20 * ftM))), 'Z-03', { phase: 'load', joint: 1 })!)
    expect([box.minXM, box.maxXM]).toEqual([expect.closeTo(-2.54, 6), expect.closeTo(-0.7112, 6)])
    expect(box.maxYM).toBeCloseTo(0.136525 + 0.9144, 6)
  })

  it('is AMBER while loading, fusing and pulling', () => {
    const site = siteOf({}, machineAt0(), item('rack', 'rack:1', onRun(-20 * ftM)))
    expect(phases.map((phase) => zone(site, 'Z-03', { phase, joint: 1 })?.zoneClass ?? '')).toEqual(['', '', 'AMBER', 'AMBER', 'AMBER', '', '', ''])
  })
})
