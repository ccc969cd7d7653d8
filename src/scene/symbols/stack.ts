import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { centredBox, odOf, outline, part, type DrawnFigure } from './basic.ts'
import { lyingSticks } from './sticks.ts'

export interface DrawnStack {
  figures: { lengthM: DrawnFigure; widthM: DrawnFigure }
}

const sizeOf = (r: DrawnStack): { lengthM: number; widthM: number } => ({ lengthM: r.figures.lengthM.value ?? 12.192, widthM: r.figures.widthM.value ?? 2.4 })

export const stackFootprint = (r: DrawnStack): number[] => centredBox(sizeOf(r).lengthM, sizeOf(r).widthM)

/** Sticks side by side on two timbers, as many as fit the width. */
export const stackPlan = (r: DrawnStack, context: SymbolContext): Primitive[] => {
  const { lengthM, widthM } = sizeOf(r)
  const od = odOf(context)
  const count = Math.max(1, Math.min(20, Math.floor(widthM / od)))
  const pitchM = widthM / count
  const timber = (xM: number): Primitive => outline([xM - 0.12, -widthM / 2 - 0.25, xM + 0.12, -widthM / 2 - 0.25, xM + 0.12, widthM / 2 + 0.25, xM - 0.12, widthM / 2 + 0.25], part)
  return [timber(-lengthM * 0.29), timber(lengthM * 0.29), ...lyingSticks(count, { toM: lengthM / 2, firstM: -((count - 1) / 2) * pitchM, pitchM }, context, lengthM)]
}
