/*
 * One length of a 36 in DR 17 water main beside a trench 9 ft deep, under 138 kV whose lowest wire hangs 31 ft up.
 *
 * must be told                                          check          level
 * lift under the wires (24 ft > 31 − 15 = 16)           overhead-line  STOP
 * loader lane within the depth of the trench            trench-edge    FIX
 * a stick is 62 % of the plate                          loader-plate   met
 * nose 20 ft out comes 2.5 in low: rollers at 20 ft do  nose-landing   met along the row
 * roller load 1.1 · 98.55 · 20 = 2,170 lb               stand-load     met; judged by the nose, 2 w S = 3,942 lb
 * haul road across the string                           public-way     STOP while open
 * jaw drag of a tail of 500 ft on the ground            gauge-drag     FIX where the carriage is too weak
 * truckloads are in the mobilising list, no finding (tests/derive); plate on a 5 % grade is left to its own what-if
 */
import { describe, expect, it } from 'vitest'
import { footM, inchM, poundForceN } from '../../../src/units/factors.ts'
import { createMechanics } from '../../../src/derive/mechanics.ts'
import { limitsOf } from '../../../src/checks/limits.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import { about, alarms, allOf, edited, firstId, levels, raised, yardNamed } from './raised.ts'

const sketch = yardNamed('redstem-flat-first-sketch')
const good = yardNamed('redstem-flat-good')

describe('a large main beside a trench and under a line', () => {
  it('the good plan hears no STOP, no FIX and no question', () => expect(alarms(good)).toEqual([]))
  it('lifting under 138 kV is stopped: 24 ft where 16 ft are left', () => {
    const stop = about(sketch, 'overhead-line', 'STOP')!
    // 31 ft − 15 ft (29 CFR 1926.1408 table A, over 50 to 200 kV).
    expect([stop.measured!.value! / footM, stop.limit!.value! / footM]).toEqual([expect.closeTo(24, 3), expect.closeTo(16, 3)])
  })
  it('carried low, 13 ft at the top, it passes', () => expect(levels(good, 'overhead-line')).toEqual(['met']))
  it('the loader lane keeps the depth of the trench', () => expect(about(sketch, 'trench-edge', 'FIX')!.limit!.value! / footM).toBeCloseTo(9, 3))
  it('a stick is 62 % of the plate', () => {
    const [plate] = raised(good, 'loader-plate')
    // 98.55 lb/ft × 50 ft = 4,927 lb of 8,000.
    expect([plate!.level, plate!.measured!.value! / (8000 * poundForceN)]).toEqual(['met', expect.closeTo(0.616, 2)])
    expect(plate!.measured!.value! / poundForceN).toBeCloseTo(4927, -1)
  })
  it('rollers 20 ft apart take the free nose in: 2.5 in low, of a lead-in of 3 in', () => {
    const free = edited(good, ['setJob', { path: 'noseHold', value: 'free' }])
    const mechanics = createMechanics(deriveSite(free), limitsOf(free))
    // 0.245 w S⁴/EI with the stiffness of an hour; that of a short load and the minimum wall make it 2 to 3 in.
    const droopIn = mechanics.evenDroop(20 * footM)! / inchM
    expect([droopIn > 1.5, droopIn < 3]).toEqual([true, true])
    const row = Object.values(free.records).filter(({ kind }) => kind === 'roller').slice(3).map(({ id }) => id)
    expect(raised(free, 'nose-landing').filter(({ level, itemIds }) => level === 'FIX' && itemIds.some((id) => row.includes(id)))).toEqual([])
  })
  it('a roller of the row is judged by the nose one spacing out, twice what it carries after, and its plate takes it', () => {
    const mechanics = createMechanics(deriveSite(good), limitsOf(good))
    const row = [...mechanics.loads()].filter(([key]) => key.startsWith('roller:')).map(([, { loadN }]) => loadN / poundForceN)
    const middle = row.toSorted((a, b) => a - b)[Math.floor(row.length / 2)]!
    // 98.55 lb/ft × 20 ft = 1,971 lb evenly (2,170 with 1.1 for uneven ground). The nose one spacing out: half a span, the overhang, and its moment w S²/2 over S: 2 w S = 3,942 lb.
    expect([middle > 1971 * 1.9, middle < 1971 * 2.2]).toEqual([true, true])
    expect(levels(good, 'stand-load')).toEqual(['met'])
  })
  it('a haul road left open across the string is stopped', () => {
    const road = edited(good, ['place', { kind: 'road', points: [{ xM: 100, yM: -20 }, { xM: 100, yM: 20 }], patch: { traffic: 'open', figures: { widthM: { value: 6, basis: 'measured' } } } }])
    expect(about(road, 'public-way', 'STOP', firstId(road, 'road'))).toBeDefined()
  })
  it('a machine too weak for the drag in its jaws is told', () => {
    const weak = edited(good, ['setField', { ids: [firstId(good, 'machine')], path: 'figures.fusionForceLimitN.value', value: 10_000, basis: 'plate' }])
    expect(levels(weak, 'gauge-drag')).toContain('FIX')
    expect(allOf(good).some(({ checkId, level }) => checkId === 'gauge-drag' && level === 'FIX')).toBe(false)
  })
})
