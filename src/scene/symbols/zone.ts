import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { ZoneRecord } from '../kinds/zone.ts'
import { flat } from './basic.ts'

/** In the site frame: features carry their own points. */
export const zonePlan = (r: ZoneRecord, _context: SymbolContext): Primitive[] => [{ t: 'path', points: flat(r.points), closed: true, stroke: 'ink2', weight: 'context' }]
