import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { BoundaryRecord } from '../kinds/boundary.ts'
import { flat } from './basic.ts'

/** In the site frame: features carry their own points. */
export const boundaryPlan = (r: BoundaryRecord, _context: SymbolContext): Primitive[] => [{ t: 'path', points: flat(r.points), closed: true, stroke: 'ink2', weight: 'context' }]
