import { describe, expect, it } from 'vitest'
import { downToTapeM, finding, houseRule, levelFor, listOf, q, say, stretchOf } from '../../src/checks/make.ts'
import { limitOf } from '../../src/engine/limits.ts'
import { fusionYard, siteOf } from '../helpers/fusionYard.ts'

describe('findings', () => {
  it('the margin is negative where the limit is passed, most or least', () => {
    const margin = (bound: 'most' | 'least'): number => finding('x', { level: 'FIX', what: say('a', 'b'), source: houseRule, measured: q('length', 3), limit: q('length', 2), bound }).margin!.value!
    expect([margin('most'), margin('least')]).toEqual([-1, 1])
  })
  it('missing input makes it unknown and never worse than CHECK', () => {
    const one = finding('x', { level: 'FIX', what: say('a', 'b'), source: houseRule, missing: [{ recordId: 'job:this', path: 'pipe', label: { en: 'p', es: 't' } }] })
    expect([one.level, one.isUnknown]).toEqual(['CHECK', true])
  })
  it('levels follow the limit: at the bound nothing is broken', () => {
    const limit = limitOf('jaw-effort')
    expect([1, 1.01, 2, 2.01].map((value) => levelFor(limit, value))).toEqual(['met', 'CHECK', 'CHECK', 'FIX'])
  })
})

describe('lists of names', () => {
  it('read as people say them, and are cut short by their count', () => {
    expect(listOf(['E1']).en).toBe('E1')
    expect(listOf(['E1', 'E2', 'E3']).en).toBe('E1, E2 and E3')
    expect(listOf(['E1', 'E2', 'E3']).es).toBe('E1, E2 y E3')
    expect(listOf(['G1', 'G2', 'G3', 'G4', 'G5', 'G6']).en).toBe('G1, G2, G3 and 3 more')
  })
  it('a stretch names its ends', () => expect(stretchOf(siteOf(fusionYard({ exits: [[10, 0], [20, 0], [30, 0]] })).supports.slice(2)).en).toBe('E1 to E3'))
})

describe('what a crew sets by tape', () => {
  it('is rounded down to 6 in or 0.1 m', () => {
    const feet = siteOf(fusionYard())
    expect(downToTapeM(feet, 11.4 * 0.3048) / 0.3048).toBeCloseTo(11, 9)
    expect(downToTapeM({ ...feet, layout: { ...feet.layout, displayUnits: 'metric' } }, 3.4)).toBeCloseTo(3.4, 9)
  })
})
