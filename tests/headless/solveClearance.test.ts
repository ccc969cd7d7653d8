import { describe, expect, it } from 'vitest'
import { solveClearanceCase } from '../../src/headless/solveClearance.ts'

/** The example of the contract. */
const example = {
  name: 'example',
  corridor: { pts: [[0, 0], [30, 0]], width: 1.2 },
  obstacles: [
    { type: 'polygon', pts: [[5, 2], [9, 2], [9, 4]] },
    { type: 'polyline', pts: [[0, 3], [30, 3]], width: 0.4 },
    { type: 'point', x: 12, y: -2, radius: 0.5 },
  ],
}

describe('raw case clearance', () => {
  it('solves the example of the contract', () => {
    expect(solveClearanceCase(example)).toEqual({
      name: 'example',
      status: 'ok',
      obstacles: [
        { dist: 2, clearance: expect.closeTo(1.4, 12), hit: false, overlap_area: 0 },
        { dist: 3, clearance: expect.closeTo(2.2, 12), hit: false },
        { dist: 2, clearance: expect.closeTo(0.9, 12), hit: false },
      ],
    })
  })

  it('answers for zero-length, collapsed and contained figures without NaN', () => {
    const answer = JSON.stringify(
      solveClearanceCase({
        corridor: { pts: [[0, 0], [0, 0]], width: 1 },
        obstacles: [
          { type: 'polygon', pts: [[0, 0]] },
          { type: 'polygon', pts: [[1, 0], [2, 0], [3, 0]] },
          { type: 'polygon', pts: [[-1, -1], [1, -1], [1, 1], [-1, 1]] },
          { type: 'polygon', pts: [[-1, -1], [1, 1], [1, -1], [-1, 1]] },
          { type: 'polyline', pts: [[0, 0], [0, 0]], width: 0 },
          { type: 'point', x: 0, y: 0, radius: 0 },
        ],
      }),
    )
    expect(answer).not.toContain('null')
    expect(answer.match(/"dist":0,/g)).toHaveLength(5)
    expect(answer).toContain('"dist":1,')
  })

  it.each<[string, object, string]>([
    ['an unknown field', { colour: 1 }, 'colour is not a known field'],
    ['a corridor without points', { corridor: { pts: [], width: 1 } }, 'corridor.pts has 0 entries'],
    ['a point of three numbers', { corridor: { pts: [[0, 0, 0]], width: 1 } }, 'corridor.pts[0] has 3 entries'],
    ['a negative width', { corridor: { pts: [[0, 0]], width: -1 } }, 'corridor.width is -1'],
    ['an obstacle of another type', { obstacles: [{ type: 'circle', x: 0, y: 0 }] }, 'obstacles[0].type is "circle"'],
    ['an obstacle without a type', { obstacles: [{ x: 0, y: 0 }] }, 'obstacles[0].type is missing'],
    ['a radius on a polygon', { obstacles: [{ type: 'polygon', pts: [[0, 0]], radius: 1 }] }, 'obstacles[0].radius is not a known field'],
    ['too many points', { corridor: { pts: Array.from({ length: 60_000 }, () => [0, 0]), width: 1 }, obstacles: [{ type: 'polygon', pts: Array.from({ length: 60_000 }, () => [0, 0]) }] }, 'at most 100000'],
  ])('refuses %s by name', (_name, over, message) => expect(() => solveClearanceCase({ ...example, ...over })).toThrow(message))
})
