/** Distances and duties at a trench, by its depth. */
import { footM } from '../../units/factors.ts'
import { requireNumber } from '../outcome.ts'
import { machineDepths, trenchRows } from './tables.ts'

export interface TrenchRules {
  /** Pipe, spoil and equipment from the edge: legal, holds at any depth. */
  edgeM: number
  /** Machines, loaders and stacks from the edge: one depth, house rule, never less than the legal distance; null while the depth is unknown. */
  machineM: number | null
  /** Longest way to a ladder where a way out is needed. */
  egressTravelM: number
  /** null while the depth is unknown. */
  needsEgress: boolean | null
  needsProtection: boolean | null
  needsGuard: boolean | null
  needsEngineer: boolean | null
  /** Source by figure. */
  sources: Record<'edge' | 'machine' | 'egress' | 'protection' | 'guard' | 'engineer', string>
}

function row(id: string): { valueM: number; source: string } {
  const found = trenchRows.find((candidate) => candidate.id === id)
  if (!found) throw new RangeError(`the trench table has no row ${id}`)
  return { valueM: found.valueFt * footM, source: found.source }
}

/**
 * Rules at a trench of a given depth.
 *
 * Input:  depthM from ground to bottom; null = unknown: what depends on it is null, the legal 2 ft still holds.
 * Fails:  RangeError for a depth below 0.
 * Source: 29 CFR 1926.651(c)(2), (j)(2), .652, .501(b)(7); one depth for machines: common practice, no source.
 */
export function trenchRules(depthM: number | null): TrenchRules {
  if (depthM !== null) requireNumber('depthM', depthM, { atLeast: 0 })
  const [edge, egress, travel, protection, guard, engineer] = ['edge', 'egressDepth', 'egressTravel', 'protectiveDepth', 'guardDepth', 'designDepth'].map(row)
  // Levels typed from a plan carry rounding: 4 ft entered as 1.2192 m must meet 4 ft.
  const reaches = (bound: { valueM: number }): boolean | null => (depthM === null ? null : depthM >= bound.valueM - 1e-9)
  return {
    edgeM: edge!.valueM,
    machineM: depthM === null ? null : Math.max(edge!.valueM, machineDepths.value * depthM),
    egressTravelM: travel!.valueM,
    needsEgress: reaches(egress!),
    needsProtection: reaches(protection!),
    needsGuard: reaches(guard!),
    needsEngineer: reaches(engineer!),
    sources: { edge: edge!.source, machine: machineDepths.source, egress: egress!.source, protection: protection!.source, guard: guard!.source, engineer: engineer!.source },
  }
}
