import { describe, expect, it } from 'vitest'
import { blockedField, freeParts, isInPart } from '../../src/geometry/freeSpace.ts'
import { shortestWay } from '../../src/geometry/shortestWay.ts'
import { distanceM, type Vec } from '../../src/geometry/vector.ts'

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
