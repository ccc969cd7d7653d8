import { describe, expect, it } from 'vitest'
import { chordCutRing, springBackRing } from '../../../src/engine/bends/springBack.ts'
import { distanceM, type Vec } from '../../../src/geometry/vector.ts'

const atOrigin = { xM: 0, yM: 0, headingRad: 0 }
const areaM2 = (ring: readonly Vec[]): number => Math.abs(ring.reduce((sum, p, i) => sum + p.xM * ring[(i + 1) % ring.length]!.yM - ring[(i + 1) % ring.length]!.xM * p.yM, 0)) / 2
const hasPoint = (ring: readonly Vec[], xM: number, yM: number): boolean => ring.some((p) => distanceM(p, { xM, yM }) < 1e-9)

describe('ground swept by a pipe that springs back', () => {
  it('reaches from the end of the bent pipe to the end of the straight one', () => {
    // A quarter of a circle of 20 m to the left, 10 m of tail: bent end at 20, 20 + 10; straight length 10π + 10.
    const ring = springBackRing(atOrigin, { radiusM: 20, turnRad: Math.PI / 2, tailM: 10 })
    expect(hasPoint(ring, 0, 0)).toBe(true)
    expect(hasPoint(ring, 20, 20)).toBe(true)
    expect(hasPoint(ring, 20, 30)).toBe(true)
    expect(hasPoint(ring, 10 * Math.PI + 10, 0)).toBe(true)
  })

  it('is as large as the sum of its small swings', () => {
    // Without a tail, small turn φ on length s: end at s²k/2 for curvature k; area of the strip is ∫ s²/(2R) ds = s³/(6R) = 0.208 m² to the first order; a chord 1 mm off the arc on 5 m is 0.003.
    const [radiusM, turnRad] = [100, 0.05]
    const arcM = radiusM * turnRad
    expect(areaM2(springBackRing(atOrigin, { radiusM, turnRad, tailM: 0 }))).toBeCloseTo(arcM ** 3 / (6 * radiusM), 2)
    // A tail ℓ turned by the small angle φ about the bend's middle adds about φ ℓ²/2 + φ ℓ s/2: 0.05 × 200 + 0.05 × 20 × 5/2 = 12.5 m².
    const withTail = areaM2(springBackRing(atOrigin, { radiusM, turnRad, tailM: 20 })) - areaM2(springBackRing(atOrigin, { radiusM, turnRad, tailM: 0 }))
    expect(withTail).toBeCloseTo(12.5, 1)
  })

  it('contains every shape between bent and straight', () => {
    const [radiusM, turnRad, tailM] = [20, 1.2, 15]
    const ring = springBackRing(atOrigin, { radiusM, turnRad, tailM })
    const arcM = radiusM * turnRad
    const inside = (p: Vec): boolean => ring.reduce((odd, a, i) => {
      const b = ring[(i + 1) % ring.length]!
      return a.yM > p.yM !== b.yM > p.yM && p.xM < a.xM + ((p.yM - a.yM) * (b.xM - a.xM)) / (b.yM - a.yM) ? !odd : odd
    }, false)
    for (const share of [0.2, 0.5, 0.8]) {
      const turned = turnRad * share
      const r = arcM / turned
      // A third along the arc and half along the tail of the shape with that share of the curvature.
      expect(inside({ xM: r * Math.sin(turned / 3), yM: r * (1 - Math.cos(turned / 3)) })).toBe(true)
      expect(inside({ xM: r * Math.sin(turned) + 7.5 * Math.cos(turned), yM: r * (1 - Math.cos(turned)) + 7.5 * Math.sin(turned) })).toBe(true)
    }
    // Outside: before the held end, beyond the straight end, inside of the bend.
    for (const [xM, yM] of [[-1, 0.1], [arcM + tailM + 1, 1], [5, 15]] as const) expect(inside({ xM, yM })).toBe(false)
  })

  it('turns with its start and mirrors with the turn', () => {
    const left = springBackRing(atOrigin, { radiusM: 20, turnRad: 0.7, tailM: 5 })
    const right = springBackRing(atOrigin, { radiusM: 20, turnRad: -0.7, tailM: 5 })
    left.forEach((p, i) => expect(right[i]!.yM).toBeCloseTo(-p.yM, 9))
    const turned = springBackRing({ xM: 3, yM: 4, headingRad: Math.PI / 2 }, { radiusM: 20, turnRad: 0.7, tailM: 5 })
    left.forEach((p, i) => expect([turned[i]!.xM, turned[i]!.yM]).toEqual([expect.closeTo(3 - p.yM, 9), expect.closeTo(4 + p.xM, 9)]))
  })

  it('keeps its chords within a millimetre of the arc', () => {
    const ring = springBackRing(atOrigin, { radiusM: 50, turnRad: 1, tailM: 0 })
    const firstM = distanceM(ring[0]!, ring[1]!)
    // Sagitta of a chord c: c²/(8 R).
    expect(firstM ** 2 / (8 * 50)).toBeLessThanOrEqual(0.001 + 1e-9)
  })

  it('refuses a radius of nothing and more than a half turn', () => {
    expect(() => springBackRing(atOrigin, { radiusM: 0, turnRad: 1, tailM: 0 })).toThrow('radiusM')
    expect(() => springBackRing(atOrigin, { radiusM: 1, turnRad: 4, tailM: 0 })).toThrow('turnRad')
  })
})

describe('a corner cut between two guides', () => {
  it('is the segment between arc and chord', () => {
    // R²(φ − sin φ)/2 for R = 20 m, φ = 1: 400 × (1 − 0.841471)/2 = 31.706 m².
    expect(areaM2(chordCutRing(atOrigin, { radiusM: 20, turnRad: 1 }))).toBeCloseTo(31.706, 1)
  })
})
