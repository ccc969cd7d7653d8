import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { Vec } from '../../geometry/vector.ts'
import { flat } from './basic.ts'
import { middleOfLongest, placesAlong } from './lines.ts'
import { words } from './words.ts'

export interface DrawnLine {
  points: readonly Vec[]
  name: string
}

const cross: Primitive[] = [
  { t: 'path', points: [-4, -4, 4, 4], stroke: 'ink', weight: 'boundary' },
  { t: 'path', points: [-4, 4, 4, -4], stroke: 'ink', weight: 'boundary' },
]

/** A line with a cross every 20 px. */
export const fencePlan = (r: DrawnLine, context: SymbolContext): Primitive[] => {
  const middle = middleOfLongest(r.points)
  return [
    { t: 'path', points: flat(r.points), stroke: 'ink', weight: 'boundary' },
    ...placesAlong(r.points, 20 / context.pxPerM).map(({ xM, yM }): Primitive => ({ t: 'mark', xM, yM, parts: cross })),
    ...(middle === null ? [] : words(r.name, middle.xM, middle.yM, context, { dyPx: 9 })),
  ]
}
