/** Overhead-line and trench distances of shared/tables, in the units of their rules (kV, ft). */
import overheadJson from '../../../shared/tables/overhead-clearance.json' with { type: 'json' }
import trenchJson from '../../../shared/tables/trench.json' with { type: 'json' }
import type { Localized } from '../../units/language.ts'
import { pairs } from '../pipe/tables.ts'

export const tableA = { source: overheadJson.tableA.source, rows: pairs(overheadJson.tableA.rows) }
export const vehicleRule = overheadJson.vehicles
export const unknownVoltageTrigger = overheadJson.trigger
export const highVoltageTrigger = overheadJson.triggerHigh
/** Travelling without a load, boom down: both rules as rows of (up to kV, ft). */
export const transitRules = {
  tableT: { source: overheadJson.transit.tableT.source, rows: pairs(overheadJson.transit.tableT.rows) },
  vehicles: { source: overheadJson.transit.vehicles.source, rows: pairs(overheadJson.transit.vehicles.rows) },
}

export interface TrenchRow {
  id: string
  valueFt: number
  title: Localized
  sourceClass: string
  source: string
  basis: string
}

export const trenchRows: readonly TrenchRow[] = trenchJson.rows
export const machineDepths = trenchJson.machineDepths
