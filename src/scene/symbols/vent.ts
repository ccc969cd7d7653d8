import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { atLeastSixPx, body, centredBox, gearLine, solid } from './basic.ts'

export const ventFootprint = (): number[] => centredBox(1.2, 0.6)

/** A stand pipe from above with gas drifting off. */
export const ventPlan = (_r: unknown, context: SymbolContext): Primitive[] => {
  const k = atLeastSixPx(1.2, context.pxPerM)
  const wisp = (yM: number): Primitive => ({ t: 'path', points: [0.3 * k, yM, 0.45 * k, yM + 0.1 * k, 0.6 * k, yM - 0.1 * k, 0.75 * k, yM], ...gearLine })
  return [{ t: 'circle', xM: 0, yM: 0, radiusM: 0.25 * k, ...body }, { t: 'circle', xM: 0, yM: 0, radiusM: 0.09 * k, ...solid }, wisp(0.18 * k), wisp(-0.18 * k)]
}
