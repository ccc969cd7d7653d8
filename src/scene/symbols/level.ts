import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { LevelRecord } from '../kinds/level.ts'
import { centredBox, outline } from './basic.ts'

export const levelFootprint = (_r: LevelRecord): number[] => centredBox(0.4, 0.4)

export const levelPlan = (r: LevelRecord, _context: SymbolContext): Primitive[] => [outline(levelFootprint(r), { stroke: 'ink', weight: 'gear', fill: 'sheet' })]
