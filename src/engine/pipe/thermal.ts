/** Growth and shrinkage of a string with the temperature of its wall. */
import { known, missingAmong, requireNumber } from '../outcome.ts'
import type { Outcome } from '../outcome.ts'
import { materialOf } from './tables.ts'
import type { PipeMaterial } from './tables.ts'

/** Expansion per °C of a material. The table is per °F; one °C is 1.8 °F. */
export function expansionPerC(material: PipeMaterial): number {
  return materialOf(material).expansionPerF * 1.8
}

/**
 * Change of length of a string free to move, positive for growth: α · L · ΔT.
 *
 * Source: PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 3 (α from memory, confirm). Friction holds back
 * up to μ w L² / 2EA of it; that is left out, so the result is the most it can move.
 */
export function thermalChangeM(input: { material: PipeMaterial | null; lengthM: number | null; temperatureChangeC: number | null }): Outcome<number> {
  const { material, lengthM, temperatureChangeC } = input
  if (material === null || lengthM === null || temperatureChangeC === null) return missingAmong({ material, lengthM, temperatureChangeC })!
  requireNumber('lengthM', lengthM, { atLeast: 0 })
  requireNumber('temperatureChangeC', temperatureChangeC)
  return known(expansionPerC(material) * lengthM * temperatureChangeC)
}

/**
 * Sideways bow and bending strain of a pipe held at both ends that warms up: y = L √(½ α ΔT), ε = D √(96 α ΔT) / L.
 *
 * Input:  expansionRatio = α ΔT, at least 0.
 * Source: PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 8, from memory, confirm.
 */
export function restrainedBow(input: { lengthM: number; odM: number; expansionRatio: number }): { bowM: number; strainRatio: number } {
  const { lengthM: L, odM: D, expansionRatio } = input
  requireNumber('lengthM', L, { above: 0 })
  requireNumber('odM', D, { above: 0 })
  requireNumber('expansionRatio', expansionRatio, { atLeast: 0 })
  return { bowM: L * Math.sqrt(0.5 * expansionRatio), strainRatio: (D * Math.sqrt(96 * expansionRatio)) / L }
}
