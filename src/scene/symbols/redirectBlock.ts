import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { atLeastSixPx, body, centredBox, gearLine, outline, solid } from './basic.ts'

export const redirectBlockFootprint = (): number[] => centredBox(1.2, 0.7)

/** A sheave in its cheeks, anchored behind. */
export const redirectBlockPlan = (_r: unknown, context: SymbolContext): Primitive[] => {
  const k = atLeastSixPx(1.2, context.pxPerM)
  return [
    { t: 'path', points: [-0.3 * k, 0, -0.5 * k, 0], ...gearLine },
    outline([-0.5 * k, 0.16 * k, -0.5 * k, -0.16 * k, -0.62 * k, 0], solid),
    { t: 'circle', xM: 0, yM: 0, radiusM: 0.3 * k, ...body },
    { t: 'circle', xM: 0, yM: 0, radiusM: 0.18 * k, ...gearLine },
    { t: 'circle', xM: 0, yM: 0, radiusM: 0.06 * k, ...solid },
  ]
}
