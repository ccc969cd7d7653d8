import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { WalkwayRecord } from '../kinds/walkway.ts'
import { flat } from './basic.ts'

/** In the site frame: features carry their own points. */
export const walkwayPlan = (r: WalkwayRecord, _context: SymbolContext): Primitive[] => [{ t: 'path', points: flat(r.points), closed: false, stroke: 'ink2', weight: 'context' }]
