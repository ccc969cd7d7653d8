import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { atLeastSixPx, body, centredBox, detailOf, gearLine, outline, solid } from './basic.ts'
import type { DrawnFigure } from './basic.ts'

export interface DrawnAnchor {
  figures: { tetherLengthM: DrawnFigure }
}

export const anchorFootprint = (_r: DrawnAnchor): number[] => centredBox(0.6, 0.6)

/** From above: a ring with a solid triangle on a bar, and the tether leaving down-string. */
export const anchorPlan = (r: DrawnAnchor, context: SymbolContext): Primitive[] => {
  const k = atLeastSixPx(0.6, context.pxPerM)
  const tether: Primitive[] =
    context.onShelf === true || detailOf(context) === 'far' ? [] : [{ t: 'path', points: [0.3 * k, 0, Math.min(2, r.figures.tetherLengthM.value ?? 2), 0], stroke: 'ink', weight: 'rope', dash: 'rope' }]
  return [
    ...tether,
    { t: 'path', points: [-0.3 * k, -0.38 * k, -0.3 * k, 0.38 * k], ...gearLine },
    { t: 'circle', xM: 0, yM: 0, radiusM: 0.3 * k, ...body },
    outline([0.22 * k, 0, -0.14 * k, 0.2 * k, -0.14 * k, -0.2 * k], solid),
    { t: 'circle', xM: 0.3 * k, yM: 0, radiusM: 0.06 * k, ...solid },
  ]
}
