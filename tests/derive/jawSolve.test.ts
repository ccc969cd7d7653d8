import { describe, expect, it } from 'vitest'
import { limitsOf } from '../../src/checks/limits.ts'
import { jawEffort } from '../../src/checks/list/jawEffort.ts'
import { faceGap } from '../../src/checks/list/faceGap.ts'
import { sag } from '../../src/checks/list/sag.ts'
import { poundForceN } from '../../src/units/factors.ts'
import { fusionYard, levelsOf, mechanicsOf, type YardSpec } from '../helpers/fusionYard.ts'

const sizes = ['4', '6', '8', '10', '12', '14', '16', '18', '24', '36', '48', '54']
const first = (spec: YardSpec): NonNullable<ReturnType<ReturnType<typeof mechanicsOf>['joint']>> => mechanicsOf(fusionYard(spec)).joint(1)!
const exitEffort = (spec: YardSpec): number => first(spec).exit.effortRatio

describe('effort at the jaws under a 40 ft stick (common practice, no source)', () => {
  // Statics of a beam on level supports at 1/3, 2 1/3, 25 and 35 ft with its tip at 40 ft: the size cancels.
  it.each(sizes)('exit stands at 25 and 35 ft give 0.88 in %s in pipe', (size) => expect(exitEffort({ size })).toBeCloseTo(0.884, 3))
  it('one stand at 20 ft gives 0.2 to 0.8 in every size', () => {
    for (const size of sizes) {
      const effort = exitEffort({ size, exits: [[20, 0]] })
      expect(effort, size).toBeGreaterThan(0.15)
      expect(effort, size).toBeLessThan(0.81)
    }
  })
  it('no stands give 2.5 to 9.8 from 6 in up', () => {
    const efforts = sizes.slice(1).map((size) => exitEffort({ size, dr: 11, exits: [] }))
    expect(Math.min(...efforts)).toBeGreaterThan(2.5)
    // A stiff pipe clear of the ground: W (20 − 1/3) / 2 of couple over 2 ft, 9.83 W.
    expect(Math.max(...efforts)).toBeCloseTo(9.83, 2)
  })
  it('both stands 3 in low are FIX from 18 in up, 6 in low at 12 in', () => {
    const isFix = (size: string, lowIn: number): boolean => levelsOf(jawEffort, fusionYard({ size, dr: 11, exits: [[25, lowIn], [35, lowIn]] }))['exit'] === 'FIX'
    expect(sizes.filter((size) => isFix(size, 3))).toEqual(['18', '24', '36', '48', '54'])
    expect(isFix('12', 6)).toBe(true)
  })
  it('at 25 and 35 ft 4 in pipe is FIX and 6 in CHECK, by gap and sag; from 8 in up nothing', () => {
    const verdicts = (size: string): string[] => [...Object.values(levelsOf(faceGap, fusionYard({ size, dr: 11 }))), ...Object.values(levelsOf(sag, fusionYard({ size, dr: 11 })))]
    expect(new Set(verdicts('4'))).toEqual(new Set(['FIX']))
    expect(new Set(verdicts('6'))).toEqual(new Set(['CHECK']))
    for (const size of ['10', '12', '24']) expect(new Set(verdicts(size)), size).toEqual(new Set(['met']))
  })
})

describe('the closed jaws', () => {
  it('are in balance with the stick and its stands', () => {
    const { exit } = first({})
    const weightN = exit.closed.result.supports.reduce((sum, { reactionN }) => sum + reactionN, 0)
    // 40 ft of 12.36 lb/ft: 494.4 lb.
    expect(weightN / poundForceN).toBeCloseTo(494.4, 0)
    expect(exit.innerN + exit.outerN + exit.closed.supports.reduce((sum, { reactionN }) => sum + reactionN, 0)).toBeCloseTo(weightN, 6)
  })
  it('feel more from a stand that is set low, and the stand carries less', () => {
    const solves = [0, 1, 2, 3].map((lowIn) => first({ exits: [[20, lowIn], [35, 0]] }).exit)
    const loads = solves.map(({ closed }) => closed.supports[0]!.reactionN)
    expect(loads).toEqual(loads.toSorted((a, b) => b - a))
  })
  it('do not change from the fourth joint on', () => {
    const mechanics = mechanicsOf(fusionYard({ size: '10', neededFt: 400, exits: [[12.5, 0], [25, 1.5]], rollers: Array.from({ length: 30 }, (_, i) => 60 + 11 * i) }))
    expect(mechanics.joints).toEqual([1, 2, 3, 4, 10])
    const [fourth, last] = [mechanics.joint(4)!, mechanics.joint(10)!]
    expect(Math.abs(fourth.exit.effortRatio - last.exit.effortRatio)).toBeLessThan(0.01 * last.exit.effortRatio)
    // Every joint between them as well, so that judging these five is judging all.
    for (const joint of [5, 6, 7, 8, 9]) expect(Math.abs(mechanics.joint(joint)!.exit.effortRatio - last.exit.effortRatio)).toBeLessThan(0.01 * last.exit.effortRatio)
  })
})

describe('the open jaws', () => {
  it('one stand at 12 ft 6 in before a lay-down: the string lifts out and the jaws fight', () => {
    // A finite-element run of our own (12 in IPS DR 17): one level stand, then stands at ¾, ½, ¼ of the lay-down: lifts 0.35–0.49 in, FIX.
    const laydown: YardSpec = { exits: [[12.5, 0], [23.2, 6.2], [33.9, 16.6], [44.7, 22.8]], rollers: [55.4, 67.9, 80.4, 92.9, 105.4, 117.9], neededFt: 150 }
    const mechanics = mechanicsOf(fusionYard(laydown))
    const worst = mechanics.solvedJoints().reduce((most, one) => (one.exit.effortRatio > most.exit.effortRatio ? one : most))
    expect(worst.exit.effortRatio).toBeGreaterThan(1)
    expect(Math.max(worst.exit.clearByM, worst.springsByM.exit)).toBeGreaterThan(0.005)
  })
  it('a second level stand with a soft start keeps the pipe in its lower halves', () => {
    // The same run with a soft start: heights 30 / 28½ / 21½ / 12½ / 7¼ in at 12.5 / 25 / 35.7 / 46.4 / 57.1 ft, rollers every 12½ ft.
    const good: YardSpec = { exits: [[12.5, 0], [25, 1.5], [35.67, 8.5], [46.4, 17.5], [57.1, 22.75]], rollers: Array.from({ length: 18 }, (_, i) => 67.83 + 12.5 * i), neededFt: 270 }
    const mechanics = mechanicsOf(fusionYard(good))
    for (const solve of mechanics.solvedJoints()) {
      expect(solve.exit.effortRatio, `joint ${solve.joint}`).toBeLessThan(0.3)
      expect(solve.exit.isClear, `joint ${solve.joint}`).toBe(false)
      expect(solve.springsByM.exit, `joint ${solve.joint}`).toBe(0)
    }
  })
})

describe('unknowns', () => {
  it('without a pipe nothing is solved and the missing field is named', () => {
    const document = fusionYard({ job: { pipe: null } })
    const mechanics = mechanicsOf(document)
    expect(mechanics.solvedJoints()).toEqual([])
    expect(mechanics.missing.map(({ path }) => path)).toEqual(['pipe'])
    expect(limitsOf(document).limit('jaw-effort').check).toBe(1)
  })
})
