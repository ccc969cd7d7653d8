/*
 * One of two strings of 16 in DR 11 for a bore: 25 sticks of 50 ft, 3 % down to the exit, a strip 1,330 ft long, a farm road across.
 *
 * must be told                                             check          level
 * 3 % on rollers: it starts by itself, nothing holds it    hold-back      STOP
 * tether for w·L·sinθ, twice over                          hold-back      FIX where the anchor is weaker
 * strip too short                                          end-room       FIX
 * joint between the strings while the hole is open         string-split   CHECK
 * dairy trucks on the road                                 public-way     STOP
 * what the run-away string reaches                         run-away-line  FIX
 * break-over under the handbook radius, or the owner's     break-over     FIX
 * rollers against the nose                                 nose-landing   FIX
 */
import { describe, expect, it } from 'vitest'
import { stringPullOf } from '../../../src/derive/stringPull.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import { footM, poundForceN } from '../../../src/units/factors.ts'
import { about, alarms, edited, firstId, levels, yardNamed } from './raised.ts'

const sketch = yardNamed('otter-bend-first-sketch')
const good = yardNamed('otter-bend-good')

describe('a string for a bore', () => {
  it('the good plan hears no STOP, no FIX and no question', () => expect(alarms(good)).toEqual([]))
  it('on 3 % of rollers the string starts by itself and nothing holds it', () => expect(about(sketch, 'hold-back', 'STOP')).toBeDefined())
  it('the tether is for the whole pull down the slope, twice over', () => {
    // w·L·sinθ = 29 lb/ft × 1,247.5 ft × 0.03 = 1,084 lb.
    const tetherN = Math.max(...stringPullOf(deriveSite(good)).joints.map((one) => one.tetherN.exit))
    expect(tetherN / poundForceN).toBeCloseTo(1084, -2)
    const withAnchor = (ratedHoldN: number) => levels(edited(good, ['setField', { ids: [firstId(good, 'anchor')], path: 'figures.ratedHoldN.value', value: ratedHoldN, basis: 'plate' }]), 'hold-back')
    expect(withAnchor(1.9 * tetherN)).toContain('FIX')
    expect(withAnchor(2.1 * tetherN)).not.toContain('FIX')
  })
  // 50 ft infeed, 1,247.5 ft of string, 40 ft of lead: 1,337.5 of 1,330 ft.
  it('the strip is 7 ft 6 in too short', () => expect(about(sketch, 'end-room', 'FIX')!.margin!.value! / footM).toBeCloseTo(-7.5, 1))
  it('the joint between two strings keeps the hole open', () => {
    const two = edited(good, ['setJob', { path: 'neededLengthM', value: 2460 * footM }], ['splitStrings', { setUpId: firstId(good, 'setUp'), counts: [25, 25], side: 'left' }])
    expect(levels(two, 'string-split')).toContain('CHECK')
  })
  it('dairy trucks on the open farm road are stopped, and the run-away string reaches it', () => {
    const road = firstId(sketch, 'road')
    expect(about(sketch, 'public-way', 'STOP', road)).toBeDefined()
    expect(about(sketch, 'run-away-line', 'FIX', road)).toBeDefined()
    // With the tether drawn it is only worth knowing.
    expect(levels(good, 'run-away-line')).toEqual(['NOTE'])
  })
  it('an arch of 30 ft breaks the handbook, one of 50 ft the owner’s 40 OD, one of 100 ft nothing', () => {
    const arch = (radiusFt: number, ownerTimesOd: number | null) => levels(edited(good, ['setJob', { path: 'arch', value: { entryAngleRad: (12 * Math.PI) / 180, radiusM: radiusFt * footM, ownerTimesOd, rollerHeightM: 0, supportSpacingM: null } }]), 'break-over')
    expect([arch(30, null)[0], arch(50, 40)[0], arch(100, 40)]).toEqual(['FIX', 'FIX', ['NOTE']])
  })
  it('rollers at 14 ft are too far apart for a free nose', () => expect(about(sketch, 'nose-landing', 'FIX')).toBeDefined())
})
