import { describe, expect, it } from 'vitest'
import { stringPullOf } from '../../src/derive/stringPull.ts'
import { free, item } from '../helpers/documents.ts'
import { ftM, lbN, machineAt0, rollersAt, siteOf } from '../checks/yardCase.ts'

/** Ground falling evenly to the exit, as three levels not in line would say it. */
const fall = (ratio: number) => ({ fallRatio: ratio, crossFallRatio: 0 })
const onRollers = [machineAt0(), ...rollersAt(11 * ftM, 320 * ftM, 11 * ftM)]

describe('pull of the string, joint by joint', () => {
  it('grows by a tenth of a stick’s weight with every joint on level rollers', () => {
    // 10 in IPS DR 17: OD 10.750 in, minimum wall 0.632 in, mean 0.670 in; w = 0.0345 · π · (10.75 − 0.670) · 0.670 · 12 ≈ 8.78 lb/ft.
    // Rollers 0.1 (ASTM F1962 planning value, from memory): 0.1 · 8.78 · 79.9 ft = 70 lb, then 35 lb more each; 239.6 ft: 210 lb.
    const pulls = stringPullOf(siteOf({}, ...onRollers)).joints.map(({ pullN }) => pullN / lbN)
    expect(pulls.map(Math.round)).toEqual([70, 105, 140, 175, 210, 246, 281])
  })

  it('takes the grade off where the string goes downhill', () => {
    // 1 % fall: 0.1 − 0.01 leaves 0.09 of the weight: 63, 95, … 253 lb.
    const pulls = stringPullOf(siteOf({ setUp: fall(0.01) }, ...onRollers)).joints.map(({ pullN }) => pullN / lbN)
    expect([pulls[0], pulls[6]].map((pull) => Math.round(pull!))).toEqual([63, 253])
  })

  it('drags the string on the ground where no rollers are', () => {
    // Gravel 0.6, no support beyond the jaws at 30 in: nearly the whole 319 ft 6 in, less two thirds of a 41 ft lay-down on the jaws' side.
    // 8.78 · (319.5 · 0.6 − 27.4 · 0.5) = 1,563 lb, within the 1 % of the lay-down length.
    const pull = stringPullOf(siteOf({ run: { surfaces: ['gravel'] } }, machineAt0())).joints.at(-1)!
    expect(pull.pullN / lbN).toBeGreaterThan(1540)
    expect(pull.pullN / lbN).toBeLessThan(1590)
  })

  it('stays by itself at 2 % on rollers and leaves above', () => {
    // Low friction of rollers 0.02: sum = w·L·(0.02·cosα − sinα); at 1.9 % it stays, at 2.1 % it leaves with 0.1 % of the weight.
    const at = (ratio: number): number => stringPullOf(siteOf({ setUp: fall(ratio) }, ...onRollers)).joints.at(-1)!.runAwayN.exit
    expect(at(0.019)).toBeLessThan(0)
    const weightN = stringPullOf(siteOf({}, ...onRollers)).joints.at(-1)!.weightN
    expect(at(0.021) / weightN).toBeCloseTo(0.001, 4)
  })

  it('leaves to the infeed where the ground rises to the exit', () => {
    const { runAwayN, tetherN, weightN } = stringPullOf(siteOf({ setUp: fall(-0.05) }, ...onRollers)).joints.at(-1)!
    // 5 % up: 0.05 − 0.02 of the weight down to the infeed; the tether takes 0.05 of it.
    expect(runAwayN.infeed / weightN).toBeCloseTo(0.03, 3)
    expect(tetherN.infeed / weightN).toBeCloseTo(0.05, 3)
    expect(runAwayN.exit).toBeLessThan(0)
  })

  it('grows round a bend by the belt friction', () => {
    // 45° to the left at 30 m with R = 20 m, all on rollers (0.1): straight part before it pulled with F1, behind the bend F1·e^(0.1·π/4) and more.
    const bent = siteOf({ run: { surfaces: ['grass'], vertices: [{ xM: 30, yM: 0, radiusM: 20 }, { xM: 130, yM: 100, radiusM: null }] } }, ...onRollers)
    const straight = stringPullOf(siteOf({}, ...onRollers)).joints.at(-1)!.pullN
    expect(stringPullOf(bent).joints.at(-1)!.pullN).toBeGreaterThan(straight)
  })

  it('names what is missing and solves nothing', () => {
    const { missing, joints } = stringPullOf(siteOf({ job: { pipe: null, stickLengthM: null } }))
    expect(missing.map(({ path }) => path)).toEqual(['pipe', 'stickLengthM'])
    expect(joints).toEqual([])
  })

  it('puts the string on the ground only where two supports are farther apart than both lay-down lengths', () => {
    // Rollers at 6 in: (72·EI·h/w)^¼ is some 25 to 30 ft for this pipe at rest, so 11 ft apart it never lies down, 100 ft apart it does.
    expect(stringPullOf(siteOf({}, ...onRollers)).ground).toEqual([])
    const gap = [machineAt0(), item('roller', 'roller:1', free(10 * ftM, 0)), item('roller', 'roller:2', free(110 * ftM, 0))]
    expect(stringPullOf(siteOf({}, ...gap)).ground.length).toBe(2)
  })
})
