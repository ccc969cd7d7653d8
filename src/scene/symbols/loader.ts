import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { LoaderRecord } from '../kinds/loader.ts'
import { centredBox, outline } from './basic.ts'

export const loaderFootprint = (r: LoaderRecord): number[] => centredBox(r.figures.lengthM.value ?? 3.6, r.figures.widthM.value ?? 1.9)

export const loaderPlan = (r: LoaderRecord, _context: SymbolContext): Primitive[] => [outline(loaderFootprint(r), { stroke: 'ink', weight: 'gear', fill: 'sheet' })]
