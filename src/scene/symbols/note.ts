import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { NoteRecord } from '../kinds/note.ts'
import { centredBox, outline } from './basic.ts'

export const noteFootprint = (_r: NoteRecord): number[] => centredBox(0.5, 0.5)

export const notePlan = (r: NoteRecord, _context: SymbolContext): Primitive[] => [outline(noteFootprint(r), { stroke: 'ink', weight: 'gear', fill: 'sheet' })]
