import { describe, expect, it } from 'vitest'
import { bendHold } from '../../../src/checks/list/bendHold.ts'
import { pullerPull } from '../../../src/checks/list/pullerPull.ts'
import { stringPullOf } from '../../../src/derive/stringPull.ts'
import { item, onRun } from '../../helpers/documents.ts'
import { findingsOf, levelsOf, siteOf, withFigures } from '../yardCase.ts'

/** A left turn of 90° with R 20 m from 20 m on, 10π m long: it ends at 51.416 m. */
const run = { vertices: [{ xM: 40, yM: 0, radiusM: 20 }, { xM: 40, yM: 100, radiusM: null }] }
const guide = (id: number, runningM: number, holdN: number | null) => withFigures('guide', `guide:${id}`, onRun(runningM), { ratedHoldN: holdN })
const EI = siteOf({ run }).pipe.stiffnessNm2('pull')!

describe('stakes or guides at the bends', () => {
  it('none on the plan: CHECK with the force on each at 15 ft', () => {
    const [first] = findingsOf(bendHold, siteOf({ run }))
    expect(first!.level).toBe('CHECK')
    // EI/R over 15 ft = 4.572 m.
    expect(first!.measured!.value).toBeCloseTo(EI / 20 / 4.572, 6)
  })

  it('takes the distance of the first two guides as the arm', () => {
    // 2 m apart at the start, 4 m at the end: the start pair is loaded with EI/R/2.
    const forceN = EI / 20 / 2
    const at = (holdN: number) => siteOf({ run }, guide(1, 19, holdN), guide(2, 21, holdN), guide(3, 49, holdN), guide(4, 53, holdN))
    expect(levelsOf(bendHold, at(forceN * 1.001))[0]).toBe('met')
    const [over] = findingsOf(bendHold, at(forceN * 0.999))
    expect([over!.level, over!.measured!.value, over!.limit!.value]).toEqual(['FIX', expect.closeTo(forceN, 6), expect.closeTo(forceN * 0.999, 6)])
    expect(over!.itemIds).toEqual(['run:1', 'guide:1', 'guide:2'])
  })

  it('asks what a guide holds where nobody has said', () => {
    const [unknown] = findingsOf(bendHold, siteOf({ run }, guide(1, 16, null), guide(2, 21, 1e6), guide(3, 48, 1e6), guide(4, 53, 1e6)))
    expect([unknown!.isUnknown, unknown!.missing[0]]).toEqual([true, { recordId: 'guide:1', path: 'figures.ratedHoldN.value', label: { en: 'K1: holds sideways', es: 'K1: aguante lateral' } }])
  })

  it('doubles the load of a middle guide that serves both ends', () => {
    const three = siteOf({ run }, guide(1, 30, 1e6), guide(2, 35, (EI / 20 / 5) * 1.99), guide(3, 40, 1e6))
    const [over] = findingsOf(bendHold, three)
    expect([over!.level, over!.measured!.value]).toEqual(['FIX', expect.closeTo((2 * EI) / 20 / 5, 6)])
  })

  it('says that two guides in one place give no couple', () => {
    expect(levelsOf(bendHold, siteOf({ run }, guide(1, 20, 1e6), guide(2, 20, 1e6), guide(3, 50, 1e6)))[0]).toBe('FIX')
  })

  it('brings the stiffness at bends into the pull as a line of its own, and the puller has to have it', () => {
    const site = siteOf({ run }, ...[30, 60, 90].map((at, i) => item('roller', `roller:${i + 1}`, onRun(at))))
    const joints = stringPullOf(site).joints
    const last = joints.at(-1)!
    expect(last.stiffnessN).toBeGreaterThan(0)
    expect(last.needN).toBeGreaterThanOrEqual(last.startN)
    const line = findingsOf(bendHold, site).find(({ key }) => key === 'bend-hold@pull')!
    expect(line.level).toBe('NOTE')
    expect(line.measured!.value).toBeCloseTo(Math.max(...joints.map(({ stiffnessN }) => stiffnessN)), 6)
    const pipe = findingsOf(pullerPull, site).find(({ key }) => key === 'puller-pull@pipe')!
    expect(pipe.measured!.value).toBeCloseTo(Math.max(...joints.map(({ needN }) => needN)), 6)
  })

  it('says nothing of a straight run', () => expect(findingsOf(bendHold, siteOf({}))).toEqual([]))
})
