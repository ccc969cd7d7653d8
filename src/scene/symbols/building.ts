import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { centroid } from '../../geometry/polygon.ts'
import type { DrawnRing } from './boundary.ts'
import { flat, outline } from './basic.ts'
import { insetRing } from './lines.ts'
import { words } from './words.ts'

/** Walls hatched and 7 px wide on screen, the inside plain, the name within. */
export const buildingPlan = (r: DrawnRing, context: SymbolContext): Primitive[] => {
  const inner = insetRing(r.points, 7 / context.pxPerM)
  const middle = centroid(r.points)
  return [
    outline(flat(r.points), { fill: 'building', hatch: 'building', stroke: 'ink', weight: 'building' }),
    ...(inner === null ? [] : [outline(flat(inner), { fill: 'building', stroke: 'ink2', weight: 'hair' })]),
    ...(middle === null ? [] : words(r.name, middle.xM, middle.yM, context, { sizePx: 13, lotEdge: false })),
  ]
}
