import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import type { TreeRecord } from '../kinds/tree.ts'

/** A sixteen-sided ring round the crown. */
export const treeFootprint = (r: TreeRecord): number[] => {
  const radiusM = r.figures.radiusM.value ?? 2
  return Array.from({ length: 16 }, (_, i) => [radiusM * Math.cos((i * Math.PI) / 8), radiusM * Math.sin((i * Math.PI) / 8)]).flat()
}

export const treePlan = (r: TreeRecord, _context: SymbolContext): Primitive[] => [
  { t: 'circle', xM: 0, yM: 0, radiusM: r.figures.radiusM.value ?? 2, stroke: 'plant', weight: 'context' },
]
