import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { areaM2, boundingBox, centroid, containment, localToWorld, polygonContains, rectangleAt, signedAreaM2, transformPoints, worldToLocal } from '../../src/geometry/polygon.ts'
import { type Vec, distanceM, vec } from '../../src/geometry/vector.ts'

const points = (...pairs: [number, number][]): Vec[] => pairs.map(([x, y]) => vec(x, y))
const square = points([0, 0], [4, 0], [4, 4], [0, 4])

describe('area and centre', () => {
  it.each([
    ['square 4 by 4', square, 16, vec(2, 2)],
    ['triangle', points([0, 0], [6, 0], [0, 3]), 9, vec(2, 1)], // 6·3/2; centre at a third
    ['L of 4 by 4 less 2 by 2', points([0, 0], [4, 0], [4, 2], [2, 2], [2, 4], [0, 4]), 12, vec(5 / 3, 5 / 3)], // (16·2 − 4·3)/12
  ])('%s', (_name, ring, area, centre) => {
    expect(areaM2(ring)).toBeCloseTo(area, 12)
    expect(distanceM(centroid(ring) as Vec, centre)).toBeLessThan(1e-12)
  })

  it('is positive counter-clockwise, negative clockwise', () => {
    expect(signedAreaM2(square)).toBe(16)
    expect(signedAreaM2(square.toReversed())).toBe(-16)
  })

  it('loses no digits at map coordinates', () => {
    const far = square.map((p) => vec(p.xM + 500_000, p.yM + 4_000_000))
    expect(areaM2(far)).toBe(16)
    expect(centroid(far)).toEqual({ xM: 500_002, yM: 4_000_002 })
  })

  it('has an answer for what is left of a collapsed ring', () => {
    expect(areaM2([])).toBe(0)
    expect(centroid([])).toBeNull()
    expect(centroid([vec(3, 5)])).toEqual(vec(3, 5))
    expect(centroid(points([1, 1], [1, 1], [1, 1]))).toEqual(vec(1, 1))
    // there and back along 0 … 4: middle of the line
    expect(centroid(points([0, 0], [4, 0], [2, 0]))).toEqual(vec(2, 0))
    expect(boundingBox([])).toBeNull()
  })
})

describe('containment', () => {
  it('tells inside, boundary and outside exactly', () => {
    expect(containment(square, vec(2, 2))).toBe('inside')
    expect(containment(square, vec(4, 2))).toBe('boundary')
    expect(containment(square, vec(4, 4))).toBe('boundary')
    expect(containment(square, vec(4 + 2 ** -50, 2))).toBe('outside') // one unit in the last place beyond the edge
    expect(containment(square, vec(4.000000001, 2))).toBe('outside')
    expect(containment(square, vec(-1, 4))).toBe('outside') // level with an edge
  })

  it('a loop inside a loop is a hole by the even-odd rule', () => {
    const twice = points([0, 0], [6, 0], [6, 6], [0, 6], [0, 0], [2, 2], [4, 2], [4, 4], [2, 4], [2, 2])
    expect(polygonContains(twice, vec(3, 3))).toBe(false)
    expect(polygonContains(twice, vec(1, 3))).toBe(true)
  })

  it('both loops of a bow-tie are inside, the middle is boundary', () => {
    const bow = points([0, 0], [4, 4], [4, 0], [0, 4])
    expect(containment(bow, vec(0.5, 2))).toBe('inside')
    expect(containment(bow, vec(3.5, 2))).toBe('inside')
    expect(containment(bow, vec(2, 3))).toBe('outside')
    expect(containment(bow, vec(2, 2))).toBe('boundary')
  })

  it('a ring without area has no inside', () => {
    expect(containment(points([0, 0], [4, 0]), vec(2, 0))).toBe('boundary')
    expect(containment(points([0, 0], [4, 0]), vec(2, 1))).toBe('outside')
    expect(containment([], vec(0, 0))).toBe('outside')
  })
})

describe('frames', () => {
  it('a rectangle lies along its heading, corners counter-clockwise', () => {
    const box = rectangleAt({ xM: 10, yM: 20, headingRad: Math.PI / 2 }, { lengthM: 6, widthM: 2 })
    expect(signedAreaM2(box)).toBeCloseTo(12, 12)
    expect(boundingBox(box)).toEqual({ minXM: 9, maxXM: 11, minYM: 17, maxYM: 23 })
  })

  it('local x points along the heading and local y to its left', () => {
    const world = localToWorld({ xM: 1, yM: 1, headingRad: Math.PI / 2 }, vec(2, 3))
    expect(distanceM(world, vec(-2, 3))).toBeLessThan(1e-12) // 2 up, 3 to the left of up
    expect(transformPoints({ xM: 0, yM: 0, headingRad: 0 }, square)).toEqual(square)
  })

  it('there and back is the same place', () => {
    const n = fc.double({ min: -1e4, max: 1e4, noNaN: true })
    fc.assert(
      fc.property(n, n, n, n, n, (xM, yM, headingRad, px, py) => {
        const pose = { xM, yM, headingRad }
        expect(distanceM(worldToLocal(pose, localToWorld(pose, vec(px, py))), vec(px, py))).toBeLessThan(1e-9)
      }),
    )
  })
})
