import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { DrawnFigure } from './basic.ts'
import { skidLoaderFromAbove, tractorFromAbove, vehicleFromSide, winchFromAbove } from './vehicles.ts'

export interface DrawnPuller {
  pullerKind: 'tractor' | 'loader' | 'winch'
  figures: { lengthM: DrawnFigure; widthM: DrawnFigure; ropeLengthM: DrawnFigure }
}

const sizeOf = (r: DrawnPuller): { lengthM: number; widthM: number; shiftM: number } => ({ lengthM: r.figures.lengthM.value ?? 3.6, widthM: r.figures.widthM.value ?? 2, shiftM: 0 })

/** The place of a puller is its rope end, so the vehicle lies ahead of it. */
export const pullerFootprint = (r: DrawnPuller): number[] => {
  const { lengthM, widthM } = sizeOf(r)
  return [0, -widthM / 2, lengthM, -widthM / 2, lengthM, widthM / 2, 0, widthM / 2]
}

/** From above, rope end at the origin. The rope itself runs to the nose and is drawn by the sheet; a stub shows where it leaves. */
export const pullerPlan = (r: DrawnPuller, context: SymbolContext): Primitive[] => {
  const size = sizeOf(r)
  const stub: Primitive = { t: 'path', points: [-Math.min(1.2, r.figures.ropeLengthM.value ?? 1.2), 0, 0, 0], stroke: 'ink', weight: 'rope', dash: 'rope' }
  const vehicle = r.pullerKind === 'tractor' ? tractorFromAbove(size, context) : r.pullerKind === 'loader' ? skidLoaderFromAbove(size, context) : winchFromAbove(size)
  return [stub, ...vehicle]
}

export const pullerSection = (r: DrawnPuller, context: SymbolContext & { saddleM: number | null }): Primitive[] => vehicleFromSide(r.pullerKind, sizeOf(r).lengthM, context)
