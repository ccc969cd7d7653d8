import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { BuildingRecord } from '../kinds/building.ts'
import { flat } from './basic.ts'

/** In the site frame: features carry their own points. */
export const buildingPlan = (r: BuildingRecord, _context: SymbolContext): Primitive[] => [{ t: 'path', points: flat(r.points), closed: true, stroke: 'ink2', weight: 'context' }]
