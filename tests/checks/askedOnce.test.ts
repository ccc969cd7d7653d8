import { describe, expect, it } from 'vitest'
import { askedOnce } from '../../src/checks/askedOnce.ts'
import { finding, houseRule, say, type Draft } from '../../src/checks/make.ts'
import { runChecks } from '../../src/checks/runner.ts'
import { item, onRun } from '../helpers/documents.ts'
import { machineAt0, rackAtInfeed, siteOf } from './yardCase.ts'

const lacks = (recordId: string, path: string) => ({ recordId, path, label: { en: path, es: path } })
const asking = (checkId: string, missing: NonNullable<Draft['missing']>, over: Partial<Draft> = {}) => finding(checkId, { level: 'CHECK', what: say('a', 'b'), source: houseRule, missing, ...over })
const plate = lacks('rack:1', 'plate')
const stop = lacks('rack:1', 'stop')
const remedy = { command: 'setField', args: {}, label: say('a', 'b') }

describe('missing inputs', () => {
  it('are asked for by kind, and not again by each check that needs them', () => {
    const [byKind, again] = [asking('missing-inputs', [plate, stop]), asking('rack-load', [plate])]
    expect(askedOnce([again, byKind])).toEqual([byKind])
  })

  it('keep a question nobody else asks, one with a remedy, and everything that is no question', () => {
    const byKind = asking('missing-inputs', [plate])
    const kept = [asking('rack-stops', [plate, stop]), asking('rack-stops', [plate], { remedy }), { ...asking('overhead-line', [plate]), level: 'STOP' as const, isUnknown: false }, finding('sag', { level: 'FIX', what: say('a', 'b'), source: houseRule })]
    expect(askedOnce([byKind, ...kept])).toEqual([byKind, ...kept])
    expect(askedOnce(kept)).toEqual(kept)
  })

  it('make one question for a rack without plate in a real layout', () => {
    const { findings } = runChecks(siteOf({}, machineAt0(), rackAtInfeed({ stopsLeft: true, stopsRight: true }), item('stand', 'stand:1', onRun(6))))
    const asks = findings.filter(({ missing }) => missing.some(({ recordId, path }) => recordId === 'rack:1' && path === 'figures.ratedLoadN.value'))
    expect(asks.map(({ checkId }) => checkId)).toEqual(['missing-inputs'])
  })
})
