import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { solveContactBeam } from '../../../src/engine/beam/solveContactBeam.ts'
import type { ContactBeamInput, ContactBeamResult } from '../../../src/engine/beam/types.ts'
import { beamCase } from '../../helpers/beamCases.ts'

const RUNS = { numRuns: 120, seed: 20 }
const index = fc.integer({ min: 0, max: 100_000 })
const caseOf = (i: number): ContactBeamInput => beamCase(31, i).input

function transformed(input: ContactBeamInput, change: { x: (x: number) => number; level: (level: number) => number; slope: number }): ContactBeamInput {
  const { x, level, slope } = change
  const points = (list: readonly { xM: number; levelM: number }[]): { xM: number; levelM: number }[] => list.map((p) => ({ ...p, xM: x(p.xM), levelM: level(p.levelM) }))
  const start = input.startM ?? 0
  const ends = [x(start), x(start + input.lengthM)]
  const isMirror = ends[1]! < ends[0]!
  const groundX = input.ground ? input.ground.xM.map(x) : []
  const groundLevel = input.ground ? input.ground.levelM.map(level) : []
  return {
    ...input,
    startM: Math.min(...ends),
    lengthM: input.lengthM,
    supports: points(input.supports),
    clamps: (input.clamps ?? []).map((c) => ({ xM: x(c.xM), levelM: level(c.levelM), slopeRatio: slope * c.slopeRatio })),
    ground: input.ground ? { xM: isMirror ? groundX.reverse() : groundX, levelM: isMirror ? groundLevel.reverse() : groundLevel } : null,
  }
}

function weightN(input: ContactBeamInput): number {
  return input.section.lineLoadNPerM * input.lengthM
}

/** Two results of one case are the same within rounding; `place` maps x of the first to x of the second. */
function expectSame(input: ContactBeamInput, a: ContactBeamResult, b: ContactBeamResult, place: (x: number) => number, shiftM: number): void {
  expect(b.status).toBe(a.status)
  if (a.status !== 'ok') return
  const start = input.startM ?? 0
  for (let i = 0; i <= 20; i++) {
    const x = start + (input.lengthM * i) / 20
    expect(Math.abs(b.at(place(x)).levelM - a.at(x).levelM - shiftM)).toBeLessThan(1e-8)
  }
  const largest = Math.max(weightN(input), ...a.supports.map((s) => Math.abs(s.reactionN)))
  a.supports.forEach((s, i) => expect(Math.abs(s.reactionN - b.supports[i]!.reactionN)).toBeLessThan(1e-6 * largest))
  expect(Math.abs(a.groundTotalN - b.groundTotalN)).toBeLessThan(1e-6 * largest)
}

describe('laws of the contact beam', () => {
  it('forces balance the weight, and their moments too, to 1e-9', () => {
    fc.assert(
      fc.property(index, (i) => {
        const input = caseOf(i)
        const result = solveContactBeam(input)
        expect(result.status).toBe('ok')
        const start = input.startM ?? 0
        const centre = start + input.lengthM / 2
        let force = 0
        let moment = 0
        for (const [k, s] of result.supports.entries()) {
          force += s.reactionN
          moment += s.reactionN * (input.supports[k]!.xM - centre)
        }
        for (const c of result.clamps) {
          force += c.forceN
          moment += c.forceN * (c.xM - centre) + c.momentLeftNm - c.momentRightNm
        }
        force += result.groundTotalN
        const scale = Math.max(weightN(input), ...result.supports.map((s) => Math.abs(s.reactionN)), ...result.clamps.map((c) => Math.abs(c.forceN)))
        expect(Math.abs(force - weightN(input))).toBeLessThan(1e-9 * scale)
        // Lying stretches give no centre of their force here; and joined supports share a place within a micrometre.
        const isTakenWhole = !result.groundContacts.some((g) => g.kind === 'interval') && (input.mergeToleranceM ?? 1e-6) >= 0
        if (!isTakenWhole) return
        for (const g of result.groundContacts) moment += g.forceN * (g.startM - centre)
        const joinedM = input.supports.some((a, k) => input.supports.some((b, m) => m !== k && Math.abs(a.xM - b.xM) <= 1e-6)) ? 1e-6 : 0
        expect(Math.abs(moment)).toBeLessThan((1e-9 * input.lengthM + joinedM) * scale)
      }),
      RUNS,
    )
  })

  it('no one-way support pulls, and none both carries and stands clear', () => {
    fc.assert(
      fc.property(index, (i) => {
        const input = caseOf(i)
        solveContactBeam(input).supports.forEach((s, k) => {
          if (!input.supports[k]!.twoWay) expect(s.reactionN).toBeGreaterThanOrEqual(0)
          expect(s.gapM).toBeGreaterThanOrEqual(0)
          expect(Math.abs(s.reactionN * s.gapM)).toBe(0)
        })
      }),
      RUNS,
    )
  })

  it('moving everything along and up moves the answer', () => {
    fc.assert(
      fc.property(index, (i) => {
        const input = caseOf(i)
        const moved = transformed(input, { x: (x) => x + 153.25, level: (h) => h - 7.5, slope: 1 })
        expectSame(input, solveContactBeam(input), solveContactBeam(moved), (x) => x + 153.25, -7.5)
      }),
      RUNS,
    )
  })

  it('the mirrored case has the mirrored answer', () => {
    fc.assert(
      fc.property(index, (i) => {
        const input = caseOf(i)
        const mirrored = transformed(input, { x: (x) => -x, level: (h) => h, slope: -1 })
        expectSame(input, solveContactBeam(input), solveContactBeam(mirrored), (x) => -x, 0)
      }),
      RUNS,
    )
  })

  it('feet and pounds give the same as metres and newtons', () => {
    const foot = 0.3048
    const pound = 4.4482216152605
    fc.assert(
      fc.property(index, (i) => {
        const input = caseOf(i)
        const start = input.startM ?? 0
        const inFeet: ContactBeamInput = {
          ...transformed(input, { x: (x) => x / foot, level: (h) => h / foot, slope: 1 }),
          startM: start / foot,
          lengthM: input.lengthM / foot,
          section: {
            bendingStiffnessNm2: input.section.bendingStiffnessNm2 / pound / foot ** 2,
            lineLoadNPerM: (input.section.lineLoadNPerM / pound) * foot,
          },
          bow: input.bow ? { ...input.bow, curvaturePerM: input.bow.curvaturePerM * foot } : null,
          mergeToleranceM: 1e-6 / foot,
        }
        const a = solveContactBeam(input)
        const b = solveContactBeam(inFeet)
        expect(b.status).toBe(a.status)
        const scale = Math.max(weightN(input), ...a.supports.map((s) => Math.abs(s.reactionN)))
        a.supports.forEach((s, k) => expect(Math.abs(s.reactionN - b.supports[k]!.reactionN * pound)).toBeLessThan(1e-6 * scale))
      }),
      RUNS,
    )
  })

  it('a pipe twice as stiff, twice as heavy bends alike with twice the forces', () => {
    fc.assert(
      fc.property(index, (i) => {
        const input = caseOf(i)
        const { bendingStiffnessNm2, lineLoadNPerM } = input.section
        const a = solveContactBeam(input)
        const b = solveContactBeam({ ...input, section: { bendingStiffnessNm2: 2 * bendingStiffnessNm2, lineLoadNPerM: 2 * lineLoadNPerM } })
        const scale = Math.max(weightN(input), ...a.supports.map((s) => Math.abs(s.reactionN)))
        a.supports.forEach((s, k) => expect(Math.abs(2 * s.reactionN - b.supports[k]!.reactionN)).toBeLessThan(1e-6 * scale))
      }),
      RUNS,
    )
  })

  it('a stand set lower never carries more, one set higher never less', () => {
    fc.assert(
      fc.property(index, fc.integer({ min: 0, max: 1000 }), fc.constantFrom(0.001, 0.0127, 0.05), (i, which, byM) => {
        const input = caseOf(i)
        const oneWay = input.supports.filter((s) => !s.twoWay)
        if (oneWay.length < 3) return
        const chosen = input.supports.indexOf(oneWay[which % oneWay.length]!)
        // Joined supports share by count, so the law holds for the place, not for each.
        if (input.supports.some((s, k) => k !== chosen && Math.abs(s.xM - input.supports[chosen]!.xM) <= 1e-6)) return
        const at = (levelM: number): number =>
          solveContactBeam({ ...input, supports: input.supports.map((s, k) => (k === chosen ? { ...s, levelM } : s)) }).supports[chosen]!.reactionN
        const level = input.supports[chosen]!.levelM
        const here = at(level)
        const slackN = 1e-7 * Math.max(here, weightN(input))
        expect(at(level - byM)).toBeLessThanOrEqual(here + slackN)
        expect(at(level + byM)).toBeGreaterThanOrEqual(here - slackN)
      }),
      RUNS,
    )
  })

  it('a heavier pipe never has a smaller total: all forces together are its weight', () => {
    const totalN = ({ supports, clamps, groundTotalN }: ContactBeamResult): number => supports.reduce((sum, s) => sum + s.reactionN, 0) + clamps.reduce((sum, c) => sum + c.forceN, 0) + groundTotalN
    fc.assert(
      fc.property(index, fc.double({ min: 1, max: 5, noNaN: true }), (i, factor) => {
        const input = caseOf(i)
        const heavier = { ...input, section: { ...input.section, lineLoadNPerM: factor * input.section.lineLoadNPerM } }
        const [light, heavy] = [solveContactBeam(input), solveContactBeam(heavier)]
        if (light.status !== 'ok' || heavy.status !== 'ok') return
        expect(totalN(heavy)).toBeGreaterThanOrEqual(totalN(light) - 1e-9 * weightN(heavier))
        expect(Math.abs(totalN(heavy) - weightN(heavier))).toBeLessThan(1e-8 * weightN(heavier))
      }),
      RUNS,
    )
  })

  it('forces of a fixed set of contacts are linear: half-way between two heights they are half-way', () => {
    const section = { bendingStiffnessNm2: 1e5, lineLoadNPerM: 180 }
    const at = (levelM: number): number[] =>
      solveContactBeam({ lengthM: 24, section, supports: [0, 6, 12, 18, 24].map((xM, i) => ({ xM, levelM: i === 2 ? levelM : 0 })) }).supports.map((s) => s.reactionN)
    const [low, middle, high] = [at(0), at(0.004), at(0.008)]
    middle.forEach((force, i) => expect(force).toBeCloseTo((low[i]! + high[i]!) / 2, 8))
  })

  it('the same input gives the same answer to the last bit', () => {
    for (let i = 0; i < 42; i++) {
      const input = caseOf(i)
      expect(JSON.stringify(solveContactBeam(input))).toBe(JSON.stringify(solveContactBeam(input)))
    }
  })

  it('leaves its input alone, frozen as it may be', () => {
    const freeze = (value: unknown): void => {
      if (typeof value !== 'object' || value === null) return
      Object.freeze(value)
      Object.values(value).forEach(freeze)
    }
    for (let i = 0; i < 28; i++) {
      const input = caseOf(i)
      freeze(input)
      expect(solveContactBeam(input).status).toBe('ok')
    }
  })
})
