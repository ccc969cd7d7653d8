import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { body, centredBox, gearLine, outline, type DrawnFigure } from './basic.ts'

export interface DrawnFuel {
  figures: { lengthM: DrawnFigure; widthM: DrawnFigure }
}

const sizeOf = (r: DrawnFuel): { lengthM: number; widthM: number } => ({ lengthM: r.figures.lengthM.value ?? 1.2, widthM: r.figures.widthM.value ?? 0.9 })

export const fuelFootprint = (r: DrawnFuel): number[] => centredBox(sizeOf(r).lengthM, sizeOf(r).widthM)

/** Two drums in a tray. */
export const fuelPlan = (r: DrawnFuel, _context: SymbolContext): Primitive[] => {
  const { lengthM, widthM } = sizeOf(r)
  const radiusM = Math.min(lengthM / 4.6, widthM / 2.4)
  const drum = (xM: number): Primitive[] => [{ t: 'circle', xM, yM: 0, radiusM, ...body }, { t: 'circle', xM: xM + radiusM * 0.45, yM: 0, radiusM: radiusM * 0.16, ...gearLine }]
  return [outline(centredBox(lengthM, widthM), body), ...drum(-lengthM / 4), ...drum(lengthM / 4)]
}
