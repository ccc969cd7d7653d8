import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { OffloadRecord } from '../kinds/offload.ts'
import { centredBox, outline } from './basic.ts'

export const offloadFootprint = (r: OffloadRecord): number[] => centredBox(r.figures.lengthM.value ?? 21.3, r.figures.widthM.value ?? 2.6)

export const offloadPlan = (r: OffloadRecord, _context: SymbolContext): Primitive[] => [outline(offloadFootprint(r), { stroke: 'ink', weight: 'gear', fill: 'sheet' })]
