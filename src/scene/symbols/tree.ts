import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { curve, outline, stretched } from './basic.ts'
import type { DrawnFigure } from './basic.ts'

export interface DrawnTree {
  figures: { radiusM: DrawnFigure }
}

const radiusOf = (r: DrawnTree): number => r.figures.radiusM.value ?? 2

/** A sixteen-sided ring round the crown. */
export const treeFootprint = (r: DrawnTree): number[] => {
  const radiusM = radiusOf(r)
  return Array.from({ length: 16 }, (_, i) => [radiusM * Math.cos((i * Math.PI) / 8), radiusM * Math.sin((i * Math.PI) / 8)]).flat()
}

/** Lobes of a crown of radius 5. */
const crown = [
  0, -4.6,
  ...curve(0, -4.6, 1.9, -5.4, 3.9, -4, 4, -2.2), ...curve(4, -2.2, 5.6, -1, 5.3, 1.6, 3.9, 2.4), ...curve(3.9, 2.4, 3.6, 4.4, 1.2, 5.3, -0.3, 4.4),
  ...curve(-0.3, 4.4, -2.1, 5.4, -4.3, 4, -4.2, 2.1), ...curve(-4.2, 2.1, -5.7, 0.9, -5.3, -1.5, -3.9, -2.3), ...curve(-3.9, -2.3, -3.7, -4.2, -1.6, -5.3, 0, -4.6),
]

/** From above: a lobed crown, the stem and three limbs. Under a foot across it is a pole: a solid round with a ring. */
export const treePlan = (r: DrawnTree, _context: SymbolContext): Primitive[] => {
  const radiusM = radiusOf(r)
  if (radiusM <= 0.3) return [{ t: 'circle', xM: 0, yM: 0, radiusM, fill: 'sheet', stroke: 'ink', weight: 'gear' }, { t: 'circle', xM: 0, yM: 0, radiusM: radiusM * 0.45, fill: 'ink' }]
  const k = radiusM / 5
  const limb = (x: number, y: number): Primitive => ({ t: 'path', points: [0, 0, x * k, y * k], stroke: 'plant', weight: 'context' })
  return [outline(stretched(crown, k, k), { stroke: 'plant', weight: 'ticks', fill: 'crown' }), limb(-2.4, 1.7), limb(2.6, 0.9), limb(0.5, -3), { t: 'circle', xM: 0, yM: 0, radiusM: 0.5 * k, fill: 'plant' }]
}
