import { expect, it } from 'vitest'
import { after, recordOf } from '../../helpers/commands.ts'
import { documentOf, item, job, layout, onRun, run, setUp, yard } from '../../helpers/documents.ts'

const fence = yard(item('fence', 'fence:1', [{ xM: 0, yM: 5 }, { xM: 9, yM: 5 }]))
const points = (document: typeof fence): unknown => recordOf(document, 'fence:1')['points']
const path = documentOf(layout(), job(), setUp(), run({ vertices: [{ xM: 40, yM: 0, radiusM: 8 }] }))

it('a point is moved, added before a position or at the end, and taken away', () => {
  expect(points(after(fence, 'moveVertex', { id: 'fence:1', index: 1, xM: 10, yM: 6 }))).toEqual([{ xM: 0, yM: 5 }, { xM: 10, yM: 6 }])
  const three = after(fence, 'addVertex', { id: 'fence:1', index: 1, xM: 4, yM: 7 })
  expect(points(three)).toEqual([{ xM: 0, yM: 5 }, { xM: 4, yM: 7 }, { xM: 9, yM: 5 }])
  expect(points(after(fence, 'addVertex', { id: 'fence:1', index: 2, xM: 4, yM: 7 }))).toEqual([{ xM: 0, yM: 5 }, { xM: 9, yM: 5 }, { xM: 4, yM: 7 }])
  expect(points(after(three, 'removeVertex', { id: 'fence:1', index: 0 }))).toEqual([{ xM: 4, yM: 7 }, { xM: 9, yM: 5 }])
})
it('too few points, or a position that is none, is refused', () => {
  expect(() => after(fence, 'removeVertex', { id: 'fence:1', index: 0 })).toThrow('points has fewer than 2 entries')
  expect(() => after(fence, 'moveVertex', { id: 'fence:1', index: 2, xM: 0, yM: 0 })).toThrow('index 2 is none of the 2 points')
  expect(() => after(yard(item('stand', 'stand:1', onRun(6))), 'moveVertex', { id: 'stand:1', index: 0, xM: 0, yM: 0 })).toThrow('stand:1 has no points')
})
it('the first corner of a path moves along the axis only and keeps its radius; further ones move freely', () => {
  const two = after(path, 'addVertex', { id: 'run:1', index: 1, xM: 60, yM: 30, radiusM: 12 })
  expect(recordOf(two, 'run:1')['vertices']).toEqual([{ xM: 40, yM: 0, radiusM: 8 }, { xM: 60, yM: 30, radiusM: 12 }])
  expect(recordOf(after(two, 'moveVertex', { id: 'run:1', index: 0, xM: 45, yM: 9 }), 'run:1')['vertices']).toEqual([{ xM: 45, yM: 0, radiusM: 8 }, { xM: 60, yM: 30, radiusM: 12 }])
  expect(recordOf(after(two, 'moveVertex', { id: 'run:1', index: 1, xM: 61, yM: 31 }), 'run:1')['vertices']).toEqual([{ xM: 40, yM: 0, radiusM: 8 }, { xM: 61, yM: 31, radiusM: 12 }])
})
it('a path may lose all its corners and is straight again', () => {
  expect(recordOf(after(path, 'removeVertex', { id: 'run:1', index: 0 }), 'run:1')['vertices']).toEqual([])
})
