import { describe, expect, it } from 'vitest'
import { createBowSolver, sweepBow, wrappedRad, type BowAt, type BowSolver } from '../../src/derive/bow.ts'
import { bowAnswer, bowShapes } from '../../src/derive/bowAnswer.ts'
import { limitsOf } from '../../src/checks/limits.ts'
import { bodies, bodySolverOf, bowCurvaturePerM } from '../../src/derive/bodies.ts'
import type { YardDocument } from '../../src/scene/document.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { solveContactBeam } from '../../src/engine/beam/solveContactBeam.ts'
import { changed, ft, fusionYard, inch, type YardSpec } from '../helpers/fusionYard.ts'

const DEGREE = Math.PI / 180
const solverOf = (document: YardDocument): BowSolver => createBowSolver(deriveSite(document), limitsOf(document))
const solverFor = (bowIn: number, spec: YardSpec = {}): BowSolver => solverOf(fusionYard({ ...spec, job: { ...spec.job, stickBowM: { value: inch(bowIn), basis: 'measured' } } }))
const at = (solver: BowSolver, degrees: number): BowAt => solver.at(degrees * DEGREE)!

describe('a bowed beam under its weight (closed forms)', () => {
  const [L, q, EI] = [12, 100, 200_000]
  const section = { bendingStiffnessNm2: EI, lineLoadNPerM: q }
  it('on two supports at its ends: gravity takes 5qL⁴/384EI from the bow κL²/8', () => {
    // κ = 0.003: bow 0.003·144/8 = 0.054 m. Sag 5·100·12⁴/(384·200,000) = 0.135 m. Ends up: the middle lies 0.054 m below the ends
    // before, 0.189 m after. Ends down: 0.054 m above before, 0.081 m below after.
    const middle = (angleRad: number): number => solveContactBeam({ lengthM: L, section, supports: [{ xM: 0, levelM: 0 }, { xM: L, levelM: 0 }], bow: { curvaturePerM: 0.003, angleRad } }).at(L / 2).levelM
    expect(middle(0)).toBeCloseTo(-(0.054 + 0.135), 9)
    expect(middle(Math.PI)).toBeCloseTo(0.054 - 0.135, 9)
    expect(middle(Math.PI / 2)).toBeCloseTo(-0.135, 9)
  })
  it('on a flat floor lies flat but for free ends of √(2κEI/q), ends up; a small bow leaves only a finger under them', () => {
    // κ = 0.0001: the ends curl up over √(2·0.0001·200,000/100) = 0.632 m, by q·a⁴/(8EI) = 100·0.16/1.6e6 = 1e-5 m.
    // Level at the tip: κa²/2 − q a⁴/8EI with the free end's moment: 0.0001·0.4/2 − 100·0.16/(8·200,000) = 2e-5 − 1e-5 = 1e-5 m.
    const floor = solveContactBeam({ lengthM: L, section, supports: [], ground: { xM: [0], levelM: [0] }, bow: { curvaturePerM: 0.0001, angleRad: 0 } })
    expect(floor.status).toBe('ok')
    expect(floor.at(L / 2).levelM).toBe(0)
    expect(floor.at(0).levelM).toBeCloseTo(1e-5, 9)
    expect(floor.groundContacts.find(({ kind }) => kind === 'interval')!.startM).toBeCloseTo(0.6325, 3)
  })
})

describe('curvature of a stick', () => {
  it('of 1 in over 40 ft is 8b/S²', () => {
    // 8·0.0254/12.192² = 0.001367 1/m.
    expect(bowCurvaturePerM(inch(1), ft(40))).toBeCloseTo(0.001367, 6)
    expect(bowCurvaturePerM(null, ft(40))).toBeNull()
  })
})

describe('the joint with bowed sticks', () => {
  it('on its side, without guides, gapes by κ(a + b)/2·OD on either face', () => {
    // 12 in DR 17, clamps 4 in and 28 in: slope at the end κ((28 − 4)/2 + 4) in = 0.001367·0.4064 = 0.000556; times 12.75 in twice 0.01417 in.
    expect(at(solverFor(1), 90).sidewaysGapM / inch(1)).toBeCloseTo(0.01417, 4)
    expect(at(solverFor(1), 90).uprightGapM).toBeCloseTo(solverFor(1).straight()!.faceGapM, 9)
  })
  it('adds upright and sideways of a face as legs of a right angle', () => {
    const one = at(solverFor(3), 60)
    const face = (which: 'infeed' | 'exit'): number => Math.hypot(one[which].upRatio, one[which].sideRatio) * inch(12.75)
    expect(one.faceGapM).toBeCloseTo(face('infeed') + face('exit'), 12)
    expect(one.faceGapM).toBeLessThan(one.uprightGapM + one.sidewaysGapM)
  })
  it('is the same turned either way, but for the side its ends point to', () => {
    const solver = solverFor(3)
    for (const degrees of [15, 60, 90, 135]) {
      const [left, right] = [at(solver, degrees), at(solver, -degrees)]
      expect(right.faceGapM).toBe(left.faceGapM)
      expect(right.effortRatio).toBe(left.effortRatio)
      expect(right.infeed.sideRatio).toBe(-left.infeed.sideRatio)
      // Held by two clamps the face stands across the arc: ends to the left (+90°) turn the free end of the infeed stick to the left.
      if (degrees === 90) expect(left.infeed.sideRatio).toBeLessThan(0)
    }
    expect(at(solver, 350).faceGapM).toBeCloseTo(at(solver, -10).faceGapM, 12)
    expect(wrappedRad(-Math.PI)).toBe(Math.PI)
  })
  it('without bow is the straight joint at every turn', () => {
    const sweep = sweepBow(solverFor(0))!
    for (const one of sweep.curve) expect(one.faceGapM).toBeCloseTo(sweep.straight.faceGapM, 12)
    expect(sweep.worstGapM).toBeCloseTo(sweep.straight.faceGapM, 12)
    expect(sweep.leastGapByHand.turnRad).toBe(0)
  })
  it('with straight sticks is the joint the other checks know', () => {
    const document = fusionYard({ job: { stickBowM: { value: inch(2), basis: 'measured' } } })
    const site = deriveSite(document)
    const joint = createBowSolver(site, limitsOf(document)).straight()!
    const exit = bodySolverOf(site).solve(bodies.exitString(site, 1, 'closed'))!
    expect(joint.exit.upRatio).toBeCloseTo(exit.result.ends.slopeRatio[0], 12)
  })
  it('is held sideways by a V roller that carries, not by a flat one', () => {
    const flat = fusionYard({ exits: [[20, 0]], job: { stickBowM: { value: inch(3), basis: 'measured' } } })
    const grooved = changed(flat, 'stand:e1', (record) => (record.kind === 'stand' ? { ...record, roller: 'V' } : record))
    const [free, held] = [flat, grooved].map((document) => solverOf(document).at(Math.PI / 2)!)
    // Three holds: L₁ = 24 in, L₂ = 20 ft − 28 in: M = −1.5·EIκ at the outer clamp, and at the inner clamp the slope is
    // κL₁/2 + L₁M/6EI = κL₁/4, half of the free arc's; at the end κ(L₁/4 + a) = 0.00410·0.254 = 0.001042.
    expect(Math.abs(held!.exit.sideRatio)).toBeCloseTo(0.001042, 5)
    expect(Math.abs(free!.exit.sideRatio)).toBeCloseTo(0.001667, 5)
    expect(held!.exit.clampN).toBeGreaterThan(free!.exit.clampN)
  })
})

describe('turning the sticks', () => {
  it('ends up is best where the string hangs free behind the jaws, ends down over a stand at 20 ft', () => {
    const [free, short] = [sweepBow(solverFor(3, { size: '8', dr: 11 }))!, sweepBow(solverFor(3, { size: '8', dr: 11, exits: [[20, 0]] }))!]
    expect(free.leastGap.turnRad).toBeCloseTo(0, 2)
    expect(short.leastGap.turnRad).toBeCloseTo(Math.PI, 2)
  })
  it('finds no turn better than its best among 721 tried one by one', () => {
    for (const spec of [{}, { exits: [[20, 0]] }, { size: '24', exits: [[12.5, 0], [25, 0]] }] as const) {
      const solver = solverFor(2, spec)
      const sweep = sweepBow(solver)!
      const tried = Array.from({ length: 721 }, (_, i) => solver.at((i * Math.PI) / 720)!)
      expect(sweep.leastGap.faceGapM).toBeLessThanOrEqual(Math.min(...tried.map(({ faceGapM }) => faceGapM)) + 1e-9)
      expect(sweep.leastEffort.effortRatio).toBeLessThanOrEqual(Math.min(...tried.map(({ effortRatio }) => effortRatio)) + 1e-6)
      expect(sweep.worstGapM).toBeGreaterThanOrEqual(Math.max(...sweep.curve.map(({ faceGapM }) => faceGapM)))
    }
  })
  it('gives a turn of 15° steps to the hand, no worse than any other of them', () => {
    const sweep = sweepBow(solverFor(3))!
    expect(Math.abs(sweep.leastGapByHand.turnRad / (15 * DEGREE) - Math.round(sweep.leastGapByHand.turnRad / (15 * DEGREE)))).toBeLessThan(1e-9)
    for (let i = 0; i <= 12; i += 1) expect(sweep.leastGapByHand.faceGapM).toBeLessThanOrEqual(at(solverFor(3), 15 * i).faceGapM + 1e-9)
  })
  it('names what is missing: the bow, or what the beam needs', () => {
    const noBow = solverOf(fusionYard())
    expect(noBow.missing.map(({ path }) => path)).toEqual(['stickBowM.value'])
    expect(sweepBow(noBow)).toBeNull()
    expect(solverFor(1, { job: { pipe: null } }).missing.map(({ path }) => path)).toEqual(['pipe'])
  })
})

describe('the picture of the stick', () => {
  it('by itself is the arc through both clamps, with its weight what the beam says', () => {
    const document = fusionYard({ job: { stickBowM: { value: inch(3), basis: 'measured' } } })
    const site = deriveSite(document)
    const solver = createBowSolver(site, limitsOf(document))
    const shapes = bowShapes(site, solver, 0)!
    // Far end of the free arc: κ/2·(40 ft − 4 in)(40 ft − 28 in) = 0.0041·0.5·12.090·11.481 = 0.2846 m above the line.
    expect(shapes.freeM[0]).toBeCloseTo(0.2846, 3)
    expect(shapes.loadedM[0]!).toBeLessThan(shapes.freeM[0]!)
    expect(shapes.supports.map(({ label }) => label)).toEqual(['R2', 'R1'])
  })
})

describe('the answer to the panel', () => {
  it('holds the sweep, the turn asked for and the bounds of the face gap', () => {
    const document = fusionYard({ job: { stickBowM: { value: inch(3), basis: 'measured' } } })
    const answer = bowAnswer(deriveSite(document), limitsOf(document), Math.PI / 3)
    expect(answer.missing).toEqual([])
    expect(answer.at!.turnRad).toBeCloseTo(Math.PI / 3, 12)
    expect(answer.sweep!.leastGap.faceGapM).toBeLessThan(answer.at!.faceGapM)
    // 12.75/17 = 0.75 in of wall; a quarter and a half of a tenth of it.
    expect(answer.checkM! / inch(1)).toBeCloseTo(0.01875, 5)
    expect(answer.fixM! / inch(1)).toBeCloseTo(0.0375, 5)
    expect(structuredClone(answer)).toEqual(answer)
  })
  it('without a bow names it and holds nothing else', () => {
    const document = fusionYard()
    expect(bowAnswer(deriveSite(document), limitsOf(document), 0)).toMatchObject({ sweep: null, at: null, shapes: null, missing: [{ path: 'stickBowM.value' }] })
  })
})

describe('the job’s turn', () => {
  it('bends the pipe of the other checks and of the side view; unknown turn or no bow leaves it straight', () => {
    const solveFor = (job: YardSpec['job']): number => { const site = deriveSite(fusionYard(job === undefined ? {} : { job })); return bodySolverOf(site).solve(bodies.infeedStick(site, 'closed'))!.result.at(ft(-40)).levelM }
    const bow = { value: inch(3), basis: 'measured' } as const
    const straight = solveFor({})
    expect(solveFor({ stickBowM: bow })).toBe(straight)
    expect(solveFor({ stickBowM: { value: 0, basis: 'measured' }, stickBowTurnRad: 0 })).toBe(straight)
    expect(solveFor({ stickBowM: bow, stickBowTurnRad: 0 })).toBeGreaterThan(straight)
    expect(solveFor({ stickBowM: bow, stickBowTurnRad: Math.PI })).toBeLessThan(straight)
  })
})
