import { describe, expect, it } from 'vitest'
import { bodies, bodySolverOf } from '../../src/derive/bodies.ts'
import { profileAt } from '../../src/derive/profile.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { phases } from '../../src/scene/parts.ts'
import { footM } from '../../src/units/factors.ts'
import { documentOf, item, job, layout, onRun, run, setUp } from '../helpers/documents.ts'

const ft = (feet: number): number => feet * footM
const yardOf = (size = '12', exitFt: readonly number[] = [25, 35], neededFt = 150): ReturnType<typeof deriveSite> =>
  deriveSite(documentOf(layout(), job({ pipe: { system: 'IPS', size, dr: 17, material: 'PE4710' }, stickLengthM: ft(40), neededLengthM: ft(neededFt) }), setUp({ fallRatio: 0 }), run(),
    item('machine', 'machine:1', onRun(0)), item('rack', 'rack:1', onRun(ft(-20))), ...exitFt.map((x, i) => item('stand', `stand:${i}`, onRun(ft(x))))))

describe('the bent pipe of a stage', () => {
  it('at fuse 1 is a stick on each side of the joint', () => {
    const profile = profileAt(yardOf(), { phase: 'fuse', joint: 1 })
    expect(profile.status).toBe('ok')
    expect(profile.bodies.map(({ name, startM, endM }) => [name, startM / footM, endM / footM].map((x) => (typeof x === 'number' ? Number(x.toFixed(6)) : x)))).toEqual([['stick', -40, 0], ['string', 0, 40]])
    expect(profile.jaws?.exit.map(({ runningM }) => runningM)).toEqual([0.1016, 0.7112])
    expect([profile.tailM! / footM, profile.tipM! / footM].map((x) => Number(x.toFixed(6)))).toEqual([-40, 40])
  })
  it('carries exactly what the bodies weigh', () => {
    const site = yardOf()
    const { loads, jaws, bodies: lying } = profileAt(site, { phase: 'fuse', joint: 2 })
    const upN = [...loads.values()].reduce((sum, { reactionN }) => sum + reactionN, 0) + [...jaws!.infeed, ...jaws!.exit].reduce((sum, { forceN }) => sum + forceN, 0)
      + lying.reduce((sum, { result }) => sum + result.groundTotalN, 0)
    const weightN = site.pipe.properties!.lineLoadNPerM * lying.reduce((sum, { startM, endM }) => sum + endM - startM, 0)
    expect(upN / weightN).toBeCloseTo(1, 9)
  })
  it('the nose moves by a stick less the joint loss in each pull', () => {
    const site = yardOf()
    const tips = [1, 2].map((joint) => profileAt(site, { phase: 'pull', joint }).tipM!)
    expect(tips[1]! - tips[0]!).toBeCloseTo(ft(40) - site.sticks.jointLossM!, 9)
  })
  it('a job of one stick pulls that one stick, wherever the nose is asked for', () => {
    const site = yardOf('12', [25, 35], 38)
    expect(site.sticks.stickCount).toBe(1)
    for (const tipM of [undefined, 0, ft(40), ft(90)]) {
      const { bodies: lying } = profileAt(site, { phase: 'pull', joint: 1, ...(tipM === undefined ? {} : { tipM }) })
      expect(lying.map(({ startM, endM }) => [startM, endM].map((x) => Number((x / footM).toFixed(6))))).toEqual([[0, 40]])
    }
  })
  it('names what is missing instead of drawing a guess', () => {
    const site = deriveSite(documentOf(layout(), job(), setUp(), run(), item('machine', 'machine:1', onRun(0))))
    const profile = profileAt(site, { phase: 'fuse', joint: 1 })
    expect(profile.status).toBe('missing')
    expect(profile.missing.map(({ path }) => path)).toEqual(['pipe', 'stickLengthM'])
  })
  it('has an answer for every phase and any joint number', () => {
    const site = yardOf()
    for (const phase of phases) for (const joint of [-3, 0, 1, 2.4, 99]) expect(profileAt(site, { phase, joint }).status, `${phase} ${joint}`).toBe('ok')
  })
})

describe('solves', () => {
  it('are made once a site and shared', () => {
    const site = yardOf()
    profileAt(site, { phase: 'fuse', joint: 1 })
    const spent = bodySolverOf(site).solveCount()
    bodySolverOf(site).solve(bodies.exitString(site, 1, 'closed'))
    expect(spent).toBe(2)
    expect(bodySolverOf(site).solveCount()).toBe(spent)
  })
})
