import { describe, expect, it } from 'vitest'
import { runThroughOf } from '../../../src/derive/stages/runThrough.ts'
import { stagesOf } from '../../../src/derive/stages/stagesOf.ts'
import { laneSite } from '../../checks/walkCase.ts'
import { inM, rollersAt } from '../../checks/yardCase.ts'

/** Five sticks of 40 ft: 160 ft needed and a bit. */
const short = { neededLengthM: 55 }

describe('stages of a machine that walks', () => {
  it('open, lift and walk on: the string is a stick longer and has not moved along the run', () => {
    const stages = stagesOf(laneSite({ job: short }))
    const walk = stages.find(({ id }) => id === 'pull:2')!
    expect(walk.steps).toEqual(['open', 'lift', 'walk'])
    // Three sticks: 3 × 40 ft less 2 × ¾ in ahead of the machine, at once.
    expect(walk.noseM!.from).toBe(walk.noseM!.to)
    expect(walk.noseM!.to).toBeCloseTo(3 * 12.192 - 2 * 0.75 * inM, 9)
    expect(stagesOf(laneSite({ job: { ...short, method: 'stationary' } })).find(({ id }) => id === 'pull:2')!.steps).toEqual(['open', 'lift', 'pull'])
  })

  it('have no pull and no arrival of a nose, and the same joints at the jaws', () => {
    const rollers = rollersAt(6, 60, 3)
    const [walking, standing] = (['walking', 'stationary'] as const).map((method) => runThroughOf(laneSite({ job: { ...short, method } }, ...rollers)))
    expect(walking!.stages.every(({ pull, arrivals }) => pull === null && arrivals.length === 0)).toBe(true)
    expect(walking!.hardestPullId).toBeNull()
    expect(standing!.stages.some(({ pull }) => pull !== null)).toBe(true)
    const jaws = (result: typeof walking) => result!.stages.filter(({ jaws }) => jaws !== null).map(({ jaws }) => jaws!.effortRatio)
    expect(jaws(walking)).toEqual(jaws(standing))
    expect(jaws(walking).length).toBeGreaterThan(0)
  })
})
