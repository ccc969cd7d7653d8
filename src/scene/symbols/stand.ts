import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { StandRecord } from '../kinds/stand.ts'
import { centredBox, outline } from './basic.ts'

export const standFootprint = (r: StandRecord): number[] => centredBox(r.figures.baseLengthM.value ?? 0.6, r.figures.baseWidthM.value ?? 0.9)

export const standPlan = (r: StandRecord, _context: SymbolContext): Primitive[] => [outline(standFootprint(r), { stroke: 'ink', weight: 'gear', fill: 'sheet' })]

export const standSection = (r: StandRecord, { saddleM }: SymbolContext & { saddleM: number | null }): Primitive[] => [
  { t: 'path', points: [0, 0, 0, saddleM ?? r.figures.lowestSaddleM.value ?? 0.5], stroke: 'ink', weight: 'gear' },
]
