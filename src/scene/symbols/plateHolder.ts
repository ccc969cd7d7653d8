import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { atLeastSixPx, body, centredBox, gearLine, outline, type DrawnFigure } from './basic.ts'

export interface DrawnPlateHolder {
  figures: { lengthM: DrawnFigure; widthM: DrawnFigure }
}

const sizeOf = (r: DrawnPlateHolder): { lengthM: number; widthM: number } => ({ lengthM: r.figures.lengthM.value ?? 0.9, widthM: r.figures.widthM.value ?? 0.5 })

export const plateHolderFootprint = (r: DrawnPlateHolder): number[] => centredBox(sizeOf(r).lengthM, sizeOf(r).widthM)

/** A stand with the plate on edge in it and heat rising from it. */
export const plateHolderPlan = (r: DrawnPlateHolder, context: SymbolContext): Primitive[] => {
  const { lengthM, widthM } = sizeOf(r)
  const k = atLeastSixPx(Math.max(lengthM, widthM), context.pxPerM)
  const [l, w] = [(lengthM / 2) * k, (widthM / 2) * k]
  const wave = (xM: number): Primitive => ({ t: 'path', points: [xM, w * 0.3, xM + l * 0.12, w * 0.5, xM - l * 0.12, w * 0.7, xM, w * 0.9], ...gearLine })
  return [outline(centredBox(2 * l, 2 * w), body), outline([-l * 0.8, -w * 0.35, l * 0.8, -w * 0.35, l * 0.8, 0, -l * 0.8, 0], { fill: 'ink' }), wave(-l * 0.45), wave(0), wave(l * 0.45)]
}
