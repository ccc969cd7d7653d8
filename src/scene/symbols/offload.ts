import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { centredBox, odOf } from './basic.ts'
import type { DrawnFigure } from './basic.ts'
import { lyingSticks, TYPICAL_STICK_M } from './sticks.ts'
import { truckFromAbove } from './vehicles.ts'

export interface DrawnOffload {
  figures: { lengthM: DrawnFigure; widthM: DrawnFigure }
}

const sizeOf = (r: DrawnOffload): { lengthM: number; widthM: number } => ({ lengthM: r.figures.lengthM.value ?? 21.3, widthM: r.figures.widthM.value ?? 2.6 })

export const offloadFootprint = (r: DrawnOffload): number[] => centredBox(sizeOf(r).lengthM, sizeOf(r).widthM)

/** A truck with its trailer standing there, cab ahead, loaded with sticks as far as they fit on the bed. */
export const offloadPlan = (r: DrawnOffload, context: SymbolContext): Primitive[] => {
  const { lengthM, widthM } = sizeOf(r)
  const shiftM = -lengthM / 2
  const truck = truckFromAbove({ lengthM, widthM, shiftM })
  const bedM = (lengthM * 48) / 67
  const stick = Math.min(context.stickLengthM ?? TYPICAL_STICK_M, bedM * 0.96)
  const count = Math.max(1, Math.min(6, Math.floor(widthM / (odOf(context) * 1.35))))
  const pitchM = widthM / (count + 0.35)
  return [...truck, ...lyingSticks(count, { toM: shiftM + bedM * 0.5 + stick / 2, firstM: -((count - 1) / 2) * pitchM, pitchM }, context, stick)]
}
