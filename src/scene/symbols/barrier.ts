import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { flat } from './basic.ts'
import type { DrawnLine } from './fence.ts'
import { middleOfLongest, placesAlong } from './lines.ts'
import { words } from './words.ts'

const board: Primitive[] = [
  { t: 'rect', xM: -7, yM: -3, widthM: 14, heightM: 6, stroke: 'ink', weight: 'context', fill: 'sheet' },
  { t: 'path', points: [-5, -3, -1, 3, 2, 3, -2, -3], closed: true, fill: 'ink' },
  { t: 'path', points: [2, -3, 6, 3, 7, 3, 7, 0, 5, -3], closed: true, fill: 'ink' },
]

/** A line with a striped board every 34 px. */
export const barrierPlan = (r: DrawnLine, context: SymbolContext): Primitive[] => {
  const middle = middleOfLongest(r.points)
  return [
    { t: 'path', points: flat(r.points), stroke: 'ink', weight: 'context' },
    ...placesAlong(r.points, 34 / context.pxPerM).map(({ xM, yM }): Primitive => ({ t: 'mark', xM, yM, parts: board })),
    ...(middle === null ? [] : words(r.name, middle.xM, middle.yM, context, { dyPx: 9 })),
  ]
}
