import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { orientation } from '../../src/geometry/orientation.ts'
import { type GroundLevel, type Surface, groundProfile, groundSurface, levelAt } from '../../src/geometry/triangulate.ts'
import { between, distanceM, vec } from '../../src/geometry/vector.ts'
import { seededRandom } from '../helpers/seededRandom.ts'

const level = (xM: number, yM: number, levelM: number): GroundLevel => ({ xM, yM, levelM })
const surfaceOf = (levels: GroundLevel[]): Surface => {
  const surface = groundSurface(levels)
  if (!surface) throw new Error('no surface')
  return surface
}
/** A tent: corners of a 10 m square at 0, its middle at 3. */
const tent = surfaceOf([level(0, 0, 0), level(10, 0, 0), level(10, 10, 0), level(0, 10, 0), level(5, 5, 3)])
const hills = (seed: number, count: number): GroundLevel[] => {
  const random = seededRandom(seed)
  return Array.from({ length: count }, () => level(100 * random(), 60 * random(), 2 * random()))
}

describe('ground between levels', () => {
  it.each([
    ['a level itself', vec(5, 5), 3],
    ['a corner', vec(10, 0), 0],
    ['half-way up one side of the tent', vec(2.5, 5), 1.5],
    ['on the plane over (0,0), (10,0), (5,5): 3·y/5', vec(4, 2), 1.2],
  ])('%s', (_name, point, expectedM) => {
    expect(levelAt(tent, point).levelM).toBeCloseTo(expectedM, 12)
    expect(levelAt(tent, point).isOutside).toBe(false)
  })

  it('says how far the nearest level is', () => {
    expect(levelAt(tent, vec(5, 9)).nearestLevelM).toBe(4)
    expect(levelAt(tent, vec(13, 14)).nearestLevelM).toBe(5) // 3-4-5 from (10, 10)
    expect(levelAt(tent, vec(5, 5)).nearestLevelM).toBe(0)
  })

  it('is exact at every level, and between the lowest and the highest inside', () => {
    const levels = hills(3, 80)
    const surface = surfaceOf(levels)
    for (const p of levels) expect(levelAt(surface, p).levelM).toBeCloseTo(p.levelM, 10)
    const random = seededRandom(4)
    for (let i = 0; i < 300; i++) {
      const { levelM, isOutside } = levelAt(surface, vec(100 * random(), 60 * random()))
      if (!isOutside) expect(levelM).toBeGreaterThanOrEqual(0)
      if (!isOutside) expect(levelM).toBeLessThanOrEqual(2)
    }
  })

  it('triangles run counter-clockwise and cover the hull exactly once', () => {
    const surface = surfaceOf(hills(5, 60))
    const area = (a: GroundLevel, b: GroundLevel, c: GroundLevel): number => ((b.xM - a.xM) * (c.yM - a.yM) - (b.yM - a.yM) * (c.xM - a.xM)) / 2
    let sum = 0
    for (let t = 0; t < surface.triangles.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => surface.levels[surface.triangles[t + k]!]!)
      expect(orientation(a!, b!, c!)).toBe(1)
      sum += area(a!, b!, c!)
    }
    const ring = [...surface.hull].map((i) => surface.levels[i]!)
    const hullArea = ring.reduce((total, p, i) => total + area(ring[0]!, p, ring[(i + 1) % ring.length]!), 0)
    expect(hullArea).toBeGreaterThan(0)
    expect(sum).toBeCloseTo(hullArea, 8)
  })
})

describe('ground beyond the levels', () => {
  it('carries an even slope on exactly, anywhere', () => {
    const slope = (xM: number, yM: number): number => 12 - 0.02 * xM + 0.03 * yM
    const surface = surfaceOf(hills(8, 12).map((p) => ({ ...p, levelM: slope(p.xM, p.yM) })))
    const c = fc.double({ min: -500, max: 500, noNaN: true })
    fc.assert(
      fc.property(c, c, (xM, yM) => {
        expect(levelAt(surface, vec(xM, yM)).levelM).toBeCloseTo(slope(xM, yM), 9)
      }),
    )
  })

  it('beside the tent the overall fall is none, so the level of the nearest edge goes on', () => {
    // the trend of the tent is flat; the edge is at 0
    expect(levelAt(tent, vec(-30, 5))).toMatchObject({ isOutside: true })
    expect(levelAt(tent, vec(-30, 5)).levelM).toBeCloseTo(0, 12)
  })

  it('passes the edge without a step', () => {
    const surface = surfaceOf(hills(9, 30))
    const ring = [...surface.hull].map((i) => surface.levels[i]!)
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length]!
      const edgeM = distanceM(a, b)
      const out = vec(((b.yM - a.yM) / edgeM) * 1e-7, ((a.xM - b.xM) / edgeM) * 1e-7)
      for (const ratio of [0.1, 0.5, 0.9]) {
        const on = between(a, b, ratio)
        const outside = levelAt(surface, vec(on.xM + out.xM, on.yM + out.yM)).levelM
        const inside = levelAt(surface, vec(on.xM - out.xM, on.yM - out.yM)).levelM
        // levels differ by up to 2 m over a few metres: 1e-7 m of way is under 1e-4 m of level even on a sliver
        expect(Math.abs(outside - inside)).toBeLessThan(1e-4)
      }
    })
  })
})

describe('too little to know the ground', () => {
  it.each([
    ['none', []],
    ['one', [level(0, 0, 1)]],
    ['two', [level(0, 0, 1), level(10, 0, 2)]],
    ['three in one place', [level(1, 1, 1), level(1, 1, 2), level(1, 1, 3)]],
    ['three in two places', [level(1, 1, 1), level(1, 1, 2), level(9, 1, 3)]],
    ['in line', [level(0, 0, 1), level(10, 5, 2), level(20, 10, 3), level(40, 20, 0)]],
    ['in line but for a hand’s breadth on 100 m', [level(0, 0, 1), level(50, 0.1, 2), level(100, 0, 3)]],
  ])('%s: null', (_name, levels) => expect(groundSurface(levels)).toBeNull())

  it('three that are not in line are enough', () => {
    expect(groundSurface([level(0, 0, 1), level(50, 4, 2), level(100, 0, 3)])).not.toBeNull()
  })

  it('levels in one place count as one at their mean', () => {
    const surface = surfaceOf([level(0, 0, 1), level(0, 0.0005, 2), level(10, 0, 0), level(0, 10, 0)])
    expect(surface.levels).toHaveLength(3)
    expect(levelAt(surface, vec(0, 0)).levelM).toBeCloseTo(1.5, 12)
  })
})

describe('profile along a line', () => {
  it('over the tent: up to 3 and down, with the kinks where it meets the ridges', () => {
    const profile = groundProfile(tent, vec(0, 5), vec(10, 5))
    expect(profile.map((p) => p.distanceM)).toEqual([0, 5, 10])
    expect(profile.map((p) => p.levelM)).toEqual([0, 3, 0])
  })

  it('straight joins between its points are the surface itself, inside and outside', () => {
    const surface = surfaceOf(hills(11, 40))
    const [from, to] = [vec(-40, -10), vec(150, 80)]
    const profile = groundProfile(surface, from, to)
    expect(profile.length).toBeGreaterThan(10)
    for (let k = 0; k <= 2000; k++) {
      const runningM = (distanceM(from, to) * k) / 2000
      const i = Math.max(1, profile.findIndex((p) => p.distanceM >= runningM - 1e-12))
      const [a, b] = [profile[i - 1]!, profile[i]!]
      const joined = a.levelM + ((b.levelM - a.levelM) * (runningM - a.distanceM)) / (b.distanceM - a.distanceM)
      expect(Math.abs(joined - levelAt(surface, between(from, to, k / 2000)).levelM)).toBeLessThan(1e-8)
    }
  })

  it('a line of no length gives one point', () => {
    expect(groundProfile(tent, vec(5, 5), vec(5, 5))).toEqual([{ distanceM: 0, levelM: 3 }])
  })
})

describe('invariance', () => {
  it('a shift to map coordinates changes no level', () => {
    const levels = hills(12, 25)
    const shifted = levels.map((p) => level(p.xM + 524_288, p.yM + 4_194_304, p.levelM))
    const [here, there] = [surfaceOf(levels), surfaceOf(shifted)]
    const random = seededRandom(13)
    for (let i = 0; i < 200; i++) {
      const p = vec(140 * random() - 20, 100 * random() - 20)
      // 5e-10 m of place, on slopes that may be steep on slivers
      expect(Math.abs(levelAt(here, p).levelM - levelAt(there, vec(p.xM + 524_288, p.yM + 4_194_304)).levelM)).toBeLessThan(1e-6)
    }
  })

  it('raising every level raises the ground', () => {
    const levels = hills(14, 25)
    const raised = surfaceOf(levels.map((p) => ({ ...p, levelM: p.levelM + 7 })))
    for (const p of [vec(50, 30), vec(-20, -20), vec(130, 10)]) expect(levelAt(raised, p).levelM).toBeCloseTo(levelAt(surfaceOf(levels), p).levelM + 7, 10)
  })
})
