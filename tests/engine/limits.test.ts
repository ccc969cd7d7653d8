import { describe, expect, it } from 'vitest'
import { brokenBound, limitOf, limitParam, limitWith, startingLimits } from '../../src/engine/limits.ts'
import { footM, inchM, poundForceN } from '../../src/units/factors.ts'
import { quantityKinds } from '../../src/units/quantity.ts'

describe('the starting limits', () => {
  it('are complete: unique ids, both languages, a known quantity, class and source', () => {
    expect(new Set(startingLimits.map(({ id }) => id)).size).toBe(startingLimits.length)
    for (const limit of startingLimits) {
      expect(limit.title.en && limit.title.es, limit.id).toBeTruthy()
      expect(limit.note === undefined || (limit.note.en && limit.note.es), limit.id).toBeTruthy()
      expect(quantityKinds, limit.id).toContain(limit.quantity)
      expect(['published', 'mechanics', 'plate', 'jobRule', 'houseRule'], limit.id).toContain(limit.sourceClass)
      expect(['above', 'atLeast', 'below'], limit.id).toContain(limit.when)
      expect(limit.cite.length, limit.id).toBeGreaterThan(5)
      if (limit.sourceClass === 'houseRule') expect(limit.cite, limit.id).toContain('common practice')
    }
  })

  it('have CHECK before FIX', () => {
    for (const { id, when, check, fix } of startingLimits) {
      if (check === null || fix === null) continue
      if (when === 'below') expect(fix, id).toBeLessThanOrEqual(check)
      else expect(fix, id).toBeGreaterThanOrEqual(check)
    }
  })

  // The table of starting limits; common practice, no source.
  it.each([
    ['jaw-effort', 1, 2],
    ['face-gap', 0.25, 0.5],
    ['offset-change', 0.25, 0.5],
    ['sag-span', 1 / 200, 1 / 100],
    ['hand-lift', null, 50 * poundForceN],
    ['set-out-tolerance', inchM / 8, null],
    ['stand-load', 0.5, 1],
    ['machine-pitch', Math.PI / 180, null],
    ['roller-grade', 0.01, null],
    ['trench-edge', null, 2 * footM],
    ['wind-share', 0.05, null],
    ['grip-firm', null, 0.5],
    ['grip-soft', null, 0.2],
  ])('%s starts at %d and %d', (id, check, fix) => {
    const near = (bound: number | null) => (bound === null ? null : expect.closeTo(bound, 9))
    expect(limitOf(id)).toMatchObject({ check: near(check), fix: near(fix) })
  })

  it('hold the further figures of the room end to end: 25 ft, a tenth of the strip, 10 ft of over-run', () => {
    expect(['noteM', 'noteRatio', 'overRunM'].map((name) => limitParam(limitOf('end-room'), name))).toEqual([expect.closeTo(25 * footM, 9), 0.1, expect.closeTo(10 * footM, 9)])
  })

  it('are broken on the stated side of the bound', () => {
    expect(brokenBound(limitOf('jaw-effort'), 1)).toBeNull()
    expect(brokenBound(limitOf('jaw-effort'), 1.01)).toBe('check')
    expect(brokenBound(limitOf('jaw-effort'), 2.01)).toBe('fix')
    expect(brokenBound(limitOf('roller-grade'), 0.01)).toBe('check')
    expect(brokenBound(limitOf('set-out-tolerance'), inchM / 8)).toBeNull()
    expect(brokenBound(limitOf('set-out-tolerance'), inchM / 16)).toBe('check')
  })

  it('take the change of a layout and mark it', () => {
    const edited = limitWith('jaw-effort', [{ limitId: 'jaw-effort', bound: 'fix', value: 1.5 }, { limitId: 'face-gap', bound: 'fix', value: 9 }])
    expect(edited).toMatchObject({ check: 1, fix: 1.5, isEdited: true })
    expect(limitWith('jaw-effort', []).isEdited).toBeUndefined()
    expect(limitOf('jaw-effort').fix).toBe(2)
  })

  it('refuse an unknown id or figure by name', () => {
    expect(() => limitOf('nothing')).toThrow('nothing')
    expect(limitParam(limitOf('nose-lead-in'), 'largestM')).toBeCloseTo(3 * inchM, 9)
    expect(() => limitParam(limitOf('jaw-effort'), 'nothing')).toThrow('jaw-effort')
  })
})
