import { describe, expect, it } from 'vitest'
import { holdBack } from '../../src/checks/list/holdBack.ts'
import { stringPullOf } from '../../src/derive/stringPull.ts'
import { free, item, onRun } from '../helpers/documents.ts'
import { findingsOf, ftM, levelsOf, machineAt0, rollersAt, siteOf, withFigures } from './yardCase.ts'

const rollers = rollersAt(11 * ftM, 320 * ftM, 11 * ftM)
const fallRatio = (ratio: number | null, ...records: Parameters<typeof siteOf>[1][]) => siteOf({ setUp: { fallRatio: ratio } }, machineAt0(), ...rollers, ...records)
const anchor = (ratedHoldN: number | null, runningM = -3) => withFigures('anchor', 'anchor:1', onRun(runningM, { offsetM: 2 }), { ratedHoldN })

describe('string held on the grade', () => {
  it('asks for nothing under 1 %, for a tether from 1 % on', () => {
    // House rule, common practice.
    expect(levelsOf(holdBack, fallRatio(0.0099))).toEqual(['met'])
    const [tether] = findingsOf(holdBack, fallRatio(0.01))
    expect([tether!.level, tether!.what.text.en.includes('nothing holds')]).toEqual(['CHECK', true])
    expect(tether!.move!.text.en).toContain('Tether before the jaws open')
    expect(tether!.remedy).toMatchObject({ command: 'setHoldBack', args: { setUpId: 'setUp:1' } })
  })

  it('stops where the whole string runs away by itself and nothing holds it', () => {
    // Low friction of rollers 0.02 (common practice): at 2 % the sum is nought, above it the string leaves.
    expect(levelsOf(holdBack, fallRatio(0.0199))).toEqual(['CHECK'])
    const [runs] = findingsOf(holdBack, fallRatio(0.021))
    expect([runs!.level, runs!.source.class]).toEqual(['STOP', 'mechanics'])
    // 8 sticks: 0.001 of the whole weight.
    const { weightN } = stringPullOf(fallRatio(0.021)).joints.at(-1)!
    expect(runs!.measured!.value! / weightN).toBeCloseTo(0.001, 4)
  })

  it('is satisfied by an anchor good for twice the full weight down the slope', () => {
    // Full pull w·L·sinα at 3 %, twice over (house rule).
    const designN = stringPullOf(fallRatio(0.03)).joints.at(-1)!.tetherN.exit
    expect(levelsOf(holdBack, fallRatio(0.03, anchor(2 * designN)))).toEqual(['met'])
    const [weak] = findingsOf(holdBack, fallRatio(0.03, anchor(2 * designN - 1)))
    expect([weak!.level, weak!.source.class]).toEqual(['FIX', 'houseRule'])
  })

  it('stops where the anchor holds less than the string pulls', () => {
    const { runAwayN } = stringPullOf(fallRatio(0.03)).joints.at(-1)!
    expect(levelsOf(holdBack, fallRatio(0.03, anchor(runAwayN.exit - 1)))).toEqual(['STOP'])
    expect(levelsOf(holdBack, fallRatio(0.03, anchor(runAwayN.exit + 1)))).toEqual(['FIX'])
  })

  it('does not let an anchor of unknown strength pass', () => {
    const [unknown] = findingsOf(holdBack, fallRatio(0.05, anchor(null)))
    expect([unknown!.isUnknown, unknown!.missing[0]!.path]).toEqual([true, 'figures.ratedHoldN.value'])
  })

  it('wants an anchor that lies uphill', () => {
    // Falling to the infeed: an anchor at the tail has no string below it.
    expect(levelsOf(holdBack, fallRatio(-0.05, anchor(1e6, -3)))).toEqual(['STOP'])
    expect(levelsOf(holdBack, fallRatio(-0.05, anchor(1e6, 9)))).toEqual(['met'])
    const [runs] = findingsOf(holdBack, fallRatio(-0.05))
    // Three quarters of a 40 ft stick: 9.144 m down-string.
    expect(runs!.remedy).toMatchObject({ command: 'setHoldBack', args: { setUpId: 'setUp:1', runningM: 9.144 } })
  })

  it('counts a puller uphill as holding while its rope is tight', () => {
    expect(levelsOf(holdBack, fallRatio(-0.05, item('puller', 'puller:1', onRun(110))))).toEqual(['CHECK'])
    expect(levelsOf(holdBack, fallRatio(0.05, item('puller', 'puller:1', onRun(110))))).toEqual(['STOP'])
  })

  it('lets a string lie on the ground where rollers would lose it', () => {
    // 3 % on grass without rollers: low friction of ground 0.1 holds it, also at joint 1, where only some 13 ft lie on it; a tether is still wanted.
    const onGrass = (ratio: number) => siteOf({ setUp: { fallRatio: ratio } }, machineAt0())
    // What lies on the rack pushes what lies on the grass.
    expect(levelsOf(holdBack, onGrass(0.03))).toEqual(['CHECK', 'NOTE'])
    // At 5 % the first string, most of it on rack and lifts, leaves by itself; the finished one would stay.
    expect(levelsOf(holdBack, onGrass(0.05))).toEqual(['STOP'])
    expect(stringPullOf(onGrass(0.05)).joints.at(-1)!.runAwayN.exit).toBeLessThan(0)
  })

  it('notes a string that pushes itself part of the way', () => {
    // 8 % down over the first 40 m, then 4 % up: the first part runs on to the second, the whole stays.
    const level = (xM: number, levelM: number) => withFigures('level', `level:${xM + 100}`, free(xM, 0), { levelM })
    const site = siteOf({ setUp: { fallRatio: null } }, machineAt0(), ...rollers, level(-20, 0), level(20, 0), level(45, -1), level(70, 0), level(110, 1.6))
    expect(levelsOf(holdBack, site)).toContain('NOTE')
  })

  it('never passes an unknown fall or pipe', () => {
    expect(levelsOf(holdBack, fallRatio(null))).toEqual(['CHECK?'])
    expect(levelsOf(holdBack, siteOf({ job: { pipe: null } }, machineAt0()))).toEqual(['CHECK?'])
  })
})
