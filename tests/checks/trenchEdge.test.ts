import { describe, expect, it } from 'vitest'
import { trenchEdge } from '../../src/checks/list/trenchEdge.ts'
import { free, item } from '../helpers/documents.ts'
import { findingsOf, ftM, levelsOf, siteOf, withFigures } from './yardCase.ts'

/** Half of 10.750 in. */
const HALF_OD_M = 0.136525
const LEGAL_M = 2 * ftM
/** A trench along the axis, 1.2 m wide, its near edge at `edgeYM`. */
const trench = (edgeYM: number, depthM: number | null = 1) => withFigures('trench', 'trench:1', [{ xM: -50, yM: edgeYM + 0.6 }, { xM: 200, yM: edgeYM + 0.6 }], { widthM: 1.2, depthM })

describe('trench edge', () => {
  it('keeps the string 2 ft from it by law', () => {
    // 29 CFR 1926.651(j)(2): 2 ft = 0.6096 m from the edge, here from the pipe's side at 0.1365 m.
    expect(levelsOf(trenchEdge, siteOf({}, trench(HALF_OD_M + LEGAL_M)))).toEqual(['met'])
    const [near] = findingsOf(trenchEdge, siteOf({}, trench(HALF_OD_M + LEGAL_M - 0.001)))
    expect([near!.level, near!.source.class, near!.source.cite]).toEqual(['STOP', 'published', '29 CFR 1926.651(j)(2)'])
    expect(near!.margin!.value).toBeCloseTo(-0.001, 9)
  })

  it('keeps machines back by its depth as a house rule, never a STOP', () => {
    // 9 ft deep, loader 3.6 × 1.9 m: its side lies 0.95 m from its middle, so its middle 0.95 + 2.7432 m from the edge.
    const deep = trench(10, 9 * ftM)
    const at = (clearM: number) => levelsOf(trenchEdge, siteOf({}, deep, item('loader', 'loader:1', free(60, 10 - 0.95 - clearM))))
    expect(at(9 * ftM)).toEqual(['met'])
    expect(at(9 * ftM - 0.001)).toEqual(['FIX'])
    expect(at(2 * ftM)).toEqual(['FIX'])
    expect(at(2 * ftM - 0.001)).toEqual(['STOP'])
  })

  it('does not ask the string for more than the law, however deep', () => {
    expect(levelsOf(trenchEdge, siteOf({}, trench(HALF_OD_M + LEGAL_M, 6)))).toEqual(['met'])
  })

  it('judges rack, machine, lane and where the puller drives', () => {
    // Edge at 2.5 m, 2.7432 m deep: rack (0.6 m at its closed side), machine (0.95 m), a lane 2 m off with 1.8 m half width, the puller's way (1 m).
    const site = siteOf({}, trench(2.5, 9 * ftM), item('machine', 'machine:1', free(0, 0)), item('rack', 'rack:1', free(-6, 0)), withFigures('lane', 'lane:1', [{ xM: 0, yM: -2 }, { xM: 50, yM: -2 }], { widthM: 3.6 }), item('puller', 'puller:1', free(40, -30)))
    expect(findingsOf(trenchEdge, site).map(({ level, itemIds }) => `${level} ${itemIds[0]}`).sort()).toEqual(['FIX lane:1', 'FIX machine:1', 'FIX puller:1', 'FIX rack:1'])
  })

  it('moves a loader back until the distance holds', () => {
    const [near] = findingsOf(trenchEdge, siteOf({}, trench(10, 9 * ftM), item('loader', 'loader:1', free(60, 8.5))))
    // 0.55 m clear where 2.7432 are wanted: 2.1932 m, in decimetres 2.2, straight away from it.
    expect(near!.level).toBe('STOP')
    expect(near!.remedy).toMatchObject({ command: 'moveBy', args: { ids: ['loader:1'], dyM: expect.closeTo(-0.1, 3) } })
  })

  it('does not let an unknown depth pass, and still keeps the law', () => {
    const [unknown] = findingsOf(trenchEdge, siteOf({}, trench(10, null)))
    expect([unknown!.isUnknown, unknown!.missing[0]!.path]).toEqual([true, 'figures.depthM.value'])
    expect(levelsOf(trenchEdge, siteOf({}, trench(0.5, null)))).toEqual(['CHECK?', 'STOP'])
  })

  it('says nothing without a trench', () => {
    expect(findingsOf(trenchEdge, siteOf({}))).toEqual([])
  })
})
