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

/** What a country or a kind of site asks for, as far as its rules give distances by voltage. */
export interface OverheadRules {
  id: string
  source: string
  /** (kV, ft); a voltage takes the first row it does not pass. */
  rows: readonly (readonly [number, number])[]
  /** Whether a bound belongs to its own row ('over … to') or to the next ('below'). */
  upperIsInclusive: boolean
  /** Over the last row; null: set by the owner of the line. */
  aboveFt: number | null
  /** A second rule of the set for vehicles that are no cranes; the larger counts. Null: none. */
  vehicles: typeof vehicleRule | null
}

const federalRules: OverheadRules = { id: 'federal', source: tableA.source, rows: tableA.rows, upperIsInclusive: true, aboveFt: null, vehicles: vehicleRule }
const { mines } = overheadJson.otherProfiles
/** Rule sets by name. A new one is a table of the JSON file and one line here. */
export const overheadRuleSets: Readonly<Record<string, OverheadRules>> = {
  federal: federalRules,
  mines: { id: 'mines', source: mines.source, rows: pairs(mines.rows), upperIsInclusive: false, aboveFt: mines.aboveFt, vehicles: null },
}

/** Rule set of a layout's profile; the federal one where the profile names none. */
export const overheadRulesOf = (profile: string): OverheadRules => overheadRuleSets[(overheadJson.profiles as Readonly<Record<string, string>>)[profile] ?? 'federal'] ?? federalRules

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
