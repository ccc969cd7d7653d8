import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { CrewRecord } from '../kinds/crew.ts'
import { centredBox, outline } from './basic.ts'

export const crewFootprint = (_r: CrewRecord): number[] => centredBox(0.5, 0.5)

export const crewPlan = (r: CrewRecord, _context: SymbolContext): Primitive[] => [outline(crewFootprint(r), { stroke: 'ink', weight: 'gear', fill: 'sheet' })]
