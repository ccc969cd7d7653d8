import { describe, expect, it } from 'vitest'
import { forceAtHead, fullSlopePull, largestForce } from '../../../src/engine/pull/forces.ts'
import { buildTrack } from '../../../src/engine/pull/track.ts'
import type { PullInput, PullVertex } from '../../../src/engine/pull/types.ts'
import { seededRandom } from '../../helpers/seededRandom.ts'
import { at, pull } from './pathBuilders.ts'

const bodyOf = (input: PullInput) => ({
  track: buildTrack(input, -input.stringLengthM, false),
  stringLengthM: input.stringLengthM,
  tailLoadN: input.tailLoadN ?? 0,
  weightN: input.lineLoadNPerM * input.stringLengthM,
})

/** A wandering path with hills, of bends that fit: legs of 30 to 60 m, radii up to 8 m, turns up to 100°. */
function wander(seed: number): PullInput {
  const random = seededRandom(seed)
  const vertices: PullVertex[] = [at(0, 0)]
  let [headingRad, levelM, xM, yM] = [0, 0, 0, 0]
  for (let i = 0; i < 2 + Math.floor(4 * random()); i++) {
    const legM = 30 + 30 * random()
    xM += legM * Math.cos(headingRad)
    yM += legM * Math.sin(headingRad)
    levelM += legM * (0.8 * random() - 0.5)
    headingRad += 3.4 * (random() - 0.5)
    vertices.push(at(xM, yM, { levelM, radiusM: 8 * random(), surfaceFrictionRatio: 0.6 * random(), guideFrictionRatio: random() < 0.2 ? 0 : 0.6 * random() }))
  }
  const legs = vertices.slice(1).map(() => ({ frictionRatio: 0.6 * random() }))
  return pull({ vertices, legs, stringLengthM: 5 + 120 * random(), tailLoadN: random() < 0.3 ? 2000 * random() : 0 })
}

/** The same force by small steps along the string: dF = q·(µ·cosα + sinα)·ds, or (µg·F/R + q·µs)·ds in an arc, held at ≥ 0. */
function steppedForceN(input: PullInput, headM: number, steps: number): number {
  const { pieces } = buildTrack(input, -input.stringLengthM, false)
  const ds = input.stringLengthM / steps
  let forceN = input.tailLoadN ?? 0
  for (let i = 0; i < steps; i++) {
    const s = headM - input.stringLengthM + (i + 0.5) * ds
    const piece = pieces.find((candidate) => s >= candidate.startM && s < candidate.endM)!
    if (piece.law.kind === 'straight') forceN += piece.law.rateNPerM * ds
    else if (piece.law.kind === 'arc') {
      const radiusM = (piece.endM - piece.startM) / piece.law.turnRad
      const gain = (force: number): number => (piece.law.kind === 'arc' ? (piece.law.guideFrictionRatio * force + piece.law.surfaceDragN) / radiusM : 0)
      forceN += gain(forceN + (gain(forceN) * ds) / 2) * ds
    }
    forceN = Math.max(0, forceN)
  }
  return forceN
}

describe('force at the head', () => {
  it('agrees with small steps along the string on 40 seeded paths', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const input = wander(seed)
      const body = bodyOf(input)
      const headM = body.track.lengthM * seededRandom(seed + 1000)()
      const stepped = steppedForceN(input, headM, 40_000)
      // steps of 3 mm at most, each piece end missed by up to half a step: 0.0015 m · 100 N/m, some ten ends
      expect(Math.abs(forceAtHead(body, headM).forceN - stepped), `seed ${seed}`).toBeLessThan(3 + 1e-4 * stepped)
    }
  })

  it('is never negative, and equals the sum where the sum never was', () => {
    for (let seed = 100; seed < 160; seed++) {
      const body = bodyOf(wander(seed))
      for (let k = 0; k <= 20; k++) {
        const head = forceAtHead(body, (body.track.lengthM * k) / 20)
        expect(head.forceN).toBeGreaterThanOrEqual(0)
        expect(head.forceN).toBeGreaterThanOrEqual(head.sumN - 1e-9 * body.weightN)
        if (head.lowestSumN === 0) expect(head.forceN).toBeCloseTo(head.sumN, 6)
      }
    }
  })
})

describe('largest force over all head positions', () => {
  it('is met where it says, and no sampled position beats it, on 150 seeded paths', () => {
    for (let seed = 1; seed <= 150; seed++) {
      const body = bodyOf(wander(seed))
      const { forceN, headM } = largestForce(body)
      const tolerance = 1e-9 * (body.weightN + forceN)
      const beside = [-1e-7, 0, 1e-7].map((shiftM) => forceAtHead(body, Math.min(body.track.lengthM, Math.max(0, headM + shiftM))).forceN)
      expect(Math.max(...beside), `seed ${seed}`).toBeGreaterThan(forceN - 1e-4 * (1 + forceN))
      for (let k = 0; k <= 1500; k++) {
        expect(forceAtHead(body, (body.track.lengthM * k) / 1500).forceN, `seed ${seed}`).toBeLessThanOrEqual(forceN + tolerance)
      }
    }
  })

  it('finds a maximum inside an arc: the tail leaves high drag while the head is still in the bend', () => {
    // 20 m of string at 50 N/m before a bend of R = 5, µ_guide 0.3: with s in the arc F = (1000 − 50·s)·e^(0.06·s),
    // largest where 0.06·(1000 − 50·s) = 50, s = 10/3: F = 833.33·e^0.2
    const vertices = [at(0, 0), at(100, 0, { radiusM: 5, guideFrictionRatio: 0.3 }), at(100, 100)]
    const input = pull({ vertices, stringLengthM: 20, legs: [{ frictionRatio: 0.5 }, { frictionRatio: 0 }] })
    const { forceN, headM } = largestForce(bodyOf(input))
    expect(forceN).toBeCloseTo((2500 / 3) * Math.exp(0.2), 9)
    expect(headM).toBeCloseTo(95 + 10 / 3, 5)
  })

  it('takes the first of several equal maxima', () => {
    expect(largestForce(bodyOf(pull()))).toEqual({ forceN: 2500, headM: 0 })
  })

  it('a thousand bends are no matter', () => {
    const vertices = Array.from({ length: 2001 }, (_, i) => at(10 * i, i % 2 ? 4 : 0, { radiusM: 1, guideFrictionRatio: 0.01, surfaceFrictionRatio: 0.1 }))
    const body = bodyOf(pull({ vertices, stringLengthM: 3000 }))
    expect(largestForce(body).forceN).toBeGreaterThan(forceAtHead(body, 3000).forceN)
  })
})

describe('pull down the slope without drag', () => {
  it('is q times the fall between the ends, the largest either way', () => {
    // up 6 m over 100 m and down again 3 m; a string of 50 m
    const vertices = [at(0, 0), at(100, 0, { levelM: 6 }), at(200, 0, { levelM: 3 })]
    const { forwardN, backwardN } = fullSlopePull(bodyOf(pull({ vertices })))
    const slope1M = Math.hypot(100, 6)
    const slope2M = Math.hypot(100, 3)
    expect(backwardN).toBeCloseTo((100 * 50 * 6) / slope1M, 9)
    expect(forwardN).toBeCloseTo((100 * 50 * 3) / slope2M, 9)
  })
})
