import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { body, centredBox, gearLine, outline, part, type DrawnFigure } from './basic.ts'

export interface DrawnCuttingPlace {
  figures: { lengthM: DrawnFigure; widthM: DrawnFigure }
}

const sizeOf = (r: DrawnCuttingPlace): { lengthM: number; widthM: number } => ({ lengthM: r.figures.lengthM.value ?? 2.4, widthM: r.figures.widthM.value ?? 1.2 })

export const cuttingPlaceFootprint = (r: DrawnCuttingPlace): number[] => centredBox(sizeOf(r).lengthM, sizeOf(r).widthM)

/** A bench with a support on each side of the cut and the teeth of a saw across it. */
export const cuttingPlacePlan = (r: DrawnCuttingPlace, _context: SymbolContext): Primitive[] => {
  const { lengthM, widthM } = sizeOf(r)
  const tooth = Math.min(0.22, widthM / 6)
  const count = Math.max(3, Math.floor(widthM / tooth / 2) * 2)
  const teeth = Array.from({ length: count + 1 }, (_, i) => [i % 2 === 0 ? -tooth / 2 : tooth / 2, -widthM / 2 + (i * widthM) / count]).flat()
  const held = (xM: number): Primitive => outline([xM - 0.1, -widthM / 2, xM + 0.1, -widthM / 2, xM + 0.1, widthM / 2, xM - 0.1, widthM / 2], part)
  return [outline(centredBox(lengthM, widthM), body), held(-lengthM / 3), held(lengthM / 3), { t: 'path', points: teeth, ...gearLine }]
}
