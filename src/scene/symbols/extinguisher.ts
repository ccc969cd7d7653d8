import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { centredBox } from './basic.ts'

export const extinguisherFootprint = (): number[] => centredBox(0.3, 0.3)

/** Red square with an extinguisher (meaning and colour of ISO 7010 F001, drawn by us). */
export const extinguisherPlan = (_r: unknown, _context: SymbolContext): Primitive[] => [{
  t: 'mark', xM: 0, yM: 0,
  parts: [
    { t: 'rect', xM: -9, yM: -9, widthM: 18, heightM: 18, fill: 'red', stroke: 'sheet', weight: 'context' },
    { t: 'rect', xM: -3, yM: -7, widthM: 6, heightM: 9.5, radiusM: 2, fill: 'white' },
    { t: 'rect', xM: -1.2, yM: 2.5, widthM: 2.4, heightM: 2.5, fill: 'white' },
    { t: 'path', points: [-1.2, 5, 5, 6.4, 6.5, 2.5], stroke: 'white', weight: 'gear' },
  ],
}]
