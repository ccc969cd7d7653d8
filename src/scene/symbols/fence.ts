import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { FenceRecord } from '../kinds/fence.ts'
import { flat } from './basic.ts'

/** In the site frame: features carry their own points. */
export const fencePlan = (r: FenceRecord, _context: SymbolContext): Primitive[] => [{ t: 'path', points: flat(r.points), closed: false, stroke: 'ink2', weight: 'context' }]
