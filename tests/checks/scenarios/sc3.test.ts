/*
 * A slipline in a short street: 900 ft of host, 24 in IPS DR 17 in 50 ft sticks, a closure of 360 × 34 ft, a pit 8 ft deep.
 *
 * must be told                                          check                 level
 * three strings do not fit with rack and lead           string-split          FIX; four strings: none
 * parked strings cut the 20 ft emergency lane           parking-room          FIX from string B on
 * pit drawn 30 ft long                                  pit-length            FIX, 40.8 ft
 * restart after a mid joint over a 25,000 lb winch      string-split          FIX
 * string within 2 ft of the pit                         trench-edge           STOP
 * loader within the depth, 8 ft                         trench-edge           FIX
 * curfew against the last joint                         last-joint            CHECK
 * ladder within 25 ft: ladders are no kind (docs/limitations.md)
 */
import { describe, expect, it } from 'vitest'
import { footM, poundForceN } from '../../../src/units/factors.ts'
import { item, onRun } from '../../helpers/documents.ts'
import { after, calder, inStrings } from '../streetCase.ts'
import { boxM, withFigures } from '../yardCase.ts'
import { about, levels } from './raised.ts'

const ft = (feet: number): number => feet * footM
const pit = (lengthFt: number, offFt: number) => withFigures('trench', 'trench:1', [{ xM: ft(150), yM: -ft(offFt) }, { xM: ft(150 + lengthFt), yM: -ft(offFt) }], { widthM: ft(4), depthM: ft(8) }, { isPit: true, name: 'pit' })
const lane = withFigures('emergencyLane', 'emergencyLane:1', [{ xM: ft(-72), yM: ft(17) }, { xM: ft(288), yM: ft(17) }], { widthM: ft(20), clearHeightM: ft(13.5) }, { gapPlan: null })

describe('a slipline in a short street', () => {
  it('three strings do not fit once rack and lead are added, four do', () => {
    // 71 + 349.2 + 30 = 450 of 360 ft; 71 + 249.5 + 30 = 350.5.
    const short = about(inStrings([7, 6, 6]), 'string-split', 'FIX')!
    expect(short.margin!.value! / footM).toBeLessThan(-80)
    const four = inStrings([5, 5, 5, 4])
    expect([levels(four, 'string-split').includes('FIX'), levels(four, 'end-room')]).toEqual([false, ['NOTE']])
  })
  it('parked strings cut the emergency lane', () => expect(about(inStrings([5, 5, 5, 4], lane), 'parking-room', 'FIX', 'emergencyLane:1')).toBeDefined())
  it('a pit of 30 ft is too short, one of 41 ft does', () => {
    // √(8 (4 · 54 − 8)) = 40.8 ft.
    expect(about(calder(pit(30, 25)), 'pit-length', 'FIX')!.limit!.value! / footM).toBeCloseTo(40.8, 1)
    expect(levels(calder(pit(41, 25)), 'pit-length')).toEqual(['met'])
  })
  it('starting again after a joint is too much for a winch of 25,000 lb, not for one of 35,000', () => {
    // All 947 ft in: 43.8 lb/ft × 914 ft = 40,000 lb × 0.5 × 1.5 = 30,000 lb.
    const winch = (ratedLb: number) => levels(after(after(inStrings([5, 5, 5, 4]), 'setField', { ids: ['puller:1'], path: 'pullerKind', value: 'winch' }), 'setField', { ids: ['puller:1'], path: 'figures.towRatingN.value', value: ratedLb * poundForceN, basis: 'plate' }), 'string-split')
    expect([winch(25_000).includes('FIX'), winch(35_000).includes('FIX')]).toEqual([true, false])
  })
  it('nothing of the line stands within 2 ft of the pit, no loader within its depth', () => {
    // Edge of the pit 1 ft beside the middle of the line.
    expect(levels(calder(pit(41, 3)), 'trench-edge')).toContain('STOP')
    const loader = (offFt: number) => item('loader', 'loader:1', onRun(ft(170), { offsetM: ft(25 - 2 - offFt) - 0.95 }))
    expect(about(calder(pit(41, 25), loader(5)), 'trench-edge', 'FIX', 'loader:1')).toBeDefined()
    expect(about(calder(pit(41, 25), loader(9)), 'trench-edge', 'FIX', 'loader:1')).toBeUndefined()
  })
  it('a curfew at 22:00 and four joints from 20:00 on do not go together', () => {
    const from = (startMin: number) => levels(after(inStrings([5, 5, 5, 4]), 'setJob', { path: 'clock', value: { startMin, endMin: 22 * 60, breaks: [] } }), 'last-joint')
    expect([from(20 * 60), from(8 * 60)]).toEqual([['CHECK'], ['met']])
  })
  it('parked in the closure, rows clear of the lane raise no alarm about it', () => {
    expect(levels(calder(item('boundary', 'boundary:2', boxM(ft(-72), ft(288), -ft(7), ft(60)))), 'emergency-lane-clear')).toEqual([])
  })
})
