/** Apparent modulus of PE: it falls with the time a load lasts and with the temperature of the wall. */
import { celsiusToF, hourS, psiPa } from '../../units/factors.ts'
import { interpolate } from '../interpolate.ts'
import { known, missingAmong, requireNumber, uncovered } from '../outcome.ts'
import type { Outcome } from '../outcome.ts'
import { materialOf, modulusClasses, modulusRows, questionDurationH, temperatureMultipliers } from './tables.ts'
import type { LoadQuestion, ModulusClass, PipeMaterial } from './tables.ts'

export interface ModulusInput {
  materialClass: ModulusClass | null
  durationS: number | null
  /** Of the pipe wall, not of the air. */
  temperatureC: number | null
}

/** How long the load of a question lasts; nose and pull use the table's shortest row until a shorter one is sourced. */
export function questionDurationS(question: LoadQuestion): number {
  return questionDurationH[question] * hourS
}

/** The class whose modulus a material takes. */
export function modulusClassOf(material: PipeMaterial): ModulusClass {
  return materialOf(material).modulusClass
}

/** Multiplier of the modulus at a wall temperature; undefined outside −20 to 140 °F. */
export function temperatureMultiplier(temperatureC: number): number | undefined {
  // 23 °C is 73.4 °F in the table; rounding keeps the conversion from missing the row it means.
  return interpolate(temperatureMultipliers, Math.round(celsiusToF(temperatureC) * 1e9) / 1e9)
}

/**
 * Apparent modulus in Pa.
 *
 * Model:  table value by class, straight line in log10 of the duration between rows; times a multiplier,
 *         straight line in temperature between rows.
 * Valid:  0.5 h to 100 years, wall −29 to 60 °C. A shorter load takes the 0.5 h value (softer than true:
 *         sag and droop come out too large, not too small). Outside: 'uncovered', never extended.
 * Fails:  RangeError for a duration that is not positive or a temperature that is not finite.
 * Source: PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 3, Tables B.1.1 and B.1.2 (the latter from memory, confirm).
 */
export function apparentModulusPa(input: ModulusInput): Outcome<number> {
  const { materialClass, durationS, temperatureC } = input
  if (materialClass === null || durationS === null || temperatureC === null) return missingAmong({ materialClass, durationS, temperatureC })!
  requireNumber('durationS', durationS, { above: 0 })
  requireNumber('temperatureC', temperatureC)
  const column = modulusClasses.indexOf(materialClass)
  if (column < 0) throw new RangeError(`materialClass ${String(materialClass)} is not in the table of moduli`)
  const byLogTime = modulusRows.map((row) => [Math.log10(row.durationH), row.psi[column]!] as const)
  const shortestH = modulusRows[0]!.durationH
  const psi = interpolate(byLogTime, Math.log10(Math.max(durationS / hourS, shortestH)))
  if (psi === undefined) return uncovered('durationS', 'the modulus table ends at 100 years', 'la tabla de módulos termina en 100 años')
  const multiplier = temperatureMultiplier(temperatureC)
  if (multiplier === undefined) {
    return uncovered('temperatureC', 'the modulus table covers a pipe wall from −20 to 140 °F (−29 to 60 °C)', 'la tabla de módulos cubre una pared de −20 a 140 °F (−29 a 60 °C)')
  }
  return known(psi * multiplier * psiPa)
}

/** Modulus for a question about a material at a wall temperature. */
export function modulusForQuestionPa(input: { material: PipeMaterial | null; question: LoadQuestion; temperatureC: number | null }): Outcome<number> {
  const { material, question, temperatureC } = input
  if (material === null || temperatureC === null) return missingAmong({ material, temperatureC })!
  return apparentModulusPa({ materialClass: modulusClassOf(material), durationS: questionDurationS(question), temperatureC })
}
