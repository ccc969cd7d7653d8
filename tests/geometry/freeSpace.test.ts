import { difference, FillRule, union } from 'clipper2-ts'
import { describe, expect, it } from 'vitest'
import { fromGrid, toGrid } from '../../src/geometry/buffer.ts'
import { obstructionPaths, type Obstruction } from '../../src/geometry/blockedPieces.ts'
import { areaM2, signedAreaM2 } from '../../src/geometry/polygon.ts'
import { blockedField, freeParts, isInPart, type Opened } from '../../src/geometry/freeSpace.ts'
import { shortestWay } from '../../src/geometry/shortestWay.ts'
import { distanceM, type Vec } from '../../src/geometry/vector.ts'
import { seededRandom } from '../helpers/seededRandom.ts'

const box = (x0: number, x1: number, y0: number, y1: number): Vec[] => [{ xM: x0, yM: y0 }, { xM: x1, yM: y0 }, { xM: x1, yM: y1 }, { xM: x0, yM: y1 }]
const field = [box(0, 20, 0, 10)]
const lengthM = (way: readonly Vec[]): number => way.slice(1).reduce((sum, at, i) => sum + distanceM(way[i]!, at), 0)

describe('free parts of a field', () => {
  it('are one where nothing stands, and two where a wall runs right across', () => {
    expect(freeParts(blockedField(field, []), [])).toHaveLength(1)
    expect(freeParts(blockedField(field, [{ shape: { kind: 'polyline', points: [{ xM: 10, yM: -1 }, { xM: 10, yM: 11 }] }, roomM: 0.5 }]), [])).toHaveLength(2)
  })
  it('are one through a gap a hair wider than the body, two through one a hair narrower', () => {
    // Walls leave 1 m between y 4.5 and 5.5; each is widened by half the body.
    const parts = (bodyM: number): number => freeParts(blockedField(field, [box(9, 11, -1, 4.5), box(9, 11, 5.5, 11)].map((points) => ({ shape: { kind: 'polygon', points }, roomM: bodyM / 2 }))), []).length
    expect([parts(0.999), parts(1.001)]).toEqual([1, 2])
  })
  it('hold holes and what lies inside them apart', () => {
    // A ring wall of 2 to 3 m round the middle: outside with a hole, and an inner part.
    const ring = { shape: { kind: 'polyline' as const, points: [...box(7, 13, 2, 8), { xM: 7, yM: 2 }] }, roomM: 0.5 }
    const parts = freeParts(blockedField(field, [ring]), [])
    expect(parts).toHaveLength(2)
    expect(parts.filter((part) => isInPart(part, { xM: 10, yM: 5 }))).toHaveLength(1)
    expect(parts.filter((part) => isInPart(part, { xM: 7, yM: 5 }))).toEqual([])
  })
  it('are joined by an opening in what is added, not in what stands anyway', () => {
    const wall = { shape: { kind: 'polyline' as const, points: [{ xM: 10, yM: -1 }, { xM: 10, yM: 11 }] }, roomM: 0.5 }
    const opening = { shape: { kind: 'polygon' as const, points: box(8, 12, 4, 6) }, roomM: 0 }
    expect(freeParts(blockedField(field, []), [{ things: [wall], openings: [opening] }])).toHaveLength(1)
    expect(freeParts(blockedField(field, [wall]), [{ things: [], openings: [opening] }])).toHaveLength(2)
  })
})

describe('pieces left uncut', () => {
  const random = seededRandom(41)
  /** Boxes, discs and bent walls over a field of 60 × 40 m, some across its edge; a ring wall with a box in it. */
  const scattered = (count: number): Obstruction[] => [
    { shape: { kind: 'polyline', points: [...box(40, 52, 20, 32), { xM: 40, yM: 20 }] }, roomM: 0.4 }, { shape: { kind: 'polygon', points: box(45, 47, 25, 27) }, roomM: 0.3 },
    ...Array.from({ length: count }, (_, i): Obstruction => {
      const [x, y] = [random() * 62 - 1, random() * 42 - 1]
      if (i % 3 === 0) return { shape: { kind: 'point', point: { xM: x, yM: y } }, roomM: 0.2 + random() }
      if (i % 3 === 1) return { shape: { kind: 'polygon', points: [{ xM: x, yM: y }, { xM: x + 2, yM: y + 0.5 }, { xM: x + 1.5, yM: y + 2 }] }, roomM: random() < 0.2 ? 0 : 0.5 }
      return { shape: { kind: 'polyline', points: [{ xM: x, yM: y }, { xM: x + 1, yM: y + 2 }, { xM: x + 3, yM: y + 2 }] }, roomM: 0.3 }
    }),
  ]
  it('leave the same ground free as one cut of everything does', () => {
    for (let round = 0; round < 12; round += 1) {
      const things = scattered(6 + round * 6)
      const added: Opened[] = [{ things: [{ shape: { kind: 'polyline', points: [{ xM: -1, yM: 10 + round }, { xM: 61, yM: 25 - round }] }, roomM: 0.7 }] }, { things: [{ shape: { kind: 'polygon', points: box(5, 15, 2, 12) }, roomM: 0 }] }]
      const blocked = blockedField([box(0, 60, 0, 40)], things)
      const parts = freeParts(blocked, added)
      const one = difference([toGrid(blocked.grid, box(0, 60, 0, 40))], union([...things, ...added.flatMap((some) => some.things)].flatMap((thing) => obstructionPaths(blocked.grid, thing)), FillRule.NonZero), FillRule.NonZero)
      const rings = fromGrid(blocked.grid, one)
      // One outline a part, the rest holes: as many rings of each turn, and the same area.
      expect(parts).toHaveLength(rings.filter((ring) => signedAreaM2(ring) > 0).length)
      expect(parts.reduce((sum, { holes }) => sum + holes.length, 0)).toBe(rings.filter((ring) => signedAreaM2(ring) < 0).length)
      const freeM2 = parts.reduce((sum, { outline, holes }) => sum + areaM2(outline) - holes.reduce((all, hole) => all + areaM2(hole), 0), 0)
      expect(freeM2).toBeCloseTo(rings.reduce((sum, ring) => sum + signedAreaM2(ring), 0), 2)
      // Free ground lies to the left: outlines counter-clockwise, holes clockwise.
      expect(parts.every(({ outline, holes }) => signedAreaM2(outline) > 0 && holes.every((hole) => signedAreaM2(hole) < 0))).toBe(true)
    }
  })
  it('keep their round corners within 2 cm of the arc and their sides exact', () => {
    // A box 2 × 1 m kept off by 0.5 m: 2 · 1 + perimeter 6 · 0.5 + π · 0.5² = 5.785 m²; chords at most 2 cm inside the arc.
    const [part] = freeParts(blockedField(field, [{ shape: { kind: 'polygon', points: box(5, 7, 4, 5) }, roomM: 0.5 }]), [])
    const m2 = areaM2(part!.holes[0]!)
    expect(m2).toBeLessThan(5 + Math.PI / 4 + 1e-4)
    expect(m2).toBeGreaterThan(5 + Math.PI / 4 - Math.PI * 0.02)
    const xs = part!.holes[0]!.map(({ xM }) => xM)
    expect([Math.min(...xs), Math.max(...xs)].map((xM) => Math.round(xM * 1000) / 1000)).toEqual([4.5, 7.5])
  })
  it('are gone round by the shortest way', () => {
    // Box x 9 to 11, y 2 to 6 free of every edge; from (6, 5) to (14, 5) over its upper corners: √10 + 2 + √10 m.
    const [part] = freeParts(blockedField(field, [{ shape: { kind: 'polygon', points: box(9, 11, 2, 6) }, roomM: 0 }]), [])
    expect(lengthM(shortestWay(part!, { xM: 6, yM: 5 }, { xM: 14, yM: 5 })!)).toBeCloseTo(2 + 2 * Math.sqrt(10), 4)
  })
})

describe('the shortest way', () => {
  it('is straight where nothing stands between', () => {
    const [part] = freeParts(blockedField(field, []), [])
    expect(shortestWay(part!, { xM: 1, yM: 1 }, { xM: 4, yM: 5 })).toEqual([{ xM: 1, yM: 1 }, { xM: 4, yM: 5 }])
  })
  it('goes round the nearer end of a wall', () => {
    // Wall x 9 to 11 from y 0 up to 6: over its corners (9, 6) and (11, 6). From (6, 2) to (14, 2): 5 + 2 + 5 m.
    const [part] = freeParts(blockedField(field, [{ shape: { kind: 'polygon', points: box(9, 11, -1, 6) }, roomM: 0 }]), [])
    expect(lengthM(shortestWay(part!, { xM: 6, yM: 2 }, { xM: 14, yM: 2 })!)).toBeCloseTo(12, 4)
  })
  it('is none to another part', () => {
    const [part] = freeParts(blockedField(field, [{ shape: { kind: 'polyline', points: [{ xM: 10, yM: -1 }, { xM: 10, yM: 11 }] }, roomM: 0.5 }]), [])
    expect(shortestWay(part!, { xM: 1, yM: 1 }, { xM: 19, yM: 1 })).toBeNull()
  })
})
