import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { centredBox, type DrawnFigure } from './basic.ts'

export interface DrawnMuster {
  figures: { radiusM: DrawnFigure }
}

export const musterFootprint = (r: DrawnMuster): number[] => centredBox(2 * (r.figures.radiusM.value ?? 2), 2 * (r.figures.radiusM.value ?? 2))

const arrow = (sx: number, sy: number): Primitive => ({ t: 'path', points: [sx * 9, sy * 9, sx * 3.5, sy * 7, sx * 7, sy * 3.5], closed: true, fill: 'white' })

/** Green square with four arrows toward the middle (meaning and colour of ISO 7010 E007, drawn by us). */
export const musterPlan = (r: DrawnMuster, context: SymbolContext): Primitive[] => [
  ...(context.onShelf === true ? [] : [{ t: 'circle', xM: 0, yM: 0, radiusM: r.figures.radiusM.value ?? 2, stroke: 'safe', weight: 'context', dash: 'lane' } as const]),
  { t: 'mark', xM: 0, yM: 0, parts: [{ t: 'rect', xM: -11, yM: -11, widthM: 22, heightM: 22, fill: 'safe', stroke: 'sheet', weight: 'context' }, arrow(1, 1), arrow(1, -1), arrow(-1, 1), arrow(-1, -1), { t: 'circle', xM: 0, yM: 0, radiusM: 2.4, fill: 'white' }] },
]
