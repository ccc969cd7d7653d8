import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { body, centredBox, detailLine, outline, type DrawnFigure } from './basic.ts'

export interface DrawnTrailer {
  isLoaded: boolean | null
  figures: { lengthM: DrawnFigure; widthM: DrawnFigure }
}

const sizeOf = (r: DrawnTrailer): { lengthM: number; widthM: number } => ({ lengthM: r.figures.lengthM.value ?? 14.6, widthM: r.figures.widthM.value ?? 2.6 })

export const trailerFootprint = (r: DrawnTrailer): number[] => centredBox(sizeOf(r).lengthM, sizeOf(r).widthM)

/** Bed from above with its drawbar ahead; lines along it while pipe lies on it. */
export const trailerPlan = (r: DrawnTrailer, _context: SymbolContext): Primitive[] => {
  const { lengthM, widthM } = sizeOf(r)
  const [l, w] = [lengthM / 2, widthM / 2]
  const loadLines = r.isLoaded === false ? [] : [-0.5, 0, 0.5].map((share): Primitive => ({ t: 'path', points: [-l * 0.92, w * share, l * 0.92, w * share], ...detailLine }))
  return [outline([l, w * 0.25, l + widthM * 0.45, 0, l, -w * 0.25], body), outline(centredBox(lengthM, widthM), body), ...loadLines]
}
