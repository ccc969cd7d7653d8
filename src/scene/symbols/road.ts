import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { RoadRecord } from '../kinds/road.ts'
import { flat } from './basic.ts'

/** In the site frame: features carry their own points. */
export const roadPlan = (r: RoadRecord, _context: SymbolContext): Primitive[] => [{ t: 'path', points: flat(r.points), closed: false, stroke: 'ink2', weight: 'context' }]
