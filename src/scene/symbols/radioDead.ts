import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { centroid } from '../../geometry/polygon.ts'
import { flat, outline } from './basic.ts'
import type { DrawnRing } from './boundary.ts'
import { words } from './words.ts'

const crossedWaves: Primitive[] = [
  { t: 'arc', xM: 0, yM: -5, radiusM: 5, fromRad: Math.PI / 4, toRad: (3 * Math.PI) / 4, stroke: 'ink2', weight: 'gear' },
  { t: 'arc', xM: 0, yM: -5, radiusM: 10, fromRad: Math.PI / 4, toRad: (3 * Math.PI) / 4, stroke: 'ink2', weight: 'gear' },
  { t: 'path', points: [-9, 7, 9, -7], stroke: 'ink', weight: 'gear' },
]

/** Dotted edge and crossed-out waves in the middle. */
export const radioDeadPlan = (r: DrawnRing, context: SymbolContext): Primitive[] => {
  const middle = centroid(r.points)
  return [
    outline(flat(r.points), { stroke: 'ink2', weight: 'gear', dash: 'missing' }),
    ...(middle === null ? [] : [{ t: 'mark', xM: middle.xM, yM: middle.yM, parts: crossedWaves } as const, ...words(r.name, middle.xM, middle.yM, context, { dyPx: -22 })]),
  ]
}
