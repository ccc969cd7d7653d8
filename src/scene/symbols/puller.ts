import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { PullerRecord } from '../kinds/puller.ts'
import { centredBox, outline } from './basic.ts'

export const pullerFootprint = (r: PullerRecord): number[] => centredBox(r.figures.lengthM.value ?? 3.6, r.figures.widthM.value ?? 2)

export const pullerPlan = (r: PullerRecord, _context: SymbolContext): Primitive[] => [outline(pullerFootprint(r), { stroke: 'ink', weight: 'gear', fill: 'sheet' })]
