import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { centredBox } from './basic.ts'

export const burnKitFootprint = (): number[] => centredBox(0.4, 0.4)

/** Green square with a white cross (meaning and colour of ISO 7010 E003, drawn by us). */
export const burnKitPlan = (_r: unknown, _context: SymbolContext): Primitive[] => [{
  t: 'mark', xM: 0, yM: 0,
  parts: [
    { t: 'rect', xM: -9, yM: -9, widthM: 18, heightM: 18, fill: 'safe', stroke: 'sheet', weight: 'context' },
    { t: 'rect', xM: -2, yM: -6, widthM: 4, heightM: 12, fill: 'white' },
    { t: 'rect', xM: -6, yM: -2, widthM: 12, heightM: 4, fill: 'white' },
  ],
}]
