import { describe, expect, it } from 'vitest'
import { pullerPull } from '../../src/checks/list/pullerPull.ts'
import { stringPullOf } from '../../src/derive/stringPull.ts'
import { onRun } from '../helpers/documents.ts'
import { findingsOf, ftM, lbN, machineAt0, rollersAt, siteOf, withFigures } from './yardCase.ts'

const onRollers = [machineAt0(), ...rollersAt(11 * ftM, 320 * ftM, 11 * ftM)]
const site = (figures: Record<string, number | null>, over: Record<string, unknown> = {}, surface: 'gravel' | 'clay' | null = 'gravel', gear = onRollers) => siteOf({ run: { surfaces: [surface] } }, ...gear, withFigures('puller', 'puller:1', onRun(110), figures, over))
const levels = (...args: Parameters<typeof site>) => findingsOf(pullerPull, site(...args)).map(({ key, level, isUnknown }) => `${key.replace('puller-pull@', '')} ${level}${isUnknown ? '?' : ''}`)
/** 281 lb at the last joint, times 1.5. */
const needN = 1.5 * stringPullOf(siteOf({ run: { surfaces: ['gravel'] } }, ...onRollers)).joints.at(-1)!.pullN
const plenty = { towRatingN: 1e6, massKg: 1e5, ropeRatingN: 1e6 }

describe('puller, rope and pipe against the pull', () => {
  it('needs the highest pull times the breakaway of 1.5', () => {
    // House rule: breakaway 1.3 to 1.5. 281 lb · 1.5 = 421 lb.
    expect(needN / lbN).toBeCloseTo(421, -0.5)
    expect(levels(plenty)).toEqual(['puller:1 met', 'puller:1:rope met', 'pipe met'])
  })

  it('holds the vehicle to its tow rating', () => {
    expect(levels({ ...plenty, towRatingN: needN })).toEqual(['puller:1 met', 'puller:1:rope met', 'pipe met'])
    const [weak] = findingsOf(pullerPull, site({ ...plenty, towRatingN: needN - 1 }))
    expect([weak!.level, weak!.source.class]).toEqual(['FIX', 'plate'])
  })

  it('holds it to its grip: half its weight on firm ground, a fifth on soft or unknown', () => {
    // Common practice, no published source.
    const massKg = needN / 9.80665
    const grip = (share: number, surface: 'gravel' | 'clay' | null) => levels({ ...plenty, massKg: massKg / share }, {}, surface)[0]
    expect([grip(0.5, 'gravel'), grip(0.501, 'gravel')]).toEqual(['puller:1 met', 'puller:1 FIX'])
    expect([grip(0.2, 'clay'), grip(0.201, 'clay')]).toEqual(['puller:1 met', 'puller:1 FIX'])
    expect(grip(0.201, null)).toBe('puller:1 FIX')
  })

  it('does not ask a winch for grip', () => {
    expect(levels({ ...plenty, massKg: null }, { pullerKind: 'winch' })).toEqual(['puller:1 met', 'puller:1:rope met', 'pipe met'])
  })

  it('holds the rope to its tag', () => {
    expect(levels({ ...plenty, ropeRatingN: needN - 1 })[1]).toBe('puller:1:rope FIX')
  })

  it('holds the pull to half of what the pipe may take as a check, to all of it as FIX', () => {
    // ASTM F1804: 0.40 · 3,500 psi · π · 10.75² · (1/17 − 1/17²) = 28,140 lb within the hour (factors from memory).
    const [found] = findingsOf(pullerPull, site(plenty)).slice(-1)
    expect(found!.limit!.value! / lbN).toBeCloseTo(0.5 * 1400 * Math.PI * 10.75 ** 2 * (1 / 17 - 1 / 289), -1)
    // 10 in DR 17 of 8.78 lb/ft on gravel (0.6 · 1.5): half of 28,140 lb is reached at some 1,780 ft, all at some 3,560 ft.
    const long = (neededFt: number) => findingsOf(pullerPull, siteOf({ job: { neededLengthM: neededFt * ftM }, run: { surfaces: ['gravel'] } }, machineAt0())).find(({ key }) => key === 'puller-pull@pipe')!.level
    expect([long(1600), long(2100), long(3400), long(3900)]).toEqual(['met', 'CHECK', 'CHECK', 'FIX'])
  })

  it('takes the rule and the time of the job, says where nobody gave a time, and where the rule ends', () => {
    const of = (job: Parameters<typeof siteOf>[0]['job']) => findingsOf(pullerPull, siteOf({ run: { surfaces: ['gravel'] }, ...(job === undefined ? {} : { job }) }, ...onRollers)).find(({ key }) => key === 'puller-pull@pipe')!
    const hours = (value: number) => ({ value, basis: 'measured' as const })
    expect(of({}).what.text.en).toContain('nobody has said how long')
    expect(of({ pullDurationH: hours(3) }).what.text.en).toContain('may take in {time}')
    // F1804: 0.95 of the load of an hour up to 12 h, 0.91 up to 24 h (factors from memory).
    const allowed = (value: number) => of({ pullDurationH: hours(value) }).limit!.value! / of({}).limit!.value!
    expect(allowed(3)).toBeCloseTo(0.95, 6)
    expect(allowed(20)).toBeCloseTo(0.91, 6)
    expect(of({ pullDurationH: hours(30) }).level).toBe('CHECK')
    expect(of({ pullDurationH: hours(30) }).what.text.en).toContain('gives no allowable pull for {time}')
    // PPI handbook, chapter 12, 2nd edition: 1,150 psi at 12 h; F1804 0.40 · 3,500 · 0.95 = 1,330 psi.
    expect(of({ pullEdition: 'handbookCh12', pullDurationH: hours(12) }).limit!.value! / of({ pullDurationH: hours(12) }).limit!.value!).toBeCloseTo(1150 / 1330, 6)
    expect(of({ pullEdition: 'handbookCh12' }).source.cite).toMatch(/handbook/i)
  })

  it('never passes a figure nobody gave, and fails by the one that is known', () => {
    expect(levels({ ...plenty, towRatingN: null, ropeRatingN: null })).toEqual(['puller:unknown CHECK?', 'pipe met'])
    expect(levels({ ...plenty, towRatingN: null, massKg: 10 })).toEqual(['puller:1 FIX', 'puller:1:rope met', 'puller:unknown CHECK?', 'pipe met'])
    expect(findingsOf(pullerPull, siteOf({}, ...onRollers)).map(({ isUnknown }) => isUnknown)).toEqual([false, true])
    expect(findingsOf(pullerPull, siteOf({ job: { pipe: null } })).map(({ level, isUnknown }) => [level, isUnknown])).toEqual([['CHECK', true]])
  })
})
