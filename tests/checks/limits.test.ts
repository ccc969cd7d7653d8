import { describe, expect, it } from 'vitest'
import { allLimits, limitsOf, sourceOf } from '../../src/checks/limits.ts'
import { startingLimits } from '../../src/engine/limits.ts'
import { yard } from '../helpers/documents.ts'
import type { YardRecord } from '../../src/scene/document.ts'

const change = (limitId: string, bound: 'check' | 'fix', value: number, id = 'limitChange:1'): YardRecord => ({ id, kind: 'limitChange', limitId, bound, value, reason: 'own rule', who: 'lead', when: '2025-06-03T14:00:00Z' })

describe('limits of a layout', () => {
  it('are the table where nothing was changed', () => expect(allLimits(limitsOf(yard()))).toEqual(startingLimits))
  it('take a change and say that they are edited', () => {
    const limit = limitsOf(yard(change('jaw-effort', 'check', 0.7))).limit('jaw-effort')
    expect([limit.check, limit.fix, sourceOf(limit).edited]).toEqual([0.7, 2, true])
  })
  it('the later of two changes wins; a change of a limit that is gone is passed over', () => {
    const limits = limitsOf(yard(change('sag-span', 'fix', 0.02), change('sag-span', 'fix', 0.03, 'limitChange:2'), change('once-was', 'fix', 1, 'limitChange:3')))
    expect(limits.limit('sag-span').fix).toBe(0.03)
  })
  it('an id that is not in the table is a RangeError naming it', () => expect(() => limitsOf(yard()).limit('once-was')).toThrow(/once-was/))
  it('say so where a source is only recalled', () => expect(sourceOf(limitsOf(yard()).limit('offset-change')).fromMemory).toBe(true))
})
