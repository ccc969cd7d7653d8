import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pullPathLengthM, reversedPull, solvePull, withFrictionTimes } from '../../../src/engine/pull/solvePull.ts'
import type { PullInput } from '../../../src/engine/pull/types.ts'
import { at, elbow, pull } from './pathBuilders.ts'

const headForceN = (input: PullInput): number => solvePull(input).heads[0]!.forceN

describe('straights by hand', () => {
  it('level: µ·q·L = 0.5·100·50 = 2500 N wherever the head stands', () => {
    const result = solvePull(pull({ headStationsM: [0, 20, 50, 130, 200] }))
    expect(result.heads.map((head) => head.forceN)).toEqual([2500, 2500, 2500, 2500, 2500])
    expect(result.weightN).toBe(5000)
    expect(result.pathLengthM).toBe(200)
  })

  it('the tail load is carried to the head', () => expect(headForceN(pull({ tailLoadN: 300 }))).toBeCloseTo(2800, 9))

  it('uphill 3-4-5: q·L·(µ·cosα + sinα) = 5000·(0.5·0.8 + 0.6) = 5000 N', () => {
    const vertices = [at(0, 0), at(160, 0, { levelM: 120 })]
    const result = solvePull(pull({ vertices }))
    expect(result.pathLengthM).toBe(200) // along the slope
    expect(result.heads[0]!.forceN).toBeCloseTo(5000, 9)
    // full weight down the slope: 5000·0.6
    expect(result.fullTether).toEqual({ forwardN: 0, backwardN: expect.closeTo(3000, 9) })
  })

  it('half the string still on the approach: 25·100·0.5 level and 25·100·(0.4 + 0.6) up', () => {
    const vertices = [at(0, 0), at(160, 0, { levelM: 120 })]
    expect(headForceN(pull({ vertices, headStationsM: [25] }))).toBeCloseTo(1250 + 2500, 9)
  })

  it('a head still before the path lies on the approach with the first leg’s drag', () => expect(headForceN(pull({ headStationsM: [-30] }))).toBe(2500))

  it('two legs of different drag: 20 m at 0.1 behind 30 m at 0.6', () => {
    const vertices = [at(0, 0), at(100, 0), at(200, 0)]
    const input = pull({ vertices, legs: [{ frictionRatio: 0.1 }, { frictionRatio: 0.6 }], headStationsM: [130] })
    expect(headForceN(input)).toBeCloseTo(20 * 100 * 0.1 + 30 * 100 * 0.6, 9)
  })
})

describe('bends by hand', () => {
  it('without weight a bend is a capstan: 1000·e^(0.3·π/2) = 1602 N', () => {
    const vertices = elbow({ guideFrictionRatio: 0.3 })
    const input = pull({ vertices, lineLoadNPerM: 1e-9, tailLoadN: 1000 })
    expect(headForceN(input)).toBeCloseTo(1000 * Math.exp(0.15 * Math.PI), 6)
  })

  it('without guide friction a bend is its length: q·R·µ·φ = 100·12·0.2·π/2', () => {
    const vertices = elbow({ surfaceFrictionRatio: 0.2 })
    const input = pull({ vertices, stringLengthM: 6 * Math.PI, headStationsM: [48 + 6 * Math.PI] })
    expect(headForceN(input)).toBeCloseTo(120 * Math.PI, 9)
  })

  it('with both, dF/dφ = µg·F + q·R·µs gives (F₀ + c/µg)·e^(µg·φ) − c/µg, c = 240', () => {
    const vertices = elbow({ surfaceFrictionRatio: 0.2, guideFrictionRatio: 0.3 })
    const input = pull({ vertices, stringLengthM: 6 * Math.PI + 10, headStationsM: [48 + 6 * Math.PI] })
    const before = 10 * 100 * 0.5
    const factor = Math.exp(0.3 * (Math.PI / 2))
    expect(headForceN(input)).toBeCloseTo((before + 240 / 0.3) * factor - 240 / 0.3, 9)
  })

  it('right and left bends pull alike', () => {
    const right = elbow({ surfaceFrictionRatio: 0.2, guideFrictionRatio: 0.3 }).map((vertex) => ({ ...vertex, yM: -vertex.yM }))
    const left = elbow({ surfaceFrictionRatio: 0.2, guideFrictionRatio: 0.3 })
    expect(headForceN(pull({ vertices: right }))).toBeCloseTo(headForceN(pull({ vertices: left })), 9)
  })

  it('limits: a bend of vanishing angle, radius or friction adds nothing', () => {
    const straight = headForceN(pull({ vertices: [at(0, 0), at(60, 0), at(100, 0)] }))
    const slight = [at(0, 0), at(60, 0, { radiusM: 12, guideFrictionRatio: 0.3, surfaceFrictionRatio: 0.5 }), at(100, 1e-7)]
    expect(headForceN(pull({ vertices: slight }))).toBeCloseTo(straight, 4)
    const smooth = elbow({ radiusM: 1e-9, guideFrictionRatio: 1e-12, surfaceFrictionRatio: 0.5 })
    expect(headForceN(pull({ vertices: smooth }))).toBeCloseTo(2500, 6)
  })

  it('a corner acts on what has passed it: not yet at the corner, fully just beyond it', () => {
    const vertices = elbow({ radiusM: 0, guideFrictionRatio: 0.3 })
    const result = solvePull(pull({ vertices, headStationsM: [60, 60 + 1e-9] }))
    expect(result.heads[0]!.forceN).toBe(2500)
    expect(result.heads[1]!.forceN).toBeCloseTo(2500 * Math.exp(0.15 * Math.PI), 4)
    // the tail just at the corner has passed it: its load is not drawn round
    expect(headForceN(pull({ vertices, headStationsM: [90], stringLengthM: 30, tailLoadN: 1000 }))).toBe(2500) // 1000 + 30·100·0.5
    expect(result.problems).toContainEqual({ kind: 'sharpCorner', vertex: 1, turnRad: expect.closeTo(Math.PI / 2, 12) })
  })
})

describe('run-away', () => {
  const downhill = [at(0, 0), at(160, 0, { levelM: -120 })]

  it('held at 0 and told: 5000·(0.5·0.8 − 0.6) = −1000 N', () => {
    const head = solvePull(pull({ vertices: downhill })).heads[0]!
    expect(head.forceN).toBe(0)
    expect(head.sumN).toBeCloseTo(-1000, 9)
    expect(head.lowestSumN).toBeCloseTo(-1000, 9)
    expect([head.isRunAway, head.isPushingItself]).toEqual([true, false])
  })

  it('begins where the slope passes the angle of friction, tan α = µ (Coulomb)', () => {
    const at45 = (riseM: number) => solvePull(pull({ vertices: [at(0, 0), at(200, 0, { levelM: -riseM })] })).heads[0]!.isRunAway
    expect(at45(99.999)).toBe(false) // tan α just under 0.5
    expect(at45(100)).toBe(false) // balanced to rounding
    expect(at45(100.001)).toBe(true)
  })

  it('a tail on the slope and a head on the level pushes itself, and does not run away', () => {
    // 20 m down: 2000·(0.4 − 0.6) = −400; then 30 m level: 30·100·0.5 = 1500
    const vertices = [at(0, 0), at(160, 0, { levelM: -120 }), at(260, 0, { levelM: -120 })]
    const head = solvePull(pull({ vertices, headStationsM: [230] })).heads[0]!
    expect(head.forceN).toBeCloseTo(1500, 9) // starts again from 0 at the foot of the slope
    expect(head.sumN).toBeCloseTo(1100, 9)
    expect(head.lowestSumN).toBeCloseTo(-400, 9)
    expect([head.isRunAway, head.isPushingItself]).toEqual([false, true])
  })

  it('a load on the tail holds the string back', () => {
    expect(solvePull(pull({ vertices: downhill, tailLoadN: 1500 })).heads[0]).toMatchObject({ isRunAway: false, forceN: expect.closeTo(500, 9) })
  })

  it('the tether must hold the weight down the slope without any drag: 5000·0.6', () => {
    expect(solvePull(pull({ vertices: downhill })).fullTether).toEqual({ forwardN: expect.closeTo(3000, 9), backwardN: 0 })
  })

  it('drawn the other way the same slope is uphill', () => {
    const back = solvePull(reversedPull(pull({ vertices: downhill, headStationsM: [10] })))
    expect(back.heads[0]!.forceN).toBeCloseTo(5000, 9)
    expect(back.heads[0]!.headM).toBe(200) // its own end, not the old station
  })
})

describe('bending stiffness, shown apart', () => {
  const input = pull({ vertices: elbow({ guideFrictionRatio: 0.25, surfaceFrictionRatio: 0 }), stiffness: { flexuralRigidityNm2: 1.2e5, guideSpacingM: 2 } })

  it('each guide takes EI/R/a = 5000 N, four of them drag 4·µ·5000 = 5000 N', () => {
    expect(solvePull(input).bends[0]).toMatchObject({ guideLoadN: 5000, stiffnessDragN: 5000 })
  })

  it('half acts at the start of the bend and half at its end; the plain force stays without it', () => {
    const result = solvePull({ ...input, headStationsM: [40, 48 + 3 * Math.PI, 70] })
    const [before, within, past] = result.heads.map((head, i) => result.withStiffness!.heads[i]!.forceN - head.forceN)
    expect(before).toBe(0)
    expect(within).toBeCloseTo(2500 * Math.exp(0.25 * (Math.PI / 4)), 6) // drawn on round half the bend
    expect(past).toBeCloseTo(2500 * Math.exp(0.25 * (Math.PI / 2)) + 2500, 6)
  })

  it('is null where it is not asked for', () => {
    const result = solvePull(pull({ vertices: elbow() }))
    expect(result.withStiffness).toBeNull()
    expect(result.bends[0]).toMatchObject({ guideLoadN: null, stiffnessDragN: null })
  })
})

describe('bends and limits', () => {
  it('a bend under the least radius is a problem, and unknown is not wide enough', () => {
    const tight = solvePull(pull({ vertices: elbow(), minimumRadiusM: 12.5 }))
    expect(tight.bends[0]).toMatchObject({ vertex: 1, radiusM: 12, minimumRadiusM: 12.5, isWideEnough: false })
    expect(tight.problems).toEqual([{ kind: 'bendTooTight', vertex: 1, radiusM: 12, minimumRadiusM: 12.5 }])
    expect(solvePull(pull({ vertices: elbow(), minimumRadiusM: 12 })).bends[0]!.isWideEnough).toBe(true)
    expect(solvePull(pull({ vertices: elbow() })).bends[0]!.isWideEnough).toBeNull()
  })

  it('overlapping bends are named with what they need', () => {
    const vertices = [at(0, 0), at(20, 0, { radiusM: 6 }), at(20, 9, { radiusM: 12 }), at(60, 9)]
    expect(solvePull(pull({ vertices })).problems).toEqual([{ kind: 'bendsOverlap', leg: 1, neededM: expect.closeTo(18, 9), lengthM: 9 }])
  })

  it('doubling back, a vertical step, a vertex given twice, a path without length are told and give no NaN', () => {
    const cases = {
      doublesBack: [at(0, 0), at(20, 0, { radiusM: 2 }), at(5, 0)],
      verticalStep: [at(0, 0), at(20, 0, { radiusM: 10 }), at(20, 10, { radiusM: 0, levelM: 3 }), at(20, 40)],
      verticesCoincide: [at(0, 0), at(20, 0), at(20, 0), at(40, 0)],
      pathWithoutLength: [at(0, 0), at(0, 0)],
    }
    for (const [kind, vertices] of Object.entries(cases)) {
      const result = solvePull(pull({ vertices }))
      expect(result.problems.map((problem) => problem.kind), kind).toContain(kind)
      expect(Number.isFinite(result.largest.forceN), kind).toBe(true)
      expect(JSON.stringify(result), kind).not.toMatch(/NaN/)
    }
  })

  it('utilisation is the largest pull over the allowable, and unknown stays unknown', () => {
    expect(solvePull(pull({ allowableLoadN: 5000 }))).toMatchObject({ utilisationRatio: 0.5, isWithinAllowable: true })
    expect(solvePull(pull({ allowableLoadN: 2400 })).isWithinAllowable).toBe(false)
    expect(solvePull(pull())).toMatchObject({ utilisationRatio: null, isWithinAllowable: null })
  })
})

describe('laws', () => {
  const bent = (over: Partial<PullInput> = {}): PullInput =>
    pull({ vertices: [at(0, 0), at(60, 0, { radiusM: 12, guideFrictionRatio: 0.2, surfaceFrictionRatio: 0.3, levelM: 2 }), at(60, 40, { levelM: 1 })], ...over })
  const factor = fc.double({ min: 0.1, max: 10, noNaN: true })

  it('twice the weight and tail load is twice the pull', () => {
    fc.assert(
      fc.property(factor, (k) => {
        expect(headForceN(bent({ lineLoadNPerM: 100 * k, tailLoadN: 200 * k }))).toBeCloseTo(headForceN(bent({ tailLoadN: 200 })) * k, 6)
      }),
    )
  })

  it('more friction never pulls easier, a longer string neither', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 3, noNaN: true }), (k) => {
        expect(headForceN(withFrictionTimes(bent(), k))).toBeGreaterThanOrEqual(headForceN(bent()))
        expect(headForceN(bent({ stringLengthM: 50 * k }))).toBeGreaterThanOrEqual(headForceN(bent()) - 1e-9)
      }),
    )
  })

  it('turning and shifting the yard changes nothing', () => {
    const moved = bent().vertices.map((v) => ({ ...v, xM: 500 - v.yM, yM: -300 + v.xM, levelM: v.levelM + 40 }))
    expect(headForceN(bent({ vertices: moved }))).toBeCloseTo(headForceN(bent()), 9)
  })

  it.each([1e-6, 1e6])('lengths times %s and loads per length over it keep every force', (k) => {
    const vertices = bent().vertices.map((v) => ({ ...v, xM: v.xM * k, yM: v.yM * k, levelM: v.levelM * k, radiusM: v.radiusM * k }))
    const scaled = solvePull(bent({ vertices, lineLoadNPerM: 100 / k, stringLengthM: 50 * k }))
    expect(scaled.largest.forceN).toBeCloseTo(solvePull(bent()).largest.forceN, 6)
    expect(scaled.pathLengthM / k).toBeCloseTo(solvePull(bent()).pathLengthM, 9)
  })

  it('an input is not changed', () => {
    const input = bent({ headStationsM: [70, 10] })
    const copy = structuredClone(input)
    solvePull(input)
    reversedPull(input)
    withFrictionTimes(input, 2)
    expect(input).toEqual(copy)
  })
})

describe('malformed input is refused by name', () => {
  it.each<[string, Partial<PullInput>]>([
    ['lineLoadNPerM', { lineLoadNPerM: 0 }],
    ['stringLengthM', { stringLengthM: -1 }],
    ['tailLoadN', { tailLoadN: Number.NaN }],
    ['minimumRadiusM', { minimumRadiusM: 0 }],
    ['allowableLoadN', { allowableLoadN: Infinity }],
    ['vertices[1].radiusM', { vertices: [at(0, 0), at(1, 0, { radiusM: -1 })] }],
    ['vertices[0].xM', { vertices: [at(Number.NaN, 0), at(1, 0)] }],
    ['vertices', { vertices: [at(0, 0)] }],
    ['legs', { legs: [] }],
    ['legs[0].frictionRatio', { legs: [{ frictionRatio: -0.1 }] }],
    ['headStationsM[0]', { headStationsM: [200.1] }],
    ['stiffness.guideSpacingM', { stiffness: { flexuralRigidityNm2: 1, guideSpacingM: 0 } }],
  ])('%s', (name, over) => expect(() => solvePull(pull(over))).toThrow(name))

  it('the path length alone needs no friction', () => expect(pullPathLengthM(elbow())).toBeCloseTo(76 + 6 * Math.PI, 12))
})
