/*
 * An irrigation lateral, metric and hot: 640 m of 450 SDR 26 in 12 m sticks, wall 60 °C, 33 kV 6.5 m up over the gate, a bend of 15 m.
 *
 * must be told                                        check          level
 * unloading under 33 kV (3.45 m left)                 overhead-line  STOP
 * bend of 15 m under 15.3 m                           bend-radius    FIX
 * hot thin wall: margin and kink                      bend-radius    CHECK up to 1.5 times
 * wind over 5 % of the weight                         wind-chock     CHECK
 * nose spacing of the hot wall, not of the cold one   nose-landing   FIX at 4.5 m
 * growth over the season                              growth-gap     NOTE
 * roll-over toward vehicles in the track              run-away and rack roll-off on falling ground (the field is flat: none)
 * sand bearing, water and shade are no findings (docs/limitations.md)
 */
import { describe, expect, it } from 'vitest'
import { about, alarms, edited, firstId, levels, yardNamed } from './raised.ts'

const sketch = yardNamed('campo-arenal-first-sketch')
const good = yardNamed('campo-arenal-good')

describe('a hot lateral on sand', () => {
  it('the good plan hears no STOP, no FIX and no question', () => expect(alarms(good)).toEqual([]))
  it('unloading under 33 kV at 6.5 m is stopped', () => {
    const stop = about(sketch, 'overhead-line', 'STOP', firstId(sketch, 'offload'))!
    // 6.5 − 3.048 m (10 ft, up to 50 kV).
    expect(stop.limit!.value).toBeCloseTo(3.45, 2)
  })
  // 34 times 450 mm (handbook, SDR 26).
  it('15 m is tighter than 15.3 m', () => expect(about(sketch, 'bend-radius', 'FIX')!.limit!.value).toBeCloseTo(15.3, 3))
  it('a hot thin wall is watched for a kink up to half as much again', () => {
    const wider = (radiusM: number) => edited(sketch, ['setRun', { runId: firstId(sketch, 'run'), path: 'vertices.0.radiusM', value: radiusM }])
    expect(about(wider(19), 'bend-radius', 'CHECK')!.move!.text.en).toContain('kink')
    expect(levels(wider(23), 'bend-radius')).toEqual(['met'])
  })
  it('wind rolls it from 6.5 m/s on', () => expect(about(sketch, 'wind-chock', 'CHECK')!.measured!.value).toBeCloseTo(6.5, 1))
  it('rollers at 4.5 m are too far apart for a wall at 60 °C', () => expect(about(sketch, 'nose-landing', 'FIX', firstId(sketch, 'roller'))).toBeDefined())
  it('it grows by some 4 m in 40 °C', () => {
    const growthM = about(sketch, 'growth-gap', 'NOTE')!.measured!.value!
    expect([growthM > 3.5, growthM < 5]).toEqual([true, true])
  })
})
