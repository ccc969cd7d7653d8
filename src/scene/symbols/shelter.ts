import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { centredBox, detailLine, outline, type DrawnFigure } from './basic.ts'

export interface DrawnShelter {
  figures: { lengthM: DrawnFigure; widthM: DrawnFigure; guyM: DrawnFigure }
}

const sizeOf = (r: DrawnShelter): { lengthM: number; widthM: number } => ({ lengthM: r.figures.lengthM.value ?? 4.5, widthM: r.figures.widthM.value ?? 4 })

export const shelterFootprint = (r: DrawnShelter): number[] => centredBox(sizeOf(r).lengthM, sizeOf(r).widthM)

/** Walls in outline, ridge along it, guy lines at the corners; what stands under it stays in sight. */
export const shelterPlan = (r: DrawnShelter, _context: SymbolContext): Primitive[] => {
  const { lengthM, widthM } = sizeOf(r)
  const [l, w, guy] = [lengthM / 2, widthM / 2, (r.figures.guyM.value ?? 1.4) * Math.SQRT1_2]
  const corner = (sx: number, sy: number): Primitive => ({ t: 'path', points: [sx * l, sy * w, sx * (l + guy), sy * (w + guy)], ...detailLine })
  return [
    outline(centredBox(lengthM, widthM), { stroke: 'ink', weight: 'gear', dash: 'lane' }),
    { t: 'path', points: [-l, 0, l, 0], ...detailLine },
    corner(1, 1), corner(1, -1), corner(-1, 1), corner(-1, -1),
  ]
}
