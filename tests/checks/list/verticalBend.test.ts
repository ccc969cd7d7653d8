import { describe, expect, it } from 'vitest'
import { verticalBend } from '../../../src/checks/list/verticalBend.ts'
import { bodies, bodySolverOf } from '../../../src/derive/bodies.ts'
import type { YardRecord } from '../../../src/scene/document.ts'
import { item, onRun } from '../../helpers/documents.ts'
import { ft, fusionYard, runOne, siteOf } from '../../helpers/fusionYard.ts'

/** Rollers on a hump: one stands high among low ones. */
const hump = (highM: number): YardRecord[] => [[60, 0.15], [80, 0.15], [100, highM], [120, 0.15], [140, 0.15]].map(([atFt, saddleM], i) => item('roller', `roller:h${i}`, onRun(ft(atFt!)), { height: { rule: 'aboveGround', saddleM } }))
const yard = (highM: number, more: YardRecord[] = [], wallC = 23) => fusionYard({ neededFt: 150, job: { wallTemperatureC: { value: wallC, basis: 'measured' } }, more: [...hump(highM), ...more] })

describe('crests and dips', () => {
  it('finds the tightest place by EI/M of the beam and passes it under the handbook radius', () => {
    const document = yard(0.4)
    const [one] = runOne(verticalBend, document)
    // 12 in IPS DR 17: 27 × 12.75 in = 8.744 m. PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 7.
    expect([one!.level, one!.limit!.value]).toEqual(['met', expect.closeTo(27 * 12.75 * 0.0254, 9)])
    const site = siteOf(document)
    const rest = bodySolverOf(site).solve(bodies.atRest(site))!
    expect(one!.measured!.value!).toBeLessThanOrEqual(site.pipe.stiffnessNm2('rest')! / Math.abs(rest.result.maxMoment.momentNm) + 1e-9)
  })
  it('a hot pipe over a roller far too high is bent tighter than it may lie: FIX at the roller, with its load', () => {
    const [one] = runOne(verticalBend, yard(2.2, [], 60))
    expect(one!.level).toBe('FIX')
    expect(one!.itemIds).toEqual(['roller:h2'])
    expect(one!.what.values!['where']).toMatchObject({ en: 'hump' })
    expect(one!.what.values!['load']).toMatchObject({ kind: 'force' })
    // Circle through 0.15, 2.2 and 0.15 m at 20 ft: (6.096² + 2.05²)/(2 × 2.05) = 10.09 m.
    expect((one!.what.values!['circle'] as { value: number }).value).toBeCloseTo(10.09, 2)
  })
  it('a hot pipe within a quarter of the table is CHECK, a house rule', () => {
    const [one] = runOne(verticalBend, yard(1, [], 60))
    expect([one!.level, one!.source.class, one!.limit!.value]).toEqual(['CHECK', 'houseRule', expect.closeTo(1.25 * 27 * 12.75 * 0.0254, 9)])
  })
  it('a fitting over a hump wants 100 OD', () => {
    const found = runOne(verticalBend, yard(0.9, [item('fitting', 'fitting:1', onRun(ft(100)))]))
    const one = found.find(({ key }) => key === 'vertical-bend@fitting:1')!
    // 100 × 12.75 in = 32.385 m.
    expect([one.level, one.limit!.value]).toEqual(['FIX', expect.closeTo(32.385, 9)])
  })
  it('says nothing while nothing can be solved', () => expect(runOne(verticalBend, fusionYard({ job: { pipe: null } }))).toEqual([]))
})
