/*
 * A simple bypass round a pump house: 280 ft installed, 10 in IPS DR 17 in 40 ft sticks, gravel lot falling 1 %.
 *
 * must be told                                   check          level
 * seven sticks come up 5 ¼ in short              sticks-length  FIX
 * free nose below the next roller at 20 ft       nose-landing   FIX, with the spacing that does
 * slung nose                                     nose-landing   NOTE
 * string scuffs on gravel                        surface-scuff  CHECK
 * some 20 ft spare                               end-room       NOTE
 * 1 % fall: tether before the jaws open          hold-back      CHECK
 * loader 351 of 1,800 lb                         loader-plate   met
 * wind rolls it from 14 mph                      wind-chock     CHECK
 * growth of the string at its end                growth-gap     NOTE
 */
import { describe, expect, it } from 'vitest'
import { footM, inchM, mphMPerS, poundForceN } from '../../../src/units/factors.ts'
import { about, alarms, levels, raised, yardNamed } from './raised.ts'

const sketch = yardNamed('maple-fork-first-sketch')
const good = yardNamed('maple-fork-good')

describe('a simple bypass', () => {
  it('the good plan hears no STOP, no FIX and no question', () => expect(alarms(good)).toEqual([]))
  // 7 × 40 ft less 6 × 7/8 in = 279 ft 6 ¾ in.
  it('seven sticks come up 5 ¼ in short', () => expect(about(sketch, 'sticks-length', 'FIX')!.margin!.value! / -inchM).toBeCloseTo(5.25, 3))
  it('a free nose hangs below the next roller at 20 ft; closer rollers are offered', () => {
    const low = about(sketch, 'nose-landing', 'FIX')!
    // Minimum wall for stiffness, mean wall for weight, the stiffness of a short load: 28 in (with the stiffness of an hour some 29 ½ in). OD/4 = 2.7 in is the limit.
    expect(low.measured!.value! / inchM).toBeGreaterThan(25)
    expect(low.limit!.value! / inchM).toBeCloseTo(10.75 / 4, 3)
    const spacing = low.move!.values!['spacing'] as { value: number }
    // By the closed form 11 ft 0 in, rounded down to 6 in.
    expect(spacing.value / footM).toBeCloseTo(11, 3)
  })
  it('a slung nose is worth knowing, no more', () => expect(levels(good, 'nose-landing')).toEqual(['NOTE']))
  it('the string scuffs on gravel', () => expect(levels(sketch, 'surface-scuff')).toEqual(['CHECK']))
  // 420 ft less 40 infeed, 319 ft 6 in string and a lead of 40 ft.
  it('some 20 ft of the lot are spare', () => expect(about(good, 'end-room', 'NOTE')!.margin!.value! / footM).toBeCloseTo(20.5, 1))
  it('on 1 % the string is tethered before the jaws open', () => expect(about(sketch, 'hold-back', 'CHECK')!.measured!.value).toBeCloseTo(0.01, 6))
  it('a stick of 351 lb is no load for a loader of 1,800 lb', () => {
    const [plate] = raised(good, 'loader-plate')
    expect([plate!.level, plate!.measured!.kind]).toEqual(['met', 'force'])
    // 8.78 lb/ft × 40 ft.
    expect(plate!.measured!.value! / poundForceN).toBeCloseTo(351, 0)
  })
  it('wind rolls the string from 14 mph', () => expect(Math.round(about(good, 'wind-chock', 'CHECK')!.measured!.value! / mphMPerS)).toBe(14))
  it('the string grows by 18 to 23 in a 60 °F swing', () => {
    const inches = about(good, 'growth-gap', 'NOTE')!.measured!.value! / inchM
    expect([inches > 18, inches < 23]).toEqual([true, true])
  })
})
