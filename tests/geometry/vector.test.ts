import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { along, between, crossM2, distanceM, dotM2, headingOf, rotate, samePlace, squaredDistanceM2, toTheRight, vec, wrapAngleRad } from '../../src/geometry/vector.ts'

const coordinate = fc.double({ min: -1e6, max: 1e6, noNaN: true })
const place = fc.record({ xM: coordinate, yM: coordinate })
const angle = fc.double({ min: -20, max: 20, noNaN: true })

describe('vectors', () => {
  it('heading 0 is +x and headings turn counter-clockwise', () => {
    expect(headingOf(vec(2, 0))).toBe(0)
    expect(headingOf(vec(0, 3))).toBeCloseTo(Math.PI / 2, 15)
    expect(headingOf(vec(0, 0))).toBe(0)
  })

  it('right of travel along +x is −y', () => {
    const right = toTheRight(0, 2)
    expect(right.xM).toBeCloseTo(0, 15)
    expect(right.yM).toBeCloseTo(-2, 15)
  })

  it('cross is positive where the second points left of the first', () => {
    expect(crossM2(vec(1, 0), vec(0, 1))).toBe(1)
    expect(dotM2(vec(1, 2), vec(3, 4))).toBe(11) // 1·3 + 2·4
  })

  it('between runs from the first (0) to the second (1)', () => {
    expect(between(vec(2, 2), vec(4, 6), 0.25)).toEqual({ xM: 2.5, yM: 3 })
    expect(samePlace(between(vec(2, 2), vec(4, 6), 0), vec(2, 2))).toBe(true)
  })

  it('wraps an angle into (−π, π] without changing the direction', () => {
    expect(wrapAngleRad(Math.PI)).toBe(Math.PI)
    expect(wrapAngleRad(-Math.PI)).toBeCloseTo(Math.PI, 15)
    fc.assert(
      fc.property(angle, (a) => {
        const wrapped = wrapAngleRad(a)
        expect(wrapped).toBeGreaterThan(-Math.PI - 1e-12)
        expect(wrapped).toBeLessThanOrEqual(Math.PI + 1e-12)
        expect(Math.cos(wrapped - a)).toBeCloseTo(1, 9)
      }),
    )
  })

  it('turning keeps lengths, and along undoes heading', () => {
    fc.assert(
      fc.property(place, angle, (p, a) => {
        const size = distanceM(vec(0, 0), p)
        expect(Math.abs(distanceM(vec(0, 0), rotate(p, a)) - size)).toBeLessThanOrEqual(1e-12 * size + 1e-300)
        expect(distanceM(along(headingOf(p), size), p)).toBeLessThanOrEqual(1e-12 * size + 1e-300)
      }),
    )
  })

  it('the squared distance is the square of the distance', () => {
    expect(squaredDistanceM2(vec(1, 1), vec(4, 5))).toBe(25) // 3² + 4²
  })
})
