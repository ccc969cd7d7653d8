import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { runChecks } from '../../src/checks/runner.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { stringPullOf } from '../../src/derive/stringPull.ts'
import { caseMark, isPlan, thePlan, tidyWhatIf, type WhatIf } from '../../src/derive/whatIf.ts'
import { jobOf, recordsOf, type YardDocument } from '../../src/scene/document.ts'
import { readFile } from '../../src/scene/readFile.ts'

const exampleNamed = (name: string): YardDocument => {
  const read = readFile(readFileSync(`shared/examples/${name}.yard.json`, 'utf8'))
  if (!read.ok) throw new Error(name)
  return read.document
}
const yard = exampleNamed('maple-fork-good')
const siteWith = (whatIf: WhatIf, document = yard) => deriveSite(document, { whatIf })
const withRecord = (id: string, change: object): YardDocument => ({ records: { ...yard.records, [id]: { ...yard.records[id]!, ...change } as never } })

describe('what-if', () => {
  it('of nothing is the plan, whatever empty entries it carries', () => {
    expect(isPlan(thePlan)).toBe(true)
    expect(isPlan({ variant: 'planned', whatIf: { warmerC: 0, missing: [], wetGrass: false, windMPerS: 0 } })).toBe(true)
    expect(caseMark(thePlan)).toBe('')
    expect(isPlan({ variant: 'asSet', whatIf: {} })).toBe(false)
  })

  it('marks equal cases alike, in whatever order they were tapped, and other cases otherwise', () => {
    const mark = (whatIf: WhatIf): string => caseMark({ variant: 'planned', whatIf })
    expect(mark({ missing: ['b', 'a', 'b'], warmerC: 5 })).toBe(mark({ warmerC: 5, missing: ['a', 'b'] }))
    expect(mark({ warmerC: 5 })).not.toBe(mark({ warmerC: 6 }))
    expect(tidyWhatIf({ wetGrass: true, warmerC: 0 })).toEqual({ wetGrass: true })
  })

  it('takes the wall warmer by what it says and the modulus with it, by the table', () => {
    const cold = withRecord(jobOf(yard).id, { wallTemperatureC: { value: 23, basis: 'measured' } })
    // 73.4 °F → 93.4 °F: multiplier between 0.82 at 90 °F and 0.73 at 100 °F, 0.82 − 0.34 × 0.09 = 0.7894 (handbook Table B.1.2, from memory, confirm).
    const [plan, warm] = [siteWith({}, cold), siteWith({ warmerC: 20 / 1.8 }, cold)]
    expect(warm.pipe.wallTemperatureC).toBeCloseTo(23 + 11.111, 3)
    expect(warm.pipe.modulusPa('jaws')! / plan.pipe.modulusPa('jaws')!).toBeCloseTo(0.7894, 4)
  })

  it('leaves an unknown wall temperature unknown: it is asked for all the same', () => {
    const unsaid = withRecord(jobOf(yard).id, { wallTemperatureC: { value: null, basis: 'typical' } })
    const site = siteWith({ warmerC: 10 }, unsaid)
    expect(site.pipe.temperatureAssumed).toBe(true)
    expect(site.pipe.wallTemperatureC).toBe(33)
  })

  it('takes a stand away from supports, plan and records, and every label stays with its stand', () => {
    const plan = siteWith({})
    const stand = plan.supports.find(({ kind, side }) => kind === 'stand' && side === 'exit')!
    const without = siteWith({ missing: [stand.itemId] })
    expect(without.supports.map(({ key }) => key)).toEqual(plan.supports.map(({ key }) => key).filter((key) => key !== stand.key))
    expect(without.placed.has(stand.itemId)).toBe(false)
    expect(recordsOf(without.document, 'stand')).toHaveLength(recordsOf(yard, 'stand').length - 1)
    for (const view of without.supports) expect(view.label).toBe(plan.supports.find(({ key }) => key === view.key)!.label)
    expect(yard.records[stand.itemId]).toBeDefined()
  })

  it('makes grass wet, and what nobody has said, and nothing else', () => {
    const [run] = recordsOf(yard, 'run')
    const surfaceAt = (surface: 'grass' | 'gravel' | null): string | null => siteWith({ wetGrass: true }, withRecord(run!.id, { surfaces: [surface] })).surfaceAt(20)
    expect(surfaceAt('grass')).toBe('wetGrass')
    expect(surfaceAt(null)).toBe('wetGrass')
    expect(surfaceAt('gravel')).toBe('gravel')
  })

  it('orders pull and run-away by friction, low to high', () => {
    const parts = (['low', 'likely', 'high'] as const).map((friction) => stringPullOf(siteWith({ friction })).joints.at(-1)!)
    expect(parts[0]!.pullN).toBeLessThan(parts[1]!.pullN)
    expect(parts[1]!.pullN).toBeLessThan(parts[2]!.pullN)
    expect(parts[0]!.runAwayN.exit).toBeGreaterThan(parts[2]!.runAwayN.exit)
    // The plan itself pulls with the high column and runs away with the low one.
    const plan = stringPullOf(siteWith({})).joints.at(-1)!
    expect(plan.pullN).toBe(parts[2]!.pullN)
    expect(plan.runAwayN.exit).toBe(parts[0]!.runAwayN.exit)
  })

  it('multiplies every modulus by the ends of its band: 0.8 and 1.2, a house rule', () => {
    for (const question of ['nose', 'jaws', 'rest', 'stored'] as const) {
      const [low, plan, high] = [siteWith({ modulus: 'low' }), siteWith({}), siteWith({ modulus: 'high' })].map(({ pipe }) => pipe.modulusPa(question)!)
      expect(low! / plan!).toBeCloseTo(0.8, 12)
      expect(high! / plan!).toBeCloseTo(1.2, 12)
    }
  })

  it('lowers the support that sinks, both its level and its saddle, and no other', () => {
    const plan = siteWith({})
    const stand = plan.supports.find(({ kind }) => kind === 'stand')!
    const site = siteWith({ sink: { itemId: stand.itemId, byM: 0.0127 } })
    for (const view of site.supports) {
      const before = plan.supports.find(({ key }) => key === view.key)!
      const byM = view.itemId === stand.itemId ? 0.0127 : 0
      expect(before.levelM! - view.levelM!).toBeCloseTo(byM, 12)
      expect(before.saddleM! - view.saddleM!).toBeCloseTo(byM, 12)
    }
  })

  it('holds a named wind against the speed that rolls the string', () => {
    const levelIn = (windMPerS: number): string => runChecks(siteWith({ windMPerS })).findings.find(({ checkId }) => checkId === 'wind-chock')!.level
    // 13.8 mph (6.2 m/s) rolls this string by the 5 % rule.
    expect(levelIn(5)).toBe('met')
    expect(levelIn(13.4)).toBe('FIX')
  })

  it('changes findings and gives the plan its own back', () => {
    const before = runChecks(siteWith({}))
    const stand = siteWith({}).supports.find(({ kind, side }) => kind === 'stand' && side === 'exit')!
    expect(runChecks(siteWith({ missing: [stand.itemId], warmerC: 20 })).counts).not.toEqual(before.counts)
    expect(runChecks(siteWith({}))).toEqual(before)
  })
})
