import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { centredBox } from './basic.ts'
import type { DrawnFigure } from './basic.ts'
import { skidLoaderFromAbove } from './vehicles.ts'

export interface DrawnLoader {
  figures: { lengthM: DrawnFigure; widthM: DrawnFigure }
}

const sizeOf = (r: DrawnLoader): { lengthM: number; widthM: number } => ({ lengthM: r.figures.lengthM.value ?? 3.6, widthM: r.figures.widthM.value ?? 1.9 })

export const loaderFootprint = (r: DrawnLoader): number[] => centredBox(sizeOf(r).lengthM, sizeOf(r).widthM)

/** From above, forks ahead. */
export const loaderPlan = (r: DrawnLoader, context: SymbolContext): Primitive[] => skidLoaderFromAbove({ ...sizeOf(r), shiftM: -sizeOf(r).lengthM / 2 }, context)
