import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { centroid } from '../../geometry/polygon.ts'
import type { DrawnRing } from './boundary.ts'
import { flat, outline } from './basic.ts'
import { insetRing } from './lines.ts'
import { words } from './words.ts'

/** A bank, a second line inside it, and short waves. */
export const waterPlan = (r: DrawnRing, context: SymbolContext): Primitive[] => {
  const inner = insetRing(r.points, 4 / context.pxPerM)
  const middle = centroid(r.points)
  return [
    outline(flat(r.points), { fill: 'way', hatch: 'water', stroke: 'ink', weight: 'gear' }),
    ...(inner === null ? [] : [outline(flat(inner), { stroke: 'ink2', weight: 'hair' })]),
    ...(middle === null ? [] : words(r.name, middle.xM, middle.yM, context)),
  ]
}
