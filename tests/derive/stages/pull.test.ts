import { describe, expect, it } from 'vitest'
import { runThroughOf } from '../../../src/derive/stages/runThrough.ts'
import type { RunThrough, StagePull, StageResult } from '../../../src/derive/stages/types.ts'
import type { SiteModel } from '../../../src/derive/types.ts'
import { free, item } from '../../helpers/documents.ts'
import { ftM, lbN, machineAt0, rackAtInfeed, rollersAt, siteOf, withFigures } from '../../checks/yardCase.ts'

const fall = (ratio: number) => ({ setUp: { fallRatio: ratio, crossFallRatio: 0 } })
const onRollers = [machineAt0(), rackAtInfeed(), ...rollersAt(11 * ftM, 320 * ftM, 11 * ftM)]
const runOf = (site: SiteModel): RunThrough => runThroughOf(site)
const pullsOf = (run: RunThrough): StagePull[] => run.stages.flatMap(({ pull }) => (pull === null ? [] : [pull]))
const last = (run: RunThrough): StagePull => pullsOf(run).at(-1)!
const partsN = ({ parts }: StagePull): number => parts.rollersN + parts.ground.reduce((sum, { dragN }) => sum + dragN, 0) + parts.gradeN + parts.bendsN + parts.slackN
const dragsOf = (run: RunThrough): NonNullable<StageResult['drag']>[] => run.stages.flatMap(({ drag }) => (drag === null ? [] : [drag]))
/** 10 in IPS DR 17: 8.78 lb/ft; eight sticks of 40 ft with 7/8 in lost at each joint. */
const lbPerFt = 8.783

describe('pull of each stage', () => {
  it('is 70, 105, 141, 176, 211, 246, 281 lb on level rollers', () => {
    // 0.1 · 8.783 lb/ft · L(k + 1); the last digits of the hand integral are rounded with 8.78 and 351 lb a stick.
    const pulls = pullsOf(runOf(siteOf({}, ...onRollers))).map(({ pullN }) => pullN / lbN)
    const hand = [70, 105, 141, 176, 211, 246, 281]
    pulls.forEach((pull, i) => expect(Math.abs(pull - hand[i]!)).toBeLessThan(1))
  })

  it('is 63, 95, 126, 158, 190, 221, 253 lb where the lot falls 1 %', () => {
    // 0.1 · cos α − sin α = 0.09 of the weight.
    const pulls = pullsOf(runOf(siteOf(fall(0.01), ...onRollers))).map(({ pullN }) => pullN / lbN)
    const hand = [63, 95, 126, 158, 190, 221, 253]
    pulls.forEach((pull, i) => expect(Math.abs(pull - hand[i]!)).toBeLessThan(1))
  })

  it('is made of parts that add up: rollers, ground by surface, grade, bends, what a rope cannot push', () => {
    const bent = { run: { surfaces: ['gravel' as const, 'grass' as const], vertices: [{ xM: 30, yM: 0, radiusM: 20 }, { xM: 80, yM: 50, radiusM: null }] } }
    const sites = [
      siteOf({ ...fall(0.01), ...bent }, ...onRollers),
      siteOf({ ...fall(0.02), ...bent }, machineAt0(), rackAtInfeed(), item('roller', 'roller:1', free(10 * ftM, 0))),
      siteOf(fall(0.15), ...onRollers),
      siteOf({}, machineAt0(), rackAtInfeed()),
    ]
    for (const pull of sites.flatMap((site) => pullsOf(runOf(site)))) expect(partsN(pull) / Math.max(1, pull.pullN)).toBeCloseTo(Math.min(1, pull.pullN), 9)
  })

  it('on rollers and a fall is a tenth of the weight less a hundredth', () => {
    const { parts, lengthM } = last(runOf(siteOf(fall(0.01), ...onRollers)))
    const weightLb = (lbPerFt * lengthM) / ftM
    expect(parts.rollersN / lbN / (0.1 * weightLb)).toBeCloseTo(1, 3)
    expect(parts.gradeN / lbN / (-0.01 * weightLb)).toBeCloseTo(1, 3)
    expect(parts.ground).toEqual([])
  })

  it('dragged over gravel with the 1 % fall comes to 1,450 to 1,655 lb between 280 and 320 ft', () => {
    // All on the ground: 8.78 · L · (0.6 − 0.01) = 1,450 lb at 280 ft, 1,655 at 319 ft 6 in. The machine's raised lift, 4 ft out, carries the first 4 ft
    // and two thirds to three quarters of a lay-down of some 43 ft from 32 in on rollers at 0.1: 33 to 37 ft, 145 to 162 lb less.
    const pulls = pullsOf(runOf(siteOf({ ...fall(0.01), run: { surfaces: ['gravel'] } }, machineAt0(), rackAtInfeed())))
    const { pullN, parts, lengthM } = pulls.at(-1)!
    expect(pullN / lbN).toBeGreaterThan(1655 - 162)
    expect(pullN / lbN).toBeLessThan(1655 - 145)
    expect(parts.ground.map(({ surface }) => surface)).toEqual(['gravel'])
    // What the ground carries and what rolls is the whole weight.
    expect((parts.ground[0]!.dragN / 0.6 + parts.rollersN / 0.1) / lbN / ((lbPerFt * lengthM) / ftM)).toBeCloseTo(1, 3)
  })

  it('round a bend grows by e^(µφ), hand integral', () => {
    // All on rollers at 0.1, level: 45° with R = 20 m from 30 m − 20·tan 22.5° = 21.716 m, arc 15.708 m. F in front of it: 0.1·w·(L − what is past it).
    // F1 = 0.1 w a with a = tail to arc; F2 = (F1 + w R)·e^(0.1·π/4) − w R (µs = µg = 0.1, c/µg = w R); then 0.1 w b.
    const run = runOf(siteOf({ run: { surfaces: ['grass'], vertices: [{ xM: 30, yM: 0, radiusM: 20 }, { xM: 100, yM: 70, radiusM: null }] } }, machineAt0(), rackAtInfeed(), ...rollersAt(11 * ftM, 320 * ftM, 11 * ftM)))
    const pull = last(run)
    const w = pull.weightN / pull.lengthM
    const arcFromM = 30 - 20 * Math.tan(Math.PI / 8)
    const arcM = (20 * Math.PI) / 4
    const [beforeM, behindM] = [arcFromM - (pull.noseM - pull.lengthM), pull.noseM - arcFromM - arcM]
    const f2 = (0.1 * w * beforeM + w * 20) * Math.exp((0.1 * Math.PI) / 4) - w * 20
    expect(pull.pullN / (f2 + 0.1 * w * behindM)).toBeCloseTo(1, 6)
    expect(pull.parts.bendsN).toBeCloseTo(f2 - 0.1 * w * beforeM - 0.1 * w * arcM, 3)
  })

  it('shows the stiffness at a bend apart: 4·µ·(EI/R)/a with a = 15 ft, and its guide loads', () => {
    const site = siteOf({ run: { surfaces: ['grass'], vertices: [{ xM: 30, yM: 0, radiusM: 20 }, { xM: 100, yM: 70, radiusM: null }] } }, ...onRollers)
    const pull = last(runOf(site))
    const guideN = site.pipe.stiffnessNm2('pull')! / 20 / (15 * ftM)
    expect(pull.guides).toHaveLength(1)
    expect(pull.guides[0]!.guideLoadN).toBeCloseTo(guideN, 6)
    // Two guides where the bend begins, whose drag grows round the arc, two where it ends.
    expect(pull.stiffnessN).toBeCloseTo(2 * 0.1 * guideN * (1 + Math.exp((0.1 * Math.PI) / 4)), 6)
    expect(pull.needN).toBeCloseTo(pull.pullN + pull.stiffnessN + pull.breakawayN, 6)
  })
})

describe('start of a pull', () => {
  it('takes half the friction more, not half the pull: 10 % of the weight down a 5 % fall', () => {
    // 1.5 · 0.1 − 0.05 = 0.10 of the weight; half more of the pull would say 0.075.
    const { needN, weightN, pullN, breakawayN } = last(runOf(siteOf(fall(0.05), ...onRollers)))
    expect(pullN / weightN).toBeCloseTo(0.05, 3)
    expect(breakawayN / weightN).toBeCloseTo(0.05, 3)
    expect(needN / weightN).toBeCloseTo(0.1, 3)
  })
})

describe('what may take the pull', () => {
  const puller = (figures: Record<string, number | null>, over: Record<string, unknown> = {}, at = free(130, 0)) => withFigures('puller', 'puller:1', at, figures, over)
  const all = { towRatingN: 20_000, massKg: 2000, ropeRatingN: 30_000, ropeLengthM: 9 }

  it('is the smaller of rating and grip; a winch has no grip', () => {
    // 2,000 kg on grass: 0.5 · 2000 · 9.80665 = 9,807 N.
    const by = (over: Record<string, unknown>) => last(runOf(siteOf({}, ...onRollers, puller(all, over))))
    expect(by({})).toMatchObject({ usableTowBy: 'grip', usableTowIsWhole: true, weakLink: 'puller' })
    expect(by({}).usableTowN).toBeCloseTo(9806.65, 2)
    expect(by({ pullerKind: 'winch' })).toMatchObject({ usableTowN: 20_000, usableTowBy: 'rating' })
  })

  it('is never taken as whole while half of it is unknown, and names no weak link then', () => {
    const pull = last(runOf(siteOf({}, ...onRollers, puller({ ...all, massKg: null }))))
    expect(pull).toMatchObject({ usableTowN: 20_000, usableTowIsWhole: false, weakLink: null })
    expect(last(runOf(siteOf({}, ...onRollers)))).toMatchObject({ usableTowN: null, ropeN: null, weakLink: null, ropeLeadN: null })
  })

  it('names the rope, or the pipe, where that gives first', () => {
    expect(last(runOf(siteOf({}, ...onRollers, puller({ ...all, ropeRatingN: 5000 }))))).toMatchObject({ weakLink: 'rope' })
    expect(last(runOf(siteOf({}, ...onRollers, puller({ towRatingN: 1e6, massKg: 1e5, ropeRatingN: 1e6, ropeLengthM: 9 }, { pullerKind: 'winch' }))))).toMatchObject({ weakLink: 'pipe' })
  })

  it('is the allowable load at wall temperature and duration by the edition of the job', () => {
    // ASTM F1804: 0.4 · f_t · 3,500 psi · π·OD²·(1/DR − 1/DR²); f_t 1.0 to 1 h, 0.95 to 12 h (from memory, confirm).
    const allowed = (job: Record<string, unknown>): number => last(runOf(siteOf({ job: { wallTemperatureC: { value: 23, basis: 'measured' }, ...job } }, ...onRollers))).allowableN!
    const hand = 0.4 * 3500 * Math.PI * 10.75 ** 2 * (1 / 17 - 1 / 289)
    expect(allowed({}) / lbN / hand).toBeCloseTo(1, 3)
    expect(allowed({ pullDurationH: { value: 8, basis: 'jobRule' } }) / lbN / hand).toBeCloseTo(0.95, 3)
    // 123 °F: 50 °F over 73, less 0.6 % each (house rule without a source).
    expect(allowed({ wallTemperatureC: { value: (123 - 32) / 1.8, basis: 'measured' } }) / lbN / hand).toBeCloseTo(0.7, 2)
  })

  it('adds what a winch out of line draws aside: F/cos θ', () => {
    // A winch 20 m ahead of the last place of the nose (97.38 m) and 15 m aside.
    const pull = last(runOf(siteOf({}, ...onRollers, puller(all, { pullerKind: 'winch' }, free(97.377 + 20, 15)))))
    expect(pull.ropeLeadRad!).toBeGreaterThan(0)
    const along = pull.pullN + pull.breakawayN
    expect(pull.needN).toBeCloseTo(along / Math.cos(pull.ropeLeadRad!), 6)
    // The pull is hardest at the start of its stage, 40 ft short of that: 15 m aside over 32.19 m ahead.
    expect(Math.tan(pull.ropeLeadRad!)).toBeCloseTo(15 / (97.377 + 20 - pull.noseM), 6)
    expect(last(runOf(siteOf({}, ...onRollers, puller(all, { pullerKind: 'winch' }, free(50, 15))))).ropeLeadN).toBeNull()
  })
})

describe('run-away and hold-back', () => {
  it('starts where the fall passes the friction of rollers: never at 1.9 %, at the first pull at 3 %', () => {
    expect(runOf(siteOf(fall(0.019), ...onRollers)).hold.exit).toMatchObject({ fromStageId: null, runAwayN: 0 })
    const run = runOf(siteOf(fall(0.03), ...onRollers))
    expect(run.hold.exit).toMatchObject({ fromStageId: 'pull:1', worstStageId: 'pull:7' })
    // Leaves with 0.03 − 0.02 of the weight; tether 0.03 of it, anchor twice that.
    const { weightN } = last(run)
    expect(run.hold.exit.runAwayN / weightN).toBeCloseTo(0.01, 3)
    expect(run.hold.exit.tetherN / weightN).toBeCloseTo(0.03, 3)
    expect(run.hold.exit.anchorN).toBeCloseTo(2 * run.hold.exit.tetherN, 9)
    expect(run.stages.find(({ stage }) => stage.id === 'pull:1')!.opening!.holdFirst).toEqual(['exit'])
  })

  it('is told for the other end where the ground rises to the exit', () => {
    const run = runOf(siteOf(fall(-0.05), ...onRollers))
    expect(run.hold.infeed).toMatchObject({ fromStageId: 'pull:1' })
    expect(run.hold.exit.fromStageId).toBeNull()
    expect(run.hold.infeed.runAwayN / last(run).weightN).toBeCloseTo(0.03, 3)
  })

  it('begins only when enough of the string lies on the steep part', () => {
    // Level for 60 m, then 8 % down: the string leaves when its mean fall passes 2 %.
    const level = (id: string, xM: number, levelM: number) => withFigures('level', id, free(xM, 0), { levelM })
    const run = runOf(siteOf({}, ...onRollers, level('level:1', 60, 0), level('level:2', 100, -3.2), level('level:3', 30, 0)))
    const from = Number(run.hold.exit.fromStageId!.split(':')[1])
    expect(from).toBeGreaterThan(4)
    // Pull k ends with its nose at L(k + 1) and its tail at 0: mean fall 0.08·(L − 60)/L. Passes 0.02 where L = 80 m, 6.6 sticks: string of 7, pull 6.
    expect(from).toBe(6)
  })

  it('of a metric string on a 7 % bench is 6.5 to 13 kN at friction 0.05 to 0.03, tether 22.9 kN', () => {
    // 630 SDR 17, 69.6 kg/m, 480 m: w L = 327.6 kN; · 0.07 = 22.9 kN; less 0.02 (our low value for rollers): 16.4 kN.
    const site = siteOf({ ...fall(0.07), job: { pipe: { system: 'metric', size: '630', dr: 17, material: 'PE100' }, stickLengthM: 12, neededLengthM: 478, jointLossM: { value: 0.03, basis: 'measured' } } }, machineAt0(), rackAtInfeed(), ...rollersAt(4, 480, 4))
    const { hold } = runOf(site)
    expect(hold.exit.tetherN / 1000).toBeGreaterThan(22.4)
    expect(hold.exit.tetherN / 1000).toBeLessThan(23.4)
    expect(hold.exit.runAwayN / hold.exit.tetherN).toBeCloseTo(5 / 7, 2)
  })
})

describe('drag the carriage feels', () => {
  it('with the carriage on the infeed is that of the loose stick at every joint: 35 lb', () => {
    // 0.1 · 8.783 · 40 = 35.1 lb, whatever hangs on the other side.
    const drags = dragsOf(runOf(siteOf({}, ...onRollers)))
    expect(drags).toHaveLength(7)
    for (const { side, movingN, startN } of drags) {
      expect(side).toBe('infeed')
      expect(movingN / lbN).toBeCloseTo(0.1 * lbPerFt * 40, 1)
      expect(startN / movingN).toBeCloseTo(1.5, 6)
    }
  })

  it('with the carriage on the exit is that of the whole string drawn back', () => {
    const drags = dragsOf(runOf(siteOf({}, machineAt0({ carriageSide: 'exit' }), rackAtInfeed(), ...rollersAt(11 * ftM, 320 * ftM, 11 * ftM))))
    // L(7) = 280 ft − 6 · 7/8 in.
    expect(drags[6]!.movingN / lbN).toBeCloseTo(0.1 * lbPerFt * (280 - 5.25 / 12), 0)
  })

  it('is below zero with low friction where the slope closes the carriage', () => {
    // 5 % down to the exit, carriage on the infeed: 0.02 − 0.05 of 351 lb.
    const [drag] = dragsOf(runOf(siteOf(fall(0.05), ...onRollers)))
    expect(drag!.lowN / lbN).toBeCloseTo(-0.03 * lbPerFt * 40, 0)
  })

  it('goes on the gauge by the piston area, beside the fusion force; without it there is no pressure', () => {
    const machine = (pistonAreaM2: number | null) => withFigures('machine', 'machine:1', { at: 'onRun', runId: 'run:1', runningM: 0, offsetM: 0, turnRad: 0 }, { pistonAreaM2 })
    const with6 = dragsOf(runOf(siteOf({}, machine(6 * 0.0254 ** 2), rackAtInfeed(), ...rollersAt(11 * ftM, 320 * ftM, 11 * ftM))))[0]!
    // 35.1 lb on 6 in²: 5.9 psi. Face area π·(10.75 − 0.632)·0.632 = 20.1 in², at 75 psi 1,507 lb: 251 psi more.
    expect(with6.pressurePa! / 6894.757).toBeCloseTo(5.86, 1)
    expect(with6.fusionForceN / lbN).toBeCloseTo(75 * Math.PI * (10.75 - 0.632) * 0.632, 0)
    expect(with6.fusionPressurePa! / 6894.757).toBeCloseTo(5.86 + (75 * Math.PI * (10.75 - 0.632) * 0.632) / 6, 0)
    expect(dragsOf(runOf(siteOf({}, ...onRollers)))[0]).toMatchObject({ pressurePa: null, fusionPressurePa: null })
  })
})
