/** Least distance from an overhead line, by its voltage. */
import { footM, inchM } from '../../units/factors.ts'
import { requireNumber } from '../outcome.ts'
import { highVoltageTrigger, overheadRulesOf, transitRules, unknownVoltageTrigger, vehicleRule, type OverheadRules } from './tables.ts'

export interface OverheadClearance {
  /** 'unknownVoltage': the trigger distance stands in, the finding stays STOP. 'setByOwner': over 1,000 kV no rule gives a distance. */
  status: 'ok' | 'unknownVoltage' | 'setByOwner'
  /** Nothing of machine, load or pipe nearer than this; null only for 'setByOwner'. */
  clearanceM: number | null
  /** By the bands of the rule set: 29 CFR 1926.1408 Table A for the federal one. */
  tableAM: number | null
  /** 29 CFR 1926.600(a)(6): 10 ft and 0.4 in for each kV over 50. */
  vehiclesM: number | null
  /** Distance from which the crane rules ask for measures: 20 ft, over 350 kV 50 ft. */
  triggerM: number
  /** The rule that gives `clearanceM`. */
  source: string
}

/** First row whose upper bound the value does not pass. */
function bandFt(rows: readonly (readonly [number, number])[], voltageKv: number, upperIsInclusive = true): number | null {
  return rows.find(([upToKv]) => (upperIsInclusive ? voltageKv <= upToKv : voltageKv < upToKv))?.[1] ?? null
}

/**
 * Distance to keep from an overhead line.
 *
 * Model:  all rules of the set that may hold for a loader carrying pipe, the larger one counts. Bands are 'over … to', upper
 *         bound inclusive, unless the set says otherwise.
 * Input:  voltageKv phase to phase; null = unknown. `rules`: the set of the country or site (`overheadRulesOf`).
 * Fails:  RangeError for a voltage below 0 or not finite.
 * Source: 29 CFR 1926.1408 Table A; 1926.600(a)(6) (from memory, confirm); triggers 1926.1407, .1408 and .1409.
 */
export function overheadClearanceM(voltageKv: number | null, rules: OverheadRules = overheadRulesOf('US')): OverheadClearance {
  if (voltageKv === null) {
    const triggerM = unknownVoltageTrigger.distanceFt * footM
    return { status: 'unknownVoltage', clearanceM: triggerM, tableAM: null, vehiclesM: null, triggerM, source: unknownVoltageTrigger.source }
  }
  requireNumber('voltageKv', voltageKv, { atLeast: 0 })
  const triggerM = (voltageKv > highVoltageTrigger.overKv ? highVoltageTrigger.distanceFt : unknownVoltageTrigger.distanceFt) * footM
  const tableFt = bandFt(rules.rows, voltageKv, rules.upperIsInclusive) ?? rules.aboveFt
  const vehiclesM = rules.vehicles === null ? null : rules.vehicles.distanceFt * footM + Math.max(0, voltageKv - rules.vehicles.upToKv) * rules.vehicles.perKvOverIn * inchM
  if (tableFt === null) return { status: 'setByOwner', clearanceM: null, tableAM: null, vehiclesM, triggerM, source: rules.source }
  const tableAM = tableFt * footM
  const isTable = vehiclesM === null || tableAM >= vehiclesM
  return { status: 'ok', clearanceM: isTable ? tableAM : vehiclesM, tableAM, vehiclesM, triggerM, source: isTable ? rules.source : vehicleRule.source }
}

/**
 * Distance while travelling under a line without a load and the boom down; null where no rule gives one (unknown voltage,
 * or over the last band). The larger of both rules.
 *
 * Source: 29 CFR 1926.1411 Table T; 1926.600(a)(6) in transit (from memory, confirm).
 */
export function transitClearanceM(voltageKv: number | null): number | null {
  if (voltageKv === null) return null
  requireNumber('voltageKv', voltageKv, { atLeast: 0 })
  const distancesFt = [transitRules.tableT.rows, transitRules.vehicles.rows].map((rows) => bandFt(rows, voltageKv)).filter((value) => value !== null)
  return distancesFt.length === 0 ? null : Math.max(...distancesFt) * footM
}
