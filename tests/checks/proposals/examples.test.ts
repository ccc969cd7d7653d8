import { describe, expect, it } from 'vitest'
import { limitsOf } from '../../../src/checks/limits.ts'
import { createMechanics } from '../../../src/derive/mechanics.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import { examples } from '../../helpers/makeExamples.ts'
import { accepted, changeOf, foundFor, ownedRollers, ownedStands, proposeFor, supportCount, supportsOf } from './proposalCase.ts'

const inM = 0.0254
/** Beam solves of one search, present and proposed layout checked included: a guard against a search that runs wild. */
const MOST_SOLVES = 4500

const yards = ['maple-fork', 'otter-bend', 'redstem-flat', 'campo-arenal'] as const

describe('a proposal on the first sketches', () => {
  it.each(yards)('%s: the stands placed raise nothing and clear something, as two runs of all checks say', (yard) => {
    const before = examples[`${yard}-first-sketch`]!()
    const result = foundFor(before)
    const { raised, cleared } = changeOf(before, accepted(before, result))
    expect(raised).toEqual([])
    expect(cleared.length).toBeGreaterThan(0)
    expect(result.clears.map(({ level, checkId }) => `${level} ${checkId}`).toSorted()).toEqual(cleared.toSorted())
    expect(result.solveCount).toBeLessThan(MOST_SOLVES)
    expect(result.runCount).toBeLessThanOrEqual(8)
  })

  it.each(yards)('%s: the rollers alone raise nothing and leave every stand as it is', (yard) => {
    const before = examples[`${yard}-first-sketch`]!()
    const result = foundFor(before, 'rollers')
    const after = accepted(before, result)
    expect(changeOf(before, after).raised).toEqual([])
    const stands = (document: typeof before): unknown => Object.values(document.records).filter(({ kind }) => kind === 'stand')
    expect(stands(after)).toEqual(stands(before))
  })

  // Printed for the reader: 'never more supports than the good layouts', job of 8 and of 25 sticks.
  it.each(['maple-fork', 'otter-bend'] as const)('%s: no more supports than the layout drawn by hand', (yard) => {
    const before = examples[`${yard}-first-sketch`]!()
    const result = foundFor(before)
    const byHand = supportCount(examples[`${yard}-good`]!())
    console.log(`${yard}: ${result.proposed.stands} stands and ${result.proposed.rollers} rollers proposed, ${byHand} supports by hand, ${result.solveCount} solves, ${result.runCount} check runs`)
    expect(supportCount(accepted(before, result))).toBe(result.proposed.stands + result.proposed.rollers)
    expect(result.proposed.stands + result.proposed.rollers).toBeLessThanOrEqual(byHand)
  })

  it('clears the nose warning of Maple Fork, with two level stands, the last of them dropped for a soft start', () => {
    const before = examples['maple-fork-first-sketch']!()
    const result = foundFor(before)
    expect(result.clears.map(({ checkId }) => checkId)).toContain('nose-landing')
    const [first, second] = supportsOf(accepted(before, result)).filter(({ side }) => side === 'exit')
    expect(first!.saddleM! - first!.jawLineSaddleM!).toBeCloseTo(0, 9)
    // 24 in of drop over 16: 1 1/2 in.
    expect(second!.jawLineSaddleM! - second!.saddleM!).toBeCloseTo(1.5 * inM, 4)
  })

  it('says that the nose has to be slung where stands go no lower than 18 in, and sets it so in the same step', () => {
    const before = examples['maple-fork-first-sketch']!()
    const result = foundFor(before)
    expect(Object.values(accepted(before, result).records).find(({ kind }) => kind === 'job')).toMatchObject({ noseHold: 'slung' })
    expect(result.said.map(({ text }) => text.en).join(' ')).toMatch(/slung on its way down/)
    expect(result.said.map(({ text }) => text.en).join(' ')).toMatch(/typical stands and rollers/)
  })

  it('lets a free nose down by itself where the crew’s stands go down to 5 in: every arrival is within the lead-in, nothing is slung', () => {
    const before = examples['maple-fork-first-sketch']!()
    const owned = [ownedStands(12, 5 * inM, 44 * inM), ownedRollers(30)]
    const result = foundFor(before, 'stands', owned)
    const after = accepted(before, result)
    expect(Object.values(after.records).find(({ kind }) => kind === 'job')).toMatchObject({ noseHold: 'free' })
    expect(changeOf(before, after, owned).raised).toEqual([])
    const site = deriveSite(after)
    const arrivals = createMechanics(site, limitsOf(after)).arrivals()
    expect(arrivals.length).toBeGreaterThan(15)
    // 10.75 in over 4 = 2.69 in is taken in.
    for (const { droopM, leadInM } of arrivals) expect(droopM).toBeLessThanOrEqual(leadInM + 0.0005)
    expect(supportCount(after)).toBeLessThanOrEqual(supportCount(examples['maple-fork-good']!()))
  })

  it('gives the same answer twice', () => {
    const before = examples['maple-fork-first-sketch']!()
    expect(JSON.stringify(proposeFor(before))).toBe(JSON.stringify(proposeFor(before)))
  })

  it('is one edit of named commands, few enough for one sequence even with 180 rollers', () => {
    const result = foundFor(examples['campo-arenal-first-sketch']!())
    expect(result.command.command).toBe('sequence')
    expect((result.command.args as { commands: unknown[] }).commands.length).toBeLessThan(60)
  })

  it('has a reason in both languages for each support: counts of the lines add up to what is placed', () => {
    for (const yard of yards) {
      const result = foundFor(examples[`${yard}-first-sketch`]!())
      expect(result.reasons.reduce((sum, { count }) => sum + count, 0)).toBe(result.proposed.stands + result.proposed.rollers)
      for (const { text: { text } } of result.reasons) expect([text.en.length > 10, text.es.length > 10]).toEqual([true, true])
    }
  })
})

describe('a proposal on the good plans', () => {
  it.each(yards)('%s: says that what stands there does, or saves supports without raising anything', (yard) => {
    const before = examples[`${yard}-good`]!()
    const result = proposeFor(before)
    expect(['nothing', 'found']).toContain(result.status)
    if (result.status !== 'found') return
    expect(changeOf(before, accepted(before, result)).raised).toEqual([])
    expect(supportCount(accepted(before, result))).toBeLessThan(supportCount(before))
  })
})
