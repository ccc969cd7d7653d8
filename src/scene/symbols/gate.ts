import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { detailLine, gearLine, solid, type DrawnFigure } from './basic.ts'

export interface DrawnGate {
  figures: { widthM: DrawnFigure }
}

const widthOf = (r: DrawnGate): number => r.figures.widthM.value ?? 4.9

/** The opening and the room its leaf swings through. */
export const gateFootprint = (r: DrawnGate): number[] => {
  const w = widthOf(r) / 2
  return [-w, -0.2, w, -0.2, w, 2 * w, -w, 2 * w]
}

/** Two posts, the leaf turned open and the arc it swings. */
export const gatePlan = (r: DrawnGate, _context: SymbolContext): Primitive[] => {
  const w = widthOf(r) / 2
  return [
    { t: 'circle', xM: -w, yM: 0, radiusM: 0.15, ...solid },
    { t: 'circle', xM: w, yM: 0, radiusM: 0.15, ...solid },
    { t: 'path', points: [-w, 0, -w, 2 * w], ...gearLine },
    { t: 'arc', xM: -w, yM: 0, radiusM: 2 * w, fromRad: 0, toRad: Math.PI / 2, ...detailLine },
  ]
}
