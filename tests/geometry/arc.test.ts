import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type PathVertex, pathFromVertices, pathPoints, pointBesidePath, pointOnPath, projectOnPath } from '../../src/geometry/arc.ts'
import { distanceM, vec } from '../../src/geometry/vector.ts'

const vertex = (xM: number, yM: number, radiusM = 0): PathVertex => ({ xM, yM, radiusM })
/** 60 m along +x, a left turn of 90° on 12 m, on to (60, 40). */
const elbow = pathFromVertices([vertex(0, 0), vertex(60, 0, 12), vertex(60, 40)])

describe('path with a bend', () => {
  it('is 48 + 6π + 28 long: each tangent takes R·tan 45° = 12, the arc is R·π/2', () => {
    expect(elbow.lengthM).toBeCloseTo(48 + 6 * Math.PI + 28, 12)
    expect(elbow.bends).toHaveLength(1)
    expect(elbow.bends[0]).toMatchObject({ vertex: 1, radiusM: 12, isFitting: true })
    expect(elbow.bends[0]!.turnRad).toBeCloseTo(Math.PI / 2, 12)
    expect(elbow.bends[0]!.tangentM).toBeCloseTo(12, 12)
  })

  it.each([
    ['start', 0, 0, 0, 0],
    ['end of the first straight', 48, 48, 0, 0],
    ['middle of the arc, centre (48, 12)', 48 + 3 * Math.PI, 48 + 12 * Math.SQRT1_2, 12 - 12 * Math.SQRT1_2, Math.PI / 4],
    ['end of the arc', 48 + 6 * Math.PI, 60, 12, Math.PI / 2],
    ['end', 76 + 6 * Math.PI, 60, 40, Math.PI / 2],
    ['5 m before the start, straight on', -5, -5, 0, 0],
    ['5 m beyond the end, straight on', 81 + 6 * Math.PI, 60, 45, Math.PI / 2],
  ])('%s', (_name, runningM, xM, yM, headingRad) => {
    const pose = pointOnPath(elbow, runningM)
    expect(distanceM(pose, vec(xM, yM))).toBeLessThan(1e-12)
    expect(pose.headingRad).toBeCloseTo(headingRad, 12)
  })

  it.each([
    ['2 m to the right of the first leg', vec(10, -2), 10, 2],
    ['2 m to its left', vec(10, 2), 10, -2],
    ['on the infeed side', vec(-7, 1), -7, -1],
    ['beyond the end, right of travel is +x', vec(63, 50), 86 + 6 * Math.PI, 3],
    ['outside the bend, on the ray of 45°', vec(48 + 13 * Math.SQRT1_2, 12 - 13 * Math.SQRT1_2), 48 + 3 * Math.PI, 1],
    ['inside the bend', vec(48 + 10 * Math.SQRT1_2, 12 - 10 * Math.SQRT1_2), 48 + 3 * Math.PI, -2],
  ])('finds the place beside the path: %s', (_name, point, runningM, offsetM) => {
    const place = projectOnPath(elbow, point)
    expect(place.runningM).toBeCloseTo(runningM, 11)
    expect(place.offsetM).toBeCloseTo(offsetM, 11)
  })

  it('there and back, anywhere nearer than the radius', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 140, noNaN: true }), fc.double({ min: -11, max: 11, noNaN: true }), (runningM, offsetM) => {
        const place = projectOnPath(elbow, pointBesidePath(elbow, { runningM, offsetM }))
        // 1 nm: rounding of squared lengths of some 10⁴ m² (2⁻⁵³ · 10⁴ under a root), far below any tape.
        expect(Math.abs(place.runningM - runningM)).toBeLessThanOrEqual(1e-9)
        expect(Math.abs(place.offsetM - offsetM)).toBeLessThanOrEqual(1e-9)
      }),
    )
  })

  it.each([[1e-9, 11], [1e-9, -11], [1.0000000000000003e-9, 7], [48 + 1e-9, 10], [48 - 1e-9, -10]])(
    'just past a corner of its pieces, at %f m and %f m aside, the foot wins over the end',
    (runningM, offsetM) => {
      // Found by the property above: √(11² + 1e-18) is 11 in doubles, and the end of the piece before won the tie.
      const place = projectOnPath(elbow, pointBesidePath(elbow, { runningM, offsetM }))
      expect(Math.abs(place.runningM - runningM)).toBeLessThanOrEqual(1e-13)
    },
  )

  it('an offset of half a nanometre is lost to rounding, and no more than that', () => {
    // Found by the property above, which took a difference of exactly 5e-10 m for too much.
    const place = projectOnPath(elbow, pointBesidePath(elbow, { runningM: 20, offsetM: 5e-10 }))
    expect(Math.abs(place.offsetM - 5e-10)).toBeLessThanOrEqual(1e-9)
  })

  it('running distance and way gone are the same: small steps add up to the length', () => {
    let sumM = 0
    for (let i = 0; i < 10_000; i++) sumM += distanceM(pointOnPath(elbow, (elbow.lengthM * i) / 10_000), pointOnPath(elbow, (elbow.lengthM * (i + 1)) / 10_000))
    expect(sumM).toBeCloseTo(elbow.lengthM, 5)
  })

  it('drawn as points it stays within the sag of the arc', () => {
    for (const p of pathPoints(elbow, 0.01)) expect(Math.abs(projectOnPath(elbow, p).offsetM)).toBeLessThan(1e-9)
    const drawn = pathPoints(elbow, 0.01)
    drawn.slice(1).forEach((q, i) => {
      const middle = vec((drawn[i]!.xM + q.xM) / 2, (drawn[i]!.yM + q.yM) / 2)
      expect(Math.abs(projectOnPath(elbow, middle).offsetM)).toBeLessThanOrEqual(0.01 + 1e-9)
    })
    expect(pathPoints(elbow, 100).length).toBe(4) // start, arc start, arc end, end
  })
})

describe('bends that do not fit', () => {
  it('an arc that needs more than its leg is drawn smaller and says so', () => {
    const path = pathFromVertices([vertex(0, 0), vertex(10, 0, 12), vertex(10, 40)])
    expect(path.bends[0]).toMatchObject({ isFitting: false, radiusM: 12 })
    expect(path.bends[0]!.drawnRadiusM).toBeCloseTo(10, 12) // the whole first leg
    expect(path.lengthM).toBeCloseTo(5 * Math.PI + 30, 12)
  })

  it('two bends share the leg between them in proportion, and both say so', () => {
    // 90° right after 90°: tangents 6 + 12 on a leg of 9, so half of each
    const path = pathFromVertices([vertex(0, 0), vertex(20, 0, 6), vertex(20, 9, 12), vertex(60, 9)])
    expect(path.bends.map((bend) => bend.isFitting)).toEqual([false, false])
    expect(path.bends[0]!.drawnRadiusM).toBeCloseTo(3, 12)
    expect(path.bends[1]!.drawnRadiusM).toBeCloseTo(6, 12)
  })

  it('tangents that take the leg exactly do fit', () => {
    const path = pathFromVertices([vertex(0, 0), vertex(20, 0, 6), vertex(20, 18, 12), vertex(60, 18)])
    expect(path.bends.map((bend) => bend.isFitting)).toEqual([true, true])
  })

  it('a path that doubles back has no arc there', () => {
    const path = pathFromVertices([vertex(0, 0), vertex(10, 0, 3), vertex(2, 0)])
    expect(path.bends[0]).toMatchObject({ isFitting: false, drawnRadiusM: 0, tangentM: Infinity })
    expect(path.lengthM).toBe(18)
  })
})

describe('degenerate paths', () => {
  it('no vertices and one place have a start, no length, and go on along +x', () => {
    for (const path of [pathFromVertices([]), pathFromVertices([vertex(0, 0)]), pathFromVertices([vertex(0, 0), vertex(0, 0)])]) {
      expect(path.lengthM).toBe(0)
      expect(pointOnPath(path, 3)).toEqual({ xM: 3, yM: 0, headingRad: 0 })
      expect(projectOnPath(path, vec(3, -2))).toEqual({ runningM: 3, offsetM: 2 })
      expect(projectOnPath(path, vec(-3, -2))).toEqual({ runningM: -3, offsetM: 2 })
      expect(pathPoints(path, 0.1)).toEqual([vec(0, 0)])
    }
  })

  it('a vertex given twice changes nothing', () => {
    const twice = pathFromVertices([vertex(0, 0), vertex(0, 0), vertex(60, 0, 12), vertex(60, 40)])
    expect(twice.lengthM).toBe(elbow.lengthM)
    expect(twice.bends[0]!.vertex).toBe(2)
  })

  it('a vertex on a straight leg is no bend', () => {
    const path = pathFromVertices([vertex(0, 0), vertex(30, 0, 5), vertex(60, 0)])
    expect(path.bends).toEqual([])
    expect(path.lengthM).toBe(60)
  })

  it('a sharp corner keeps its radius 0 and both legs whole', () => {
    const path = pathFromVertices([vertex(0, 0), vertex(10, 0), vertex(10, 10)])
    expect(path.lengthM).toBe(20)
    expect(path.bends[0]).toMatchObject({ radiusM: 0, isFitting: true })
    expect(projectOnPath(path, vec(13, -4))).toEqual({ runningM: 10, offsetM: 5 }) // the corner, 3-4-5
  })

  it.each([1e-6, 1e6])('scaled by %s lengths and offsets scale', (factor) => {
    const scaled = pathFromVertices([vertex(0, 0), vertex(60 * factor, 0, 12 * factor), vertex(60 * factor, 40 * factor)])
    expect(scaled.lengthM / factor).toBeCloseTo(elbow.lengthM, 9)
    const place = projectOnPath(scaled, vec(57 * factor, 2 * factor))
    const unscaled = projectOnPath(elbow, vec(57, 2))
    expect(place.runningM / factor).toBeCloseTo(unscaled.runningM, 9)
    expect(place.offsetM / factor).toBeCloseTo(unscaled.offsetM, 9)
  })
})
