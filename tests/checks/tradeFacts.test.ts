import { describe, expect, it } from 'vitest'
import type { Finding } from '../../src/checks/finding.ts'
import { runChecks } from '../../src/checks/runner.ts'
import { emptyDocument, newDocument } from '../../src/scene/newYard.ts'
import { commandOf } from '../../src/scene/commands/index.ts'
import { applyEdit } from '../../src/scene/edit.ts'
import { item, onRun, testEnv } from '../helpers/documents.ts'
import { fusionYard, ft, mechanicsOf } from '../helpers/fusionYard.ts'

/** Checks that speak of sag, of the jaws and of the nose. */
const mechanical = ['sag', 'jaw-effort', 'lifts-out', 'face-gap', 'offset-change', 'set-out-tolerance', 'nose-landing', 'nose-hold', 'exit-stands', 'balance', 'feed', 'pipe-lifts']
const worse = (findings: readonly Finding[]): string[] => findings.filter(({ checkId, level, isUnknown }) => mechanical.includes(checkId) && !isUnknown && level !== 'NOTE' && level !== 'met').map(({ level, key }) => `${level} ${key}`)

describe('trade facts (common practice, no source)', () => {
  it('with a rack, 40 ft of 12 in IPS DR 17 set by the loader on exit stands at 25 and 35 ft: nothing worse than NOTE from sag, jaws or nose with the nose slung', () => {
    for (const neededFt of [75, 280, 1000]) expect(worse(runChecks(fusionYard({ neededFt })).findings), `${neededFt} ft`).toEqual([])
  })
  it('the same with 14 to 24 in pipe; 36 in and up only asks for a finer set-out', () => {
    for (const size of ['14', '18', '24']) expect(worse(runChecks(fusionYard({ size, neededFt: 75 })).findings), size).toEqual([])
    expect(worse(runChecks(fusionYard({ size: '36', neededFt: 75 })).findings).every((one) => one.startsWith('CHECK set-out-tolerance'))).toBe(true)
  })
  it('at least two stands on the exit: one draws a word, two none', () => {
    const levelOf = (exits: [number, number][]): string => runChecks(fusionYard({ exits })).findings.find(({ checkId }) => checkId === 'exit-stands')!.level
    expect([levelOf([[20, 0]]), levelOf([[20, 0], [35, 0]])]).toEqual(['NOTE', 'met'])
  })
  it('some 20 ft each side of the machine is the usual place for a stand: C stays at or under 1 from 8 to 24 in', () => {
    for (const size of ['8', '10', '12', '18', '24']) {
      const { infeed, exit } = mechanicsOf(fusionYard({ size, exits: [[20, 0]], infeed: [-20] })).joint(1)!
      expect(infeed.effortRatio, size).toBeLessThanOrEqual(1)
      expect(exit.effortRatio, size).toBeLessThanOrEqual(1)
    }
  })
  it('a rack replaces the infeed stand: nobody asks for one beside it', () => {
    const findings = runChecks(fusionYard({ infeed: 'rack' })).findings
    expect(findings.filter(({ checkId, level }) => (checkId === 'feed' || checkId === 'balance') && level !== 'met')).toEqual([])
    expect(mechanicsOf(fusionYard({ infeed: 'rack' })).joint(1)!.infeed.effortRatio).toBeLessThan(0.5)
  })
  it('the usual set-up the app offers is good for the jaws in every size from 8 to 24 in', () => {
    for (const size of ['8', '10', '12', '16', '24']) {
      const env = testEnv()
      const blank = newDocument({ pipe: { system: 'IPS', size, dr: 17, material: 'PE4710' }, neededLengthM: ft(75), stickLengthM: ft(40), stripLengthM: ft(300), stripWidthM: ft(80), fallRatio: 0 }, env, 'feetInches')
      const setUp = Object.values(blank.records).find(({ kind }) => kind === 'setUp')!
      const usual = applyEdit(blank, commandOf('usualSetUp')!.run(blank, { setUpId: setUp.id }, env))
      expect(worse(runChecks(usual).findings.filter(({ checkId }) => checkId !== 'set-out-tolerance')), size).toEqual([])
    }
  })
  it('a free nose over stands spaced for sag alone is FIX: 94 times the mid-span sag', () => {
    // 10 in at 20 ft sags 1/317 of its span, which passes; the nose comes 28 in low.
    const exits = Array.from({ length: 8 }, (_, i) => [20 + 20 * i, 0] as const)
    const findings = runChecks(fusionYard({ size: '10', neededFt: 150, exits, job: { noseHold: 'free' } })).findings
    expect(findings.filter(({ checkId }) => checkId === 'sag').map(({ level }) => level)).toEqual(['met'])
    expect(findings.filter(({ checkId, level }) => checkId === 'nose-landing' && level === 'FIX')).not.toEqual([])
  })
})

describe('a blank layout', () => {
  it('has no STOP and no FIX, and says what is missing', () => {
    const { counts, findings } = runChecks(emptyDocument(testEnv(), 'feetInches'))
    expect([counts.STOP, counts.FIX]).toEqual([0, 0])
    expect(findings.some(({ isUnknown }) => isUnknown)).toBe(true)
  })
})

describe('many of a kind', () => {
  it('a row of rollers with one fault gives one finding', () => {
    const rollers = Array.from({ length: 25 }, (_, i) => item('roller', `roller:${i + 1}`, onRun(ft(50 + 9 * i), { offsetM: 0.2 })))
    const rated = rollers.map((record) => ({ ...record, figures: { ...(record as unknown as { figures: Record<string, unknown> }).figures, ratedLoadN: { value: 300, basis: 'plate' as const } } }) as (typeof rollers)[number])
    const { findings } = runChecks(fusionYard({ size: '10', neededFt: 280, more: rated }))
    const about = (checkId: string): Finding[] => findings.filter((one) => one.checkId === checkId && one.level !== 'met')
    expect(about('lined-up')).toHaveLength(1)
    expect(about('lined-up')[0]!.itemIds).toHaveLength(25)
    expect(about('stand-load').length).toBeLessThanOrEqual(3)
  })
  it('small pipe on many stands too far apart gives one finding of sag a stretch', () => {
    const exits = Array.from({ length: 7 }, (_, i) => [20 + 20 * i, 0] as const)
    const sags = runChecks(fusionYard({ size: '4', neededFt: 155, exits })).findings.filter(({ checkId }) => checkId === 'sag')
    expect(sags.length).toBeLessThanOrEqual(4)
  })
})
