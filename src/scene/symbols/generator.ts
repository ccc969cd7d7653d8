import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { body, centredBox, outline, solid, type DrawnFigure } from './basic.ts'

export interface DrawnGenerator {
  figures: { lengthM: DrawnFigure; widthM: DrawnFigure }
}

const sizeOf = (r: DrawnGenerator): { lengthM: number; widthM: number } => ({ lengthM: r.figures.lengthM.value ?? 1.8, widthM: r.figures.widthM.value ?? 1 })

export const generatorFootprint = (r: DrawnGenerator): number[] => centredBox(sizeOf(r).lengthM, sizeOf(r).widthM)

/** A box with a bolt, exhaust at its head. */
export const generatorPlan = (r: DrawnGenerator, _context: SymbolContext): Primitive[] => {
  const { lengthM, widthM } = sizeOf(r)
  const k = Math.min(lengthM, widthM)
  return [
    outline(centredBox(lengthM, widthM), body),
    outline([0.08 * k, 0.4 * k, -0.22 * k, -0.04 * k, -0.02 * k, -0.04 * k, -0.08 * k, -0.4 * k, 0.22 * k, 0.06 * k, 0.02 * k, 0.06 * k], solid),
    { t: 'circle', xM: lengthM / 2, yM: 0, radiusM: 0.1 * k, ...solid },
  ]
}
