import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { WaterRecord } from '../kinds/water.ts'
import { flat } from './basic.ts'

/** In the site frame: features carry their own points. */
export const waterPlan = (r: WaterRecord, _context: SymbolContext): Primitive[] => [{ t: 'path', points: flat(r.points), closed: true, stroke: 'ink2', weight: 'context' }]
