import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { AnchorRecord } from '../kinds/anchor.ts'
import { centredBox, outline } from './basic.ts'

export const anchorFootprint = (_r: AnchorRecord): number[] => centredBox(0.6, 0.6)

export const anchorPlan = (r: AnchorRecord, _context: SymbolContext): Primitive[] => [outline(anchorFootprint(r), { stroke: 'ink', weight: 'gear', fill: 'sheet' })]
