import { describe, expect, it } from 'vitest'
import { levelOrder, type CheckDefinition } from '../../src/checks/finding.ts'
import { finding, houseRule, say } from '../../src/checks/make.ts'
import { checks } from '../../src/checks/registry.ts'
import { runChecks } from '../../src/checks/runner.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { fusionYard } from '../helpers/fusionYard.ts'

const made = (id: string, level: 'STOP' | 'FIX' | 'CHECK' | 'NOTE' | 'met', runningM: number | null, cost: 'quick' | 'slow' = 'quick'): CheckDefinition => ({
  id, title: { en: id, es: id }, cost,
  run: () => [finding(id, { level, what: say(id, id), source: houseRule, where: runningM === null ? null : { at: 'run', runningM, levelM: null, offsetM: 0 } })],
})

describe('the runner', () => {
  it('sorts by level, then along the tape, what has no place last', () => {
    const run = runChecks(fusionYard(), { checks: [made('a', 'NOTE', 1), made('b', 'FIX', 9), made('c', 'STOP', null), made('d', 'FIX', -3), made('e', 'met', 0), made('f', 'CHECK', null), made('g', 'CHECK', 40)] })
    expect(run.findings.map(({ checkId }) => checkId)).toEqual(['c', 'd', 'b', 'g', 'f', 'a', 'e'])
    expect(run.counts).toEqual({ STOP: 1, FIX: 2, CHECK: 2, NOTE: 1, met: 1, toConfirm: 0 })
  })
  it('counts missing input apart', () => {
    const unknown: CheckDefinition = { ...made('u', 'CHECK', null), run: () => [finding('u', { level: 'CHECK', what: say('u', 'u'), source: houseRule, missing: [{ recordId: 'job:this', path: 'pipe', label: { en: 'pipe', es: 'tubo' } }] })] }
    expect(runChecks(fusionYard(), { checks: [unknown] }).counts).toMatchObject({ CHECK: 1, toConfirm: 1 })
  })
  it('a check that throws becomes a CHECK that says so, and the others still run', () => {
    const broken: CheckDefinition = { ...made('x', 'NOTE', null), run: () => { throw new RangeError('no good') } }
    const run = runChecks(fusionYard(), { checks: [broken, made('y', 'NOTE', null)] })
    expect(run.findings.map(({ level, checkId }) => `${level} ${checkId}`)).toEqual(['CHECK x', 'NOTE y'])
    expect(run.findings[0]!.what.values).toMatchObject({ reason: 'no good' })
  })
  it('quick leaves the slow ones out', () => {
    expect(runChecks(fusionYard(), { only: 'quick', checks: [made('q', 'NOTE', null), made('s', 'NOTE', null, 'slow')] }).findings.map(({ checkId }) => checkId)).toEqual(['q'])
    const quick = new Set(checks.filter(({ cost }) => cost === 'quick').map(({ id }) => id))
    expect(runChecks(fusionYard(), { only: 'quick' }).findings.every(({ checkId }) => quick.has(checkId))).toBe(true)
  })
  it('takes a document or a site, with one answer', () => {
    const document = fusionYard()
    expect(runChecks(deriveSite(document))).toEqual(runChecks(document))
  })
  it('keeps what is met', () => {
    const { findings, counts } = runChecks(fusionYard())
    expect(counts.met).toBeGreaterThan(8)
    const ranks = findings.map(({ level }) => levelOrder.indexOf(level))
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b))
  })
})
