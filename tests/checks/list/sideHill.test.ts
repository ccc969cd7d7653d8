import { describe, expect, it } from 'vitest'
import { sideHill } from '../../../src/checks/list/sideHill.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import { onRun } from '../../helpers/documents.ts'
import { findingsOf, levelsOf, siteOf, withFigures } from '../yardCase.ts'

const pipe = { system: 'IPS', size: '18', dr: 17, material: 'PE4710' } as const
type Surface = NonNullable<Parameters<typeof siteOf>[0]['run']>['surfaces']
const hill = (crossFallRatio: number | null, surfaces: Surface = ['grass'], ...more: Parameters<typeof siteOf>[1][]) => siteOf({ job: { pipe }, setUp: { crossFallRatio }, run: { surfaces } }, ...more)

describe('a string on a side slope', () => {
  it('on soil at 3 to 1 it is held 1.2 times: FIX; on a liner less than once: STOP', () => {
    // Friction 0.4 on grass, 0.3 on a liner (common practice, no published source) over 1/3: 1.2 and 0.9.
    const [soil] = findingsOf(sideHill, hill(1 / 3))
    expect([soil!.level, soil!.measured!.value, soil!.limit!.value]).toEqual(['FIX', expect.closeTo(1.2, 6), 1.5])
    const [liner] = findingsOf(sideHill, hill(1 / 3, ['liner']))
    expect([liner!.level, liner!.measured!.value]).toEqual(['STOP', expect.closeTo(0.9, 6)])
  })
  it('is met where friction holds it half as much again', () => {
    // 0.4 ÷ 1.5 = 0.2667.
    expect(levelsOf(sideHill, hill(0.266))).toEqual(['met'])
    expect(levelsOf(sideHill, hill(0.268))).toEqual(['FIX'])
    expect(levelsOf(sideHill, hill(-0.268))).toEqual(['FIX'])
  })
  it('wind is added: 35 mph on 18 in takes a gentle slope past its limit', () => {
    // 4.70 lb/ft of wind on 24.6: 0.4 × 0.9806 ÷ (0.1961 + 0.191) = 1.01 on 1 to 5, 2.0 without it.
    const calm = hill(0.2)
    expect(levelsOf(sideHill, calm)).toEqual(['met'])
    const [windy] = findingsOf(sideHill, deriveSite(calm.document, { variant: 'planned', whatIf: { windMPerS: 35 * 0.44704 } }))
    expect([windy!.level, windy!.measured!.value]).toEqual(['FIX', expect.closeTo(1.01, 1)])
  })
  it('tethers up the slope count with what they hold, and one nobody has rated is asked for', () => {
    const weightN = hill(1 / 3).pipe.properties!.lineLoadNPerM
    // Falls to the right, so uphill is left, offset −3 m. Missing: 0.3 × w·sin φ × L of some 85 m.
    const tether = (holdN: number | null, offsetM = -3) => hill(1 / 3, ['grass'], withFigures('anchor', 'anchor:1', onRun(50, { offsetM }), { ratedHoldN: holdN }))
    expect(levelsOf(sideHill, tether(weightN * 100 * 0.3))).toEqual(['met'])
    expect(levelsOf(sideHill, tether(weightN * 100 * 0.3, 3))).toEqual(['FIX'])
    expect(levelsOf(sideHill, tether(null))).toEqual(['CHECK?'])
  })
  it('asks for the cross-fall where nobody has given it', () => expect(levelsOf(sideHill, hill(null))).toEqual(['CHECK?']))
})
