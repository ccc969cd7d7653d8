import { describe, expect, it } from 'vitest'
import { deriveSite } from '../../src/derive/site.ts'
import { breakawayFactor, stringPullOf } from '../../src/derive/stringPull.ts'
import { commandOf } from '../../src/scene/commands/index.ts'
import { applyEdit, type Env } from '../../src/scene/edit.ts'
import { newDocument } from '../../src/scene/newYard.ts'

/** A straight strip falling 1 % evenly to the exit, rollers every 3 m. */
const site = () => {
  let id = 0
  const env: Env = { newId: (prefix) => `${prefix}:s${id++}`, now: () => '' }
  const document = newDocument({ pipe: { system: 'IPS', size: '10', dr: 17, material: 'PE4710' }, neededLengthM: 85, stickLengthM: 12.192, stripLengthM: 130, stripWidthM: 20, fallRatio: 0.01 }, env, 'feetInches')
  const args = { kind: 'roller', fromRunningM: 3, spacingM: 3, count: 34 }
  return deriveSite(applyEdit(document, commandOf('placeRow')!.run(document, args, env)))
}

describe('start of a pull', () => {
  it('breakaway raises the friction and leaves the weight down the slope as it is', () => {
    // Along a straight even fall: pull = μ·N − T and start = b·μ·N − T, so start + T = b·(pull + T), T = weight down the slope.
    // Before this was held, start was taken as b·pull, which on a fall is too little by (b − 1)·T.
    const { joints } = stringPullOf(site())
    expect(joints.length).toBeGreaterThan(5)
    for (const { startN, pullN, tetherN } of joints) {
      expect(tetherN.exit).toBeGreaterThan(0)
      expect((startN + tetherN.exit) / (breakawayFactor * (pullN + tetherN.exit))).toBeCloseTo(1, 4)
      expect(startN).toBeGreaterThan(breakawayFactor * pullN)
    }
  })
})
