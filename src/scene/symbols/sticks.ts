import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { odOf } from './basic.ts'

export const TYPICAL_STICK_M = 12.192

/** Sticks lying side by side from x = toM backwards; y of the first at `firstM`, the next at `pitchM` further each. None on the gear edge. */
export const lyingSticks = (count: number, { toM, firstM, pitchM }: { toM: number; firstM: number; pitchM: number }, context: SymbolContext, lengthM = context.stickLengthM ?? TYPICAL_STICK_M): Primitive[] => {
  if (context.onShelf === true) return []
  // Where they would run into one black field, fewer px each keep the stripes apart.
  const leastPx = Math.min(3.2, Math.max(1.2, Math.abs(pitchM) * context.pxPerM - 0.6))
  return Array.from({ length: count }, (_, i) => ({ t: 'pipe', points: [toM - lengthM, firstM + i * pitchM, toM, firstM + i * pitchM], outerDiameterM: odOf(context), leastPx }))
}
