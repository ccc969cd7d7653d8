import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { OverheadLineRecord } from '../kinds/overheadLine.ts'
import { flat } from './basic.ts'

/** In the site frame: features carry their own points. */
export const overheadLinePlan = (r: OverheadLineRecord, _context: SymbolContext): Primitive[] => [{ t: 'path', points: flat(r.points), closed: false, stroke: 'ink2', weight: 'context' }]
