import { describe, expect, it } from 'vitest'
import { breakOver } from '../../../src/checks/list/breakOver.ts'
import type { JobRecord } from '../../../src/scene/records/frame.ts'
import { findingsOf, ftM, lbN, levelsOf, siteOf } from '../yardCase.ts'

const degrees = (value: number): number => (value * Math.PI) / 180
const pipe = { system: 'IPS', size: '16', dr: 11, material: 'PE4710' } as const
const arch = (over: Partial<NonNullable<JobRecord['arch']>> = {}) => siteOf({ job: { pipe, arch: { entryAngleRad: degrees(12), radiusM: 100 * ftM, ownerTimesOd: null, rollerHeightM: 0, supportSpacingM: null, ...over } } })

describe('the arch into the bore', () => {
  it('12° at 100 ft rises 2.2 ft, on slings whose loads add up to the pipe between its ends', () => {
    const [note] = findingsOf(breakOver, arch())
    expect(note!.level).toBe('NOTE')
    // 100 × (1 − cos 12°) = 2.185 ft.
    expect(note!.measured!.value! / ftM).toBeCloseTo(2.185, 3)
    // 20.79 ft over and 29.48 ft of ramp.
    expect((note!.what.values!['ground'] as { value: number }).value / ftM).toBeCloseTo(50.27, 1)
    expect((note!.what.values!['load'] as { value: number }).value / lbN).toBeGreaterThan(300)
  })
  it('16 in DR 11 may not be lifted tighter than 33.3 ft, and an owner who asks 40 OD gets 53.3 ft', () => {
    // 25 × 16 in = 33.33 ft (PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 7); 40 × 16 in = 53.33 ft.
    const [tight] = findingsOf(breakOver, arch({ radiusM: 33 * ftM }))
    expect([tight!.level, tight!.limit!.value! / ftM, tight!.source.class]).toEqual(['FIX', expect.closeTo(33.333, 3), 'published'])
    const [owner] = findingsOf(breakOver, arch({ radiusM: 50 * ftM, ownerTimesOd: 40 }))
    expect([owner!.level, owner!.limit!.value! / ftM, owner!.source.class]).toEqual(['FIX', expect.closeTo(53.333, 3), 'jobRule'])
    expect(owner!.remedy).toMatchObject({ command: 'setJob', args: { path: 'arch.radiusM' } })
    expect(levelsOf(breakOver, arch({ radiusM: 53.34 * ftM, ownerTimesOd: 40 }))).toEqual(['NOTE'])
  })
  it('takes the least allowed where no radius is typed', () => {
    const [note] = findingsOf(breakOver, arch({ radiusM: null, ownerTimesOd: 40 }))
    expect((note!.what.values!['radius'] as { value: number }).value / ftM).toBeCloseTo(53.333, 3)
  })
  it('asks for the angle, and says nothing where no arch is planned', () => {
    const [unknown] = findingsOf(breakOver, arch({ entryAngleRad: null }))
    expect([unknown!.isUnknown, unknown!.missing[0]!.path]).toEqual([true, 'arch.entryAngleRad'])
    expect(findingsOf(breakOver, siteOf({ job: { pipe } }))).toEqual([])
  })
})
