import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { body, centredBox, gearLine, odOf, solid, type DrawnFigure } from './basic.ts'

export interface DrawnFitting {
  figures: { lengthM: DrawnFigure }
}

/** Six px at least, along and across. */
const LEAST_HALF_PX = 3

const lengthOf = (r: DrawnFitting): number => r.figures.lengthM.value ?? 0.6

export const fittingFootprint = (r: DrawnFitting, context: SymbolContext): number[] => centredBox(lengthOf(r), odOf(context) * 1.5)

/** From above: a thickened stretch of pipe between two flange rings. */
export const fittingPlan = (r: DrawnFitting, context: SymbolContext): Primitive[] => {
  const leastM = LEAST_HALF_PX / context.pxPerM
  const [half, side] = [Math.max(lengthOf(r) / 2, leastM), Math.max(odOf(context) * 0.75, leastM)]
  const ring = (xM: number): Primitive => ({ t: 'rect', xM: xM - half * 0.12, yM: -side, widthM: half * 0.24, heightM: 2 * side, ...solid })
  return [
    { t: 'rect', xM: -half, yM: -side * 0.72, widthM: 2 * half, heightM: side * 1.44, ...body },
    ring(-half * 0.4), ring(half * 0.4),
    { t: 'path', points: [-half * 0.16, 0, half * 0.16, 0], ...gearLine },
  ]
}
