import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { smallSlope } from '../../../src/checks/list/smallSlope.ts'
import { bodies, bodySolverOf } from '../../../src/derive/bodies.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import { runChecks } from '../../../src/checks/runner.ts'
import { readFile } from '../../../src/scene/readFile.ts'
import { item, onRun } from '../../helpers/documents.ts'
import { fusionYard, runOne, textOf } from '../../helpers/fusionYard.ts'
import { findingsOf, machineAt0, rackAtInfeed, siteOf } from '../yardCase.ts'

const standAt = (id: string, runningM: number, saddleM: number) => item('stand', id, onRun(runningM), { height: { rule: 'aboveGround', saddleM } })

describe('pipe too steep for the beam sums', () => {
  it('says nothing of a yard on one line', () => expect(runOne(smallSlope, fusionYard())).toEqual([]))

  it('checks a small pipe over a stand far above its neighbours, with its slope and what it errs by', () => {
    // 2 in pipe, E1 5 m out and 4 m up: jaws at 0.7 to 1 m, so it climbs some 3 m on 4.3 m: steeper than 1 in 2.
    const site = siteOf({ job: { pipe: { system: 'IPS', size: '2', dr: 11, material: 'PE4710' } } }, machineAt0(), rackAtInfeed(), standAt('stand:1', 5, 4))
    const found = findingsOf(smallSlope, site)
    const fuse = found.find(({ phases }) => phases[0] === 'fuse')!
    expect(fuse.level).toBe('CHECK')
    expect(fuse.measured!.value).toBeGreaterThan(0.5)
    expect(fuse.limit!.value).toBe(0.1)
    // An error of slope²/2, above 12 % at 0.5.
    expect(fuse.what.values!['error']).toMatchObject({ value: Math.min(1, (fuse.measured!.value ?? 0) ** 2 / 2) })
    expect(textOf(fuse)).toMatch(/^In .* the pipe slopes/)
    expect(fuse.where).toMatchObject({ at: 'run' })
  })

  it('is worth a note, no more, where the end of a nose hangs a little steeper than 1 in 10', () => {
    // 12 % errs by 0.7 %, far less than the modulus is known to.
    const site = siteOf({ setUp: { fallRatio: 0.12 } }, machineAt0(), rackAtInfeed(), item('stand', 'stand:1', onRun(4)))
    const found = findingsOf(smallSlope, site)
    expect(found.length).toBeGreaterThan(0)
    for (const { level, measured } of found) expect(level).toBe((measured!.value ?? 0) > 0.25 ? 'CHECK' : 'NOTE')
    expect(found.filter(({ level }) => level === 'NOTE')).toHaveLength(1)
  })

  it('is heard whenever a run of all checks met such a slope, and only then', () => {
    const steep = siteOf({ setUp: { fallRatio: 0.15 } }, machineAt0(), rackAtInfeed(), item('stand', 'stand:1', onRun(4)))
    expect(runChecks(steep).findings.map(({ checkId }) => checkId)).toContain('small-slope')
    const flat = readFile(readFileSync('shared/examples/redstem-flat-good.yard.json', 'utf8'))
    if (!flat.ok) throw new Error('the example cannot be read')
    expect(runChecks(flat.document).findings.map(({ checkId }) => checkId)).not.toContain('small-slope')
  })

  it('says it once for all phases in which the pipe is a little too steep, with the steepest', () => {
    const bend = readFile(readFileSync('shared/examples/otter-bend-good.yard.json', 'utf8'))
    if (!bend.ok) throw new Error('the example cannot be read')
    const found = runChecks(bend.document).findings.filter(({ checkId }) => checkId === 'small-slope')
    expect(found).toHaveLength(1)
    expect([...found[0]!.phases].toSorted()).toEqual(['fuse', 'pull', 'rest'])
    expect(textOf(found[0]!)).toMatch(/^In [a-z]+, [a-z]+ and [a-z]+ the pipe slopes up to/)
  })

  it('leaves out what is only tried: a support set a yard too high', () => {
    const site = deriveSite(fusionYard())
    const [first] = site.supports.filter(({ runningM }) => runningM > 1)
    const tried = bodySolverOf(site).solve({ ...bodies.exitString(site, 1, 'closed'), shift: { key: first!.key, byM: 2 } })
    expect(tried!.result.outOfSmallSlope).toBe(true)
    expect(findingsOf(smallSlope, site)).toEqual([])
  })
})
