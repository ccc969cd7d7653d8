/** Allowable tensile load on a pipe that is pulled. The published editions disagree; the job chooses one. */
import { celsiusToF, hourS, psiPa } from '../../units/factors.ts'
import { known, missingAmong, requireNumber, uncovered } from '../outcome.ts'
import type { Outcome, Uncovered } from '../outcome.ts'
import { f1804Edition, materialOf, pairs, pullEditions, stressEditions, yieldTemperatureRule } from './tables.ts'
import type { PipeMaterial, PullEdition } from './tables.ts'

export interface AllowablePullInput {
  edition: PullEdition
  material: PipeMaterial | null
  odM: number | null
  dr: number | null
  /** The whole pull with its stops. */
  durationS: number | null
  wallTemperatureC: number | null
  /** Yield stress at 73 °F where the job has a figure; else the material's. Used by F1804 only. */
  yieldPa?: number | null
}

export interface AllowablePull {
  loadN: number
  stressPa: number
  areaM2: number
  /** 1 at 73 °F and below. */
  temperatureRatio: number
  /** True where the temperature ratio is the house rule and not 1: the finding says so. */
  isTemperatureAssumed: boolean
  source: string
}

/** House rule while no table of yield by temperature is sourced: 0.6 % less for each °F above 73, not below one half. */
export function yieldTemperatureRatio(wallTemperatureC: number): number {
  const { lessPerF, fromF, floor } = yieldTemperatureRule
  const overF = celsiusToF(wallTemperatureC) - fromF
  // 73 °F and 23 °C (73.4 °F) are the same rating temperature.
  return overF <= 0.5 ? 1 : Math.max(floor, 1 - lessPerF * overF)
}

function tooLong(hours: number): Uncovered {
  return uncovered('durationS', `this edition gives no value for a pull over ${hours} h`, `esta edición no da valor para un jalado de más de ${hours} h`)
}

function stressPa(input: AllowablePullInput & { material: PipeMaterial }, durationH: number): Outcome<number> {
  const row = materialOf(input.material)
  if (input.edition === 'F1804') {
    const yieldStressPa = input.yieldPa ?? (row.yieldPsi === null ? null : row.yieldPsi * psiPa)
    if (yieldStressPa === null) return { status: 'missing', fields: ['yieldPa'] }
    requireNumber('yieldPa', yieldStressPa, { above: 0 })
    const step = pairs(f1804Edition.timeFactor).find(([upToH]) => durationH <= upToH)
    return step ? known(f1804Edition.designFactor * step[1] * yieldStressPa) : tooLong(24)
  }
  const edition = stressEditions.find(({ id }) => id === input.edition)
  if (!edition) throw new RangeError(`edition ${input.edition} is not in the table of allowable pulls`)
  const column = edition.classes.indexOf(row.modulusClass)
  if (column < 0) return uncovered('material', `this edition has no value for ${input.material}`, `esta edición no tiene valor para ${input.material}`)
  // The row at or above the duration: the stress falls with time, so this is never too much.
  const step = edition.rows.find((candidate) => durationH <= candidate.durationH)
  return step ? known(step.psi[column]! * psiPa) : tooLong(edition.rows.at(-1)!.durationH)
}

/**
 * Allowable tensile load in N.
 *
 * Model:  stress × π OD² (1/DR − 1/DR²); stress by edition: F1804 yield × 0.40 × time factor (1 to 1 h, 0.95 to 12 h,
 *         0.91 to 24 h); the others by table row at or above the duration. Times the temperature ratio.
 * Output: 'missing' naming null inputs (also `yieldPa` for a material without one); 'uncovered' beyond the edition's durations.
 * Source: ASTM F1804 (factors from memory, confirm; product agrees with ASTM F1962-22, 1,330 psi);
 *         PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 12; PPI comparison sheet, July 2015.
 */
export function allowableTensileLoadN(input: AllowablePullInput): Outcome<AllowablePull> {
  const { material, odM, dr, durationS, wallTemperatureC } = input
  if (material === null || odM === null || dr === null || durationS === null || wallTemperatureC === null) {
    return missingAmong({ material, odM, dr, durationS, wallTemperatureC })!
  }
  requireNumber('odM', odM, { above: 0 })
  requireNumber('dr', dr, { above: 2 })
  requireNumber('durationS', durationS, { atLeast: 0 })
  requireNumber('wallTemperatureC', wallTemperatureC)
  const stress = stressPa({ ...input, material }, durationS / hourS)
  if (stress.status !== 'ok') return stress
  const areaM2 = Math.PI * odM ** 2 * (1 / dr - 1 / dr ** 2)
  const temperatureRatio = yieldTemperatureRatio(wallTemperatureC)
  const allowedPa = stress.value * temperatureRatio
  return known({
    loadN: allowedPa * areaM2,
    stressPa: allowedPa,
    areaM2,
    temperatureRatio,
    isTemperatureAssumed: temperatureRatio !== 1,
    source: pullEditions.find(({ id }) => id === input.edition)!.source,
  })
}
