import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { Vec } from '../../geometry/vector.ts'
import { flat, outline } from './basic.ts'
import { middleOfLongest } from './lines.ts'
import { words } from './words.ts'

/** Features carry their own points, in the site frame. */
export interface DrawnRing {
  points: readonly Vec[]
  name: string
}

/** The lot: its ground, and the boundary as long and two short dashes. */
export const boundaryPlan = (r: DrawnRing, context: SymbolContext): Primitive[] => {
  const side = middleOfLongest(r.points)
  return [
    outline(flat(r.points), { fill: 'lot', stroke: 'ink', weight: 'boundary', dash: 'boundary' }),
    ...(side === null ? [] : words(r.name, side.xM, side.yM, context, { ink: 'ink2', dyPx: -14 })),
  ]
}
