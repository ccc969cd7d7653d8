/** A string on ground that falls across it (docs/formulas/bends.md). */
import { requireNumber } from '../outcome.ts'

/**
 * Safety of a string against sliding down a side slope.
 *
 * Model:  per length, w·sin φ and the wind pull down the slope, µ·w·cos φ holds; wind acts straight down-hill and presses nothing.
 * Input:  weight by length in N/m > 0, slope across (fall over length) ≥ 0, friction ≥ 0, wind force by length in N/m ≥ 0.
 * Output: what drives and what holds, N/m; their ratio, Infinity on level ground without wind.
 * Source: friction after Coulomb (statics).
 */
export function sideHill(input: { lineLoadNPerM: number; crossSlopeRatio: number; frictionRatio: number; windNPerM: number }): { drivesNPerM: number; holdsNPerM: number; safetyRatio: number } {
  const { lineLoadNPerM, crossSlopeRatio, frictionRatio, windNPerM } = input
  requireNumber('lineLoadNPerM', lineLoadNPerM, { above: 0 })
  requireNumber('crossSlopeRatio', crossSlopeRatio, { atLeast: 0 })
  requireNumber('frictionRatio', frictionRatio, { atLeast: 0 })
  requireNumber('windNPerM', windNPerM, { atLeast: 0 })
  const angleRad = Math.atan(crossSlopeRatio)
  const drivesNPerM = lineLoadNPerM * Math.sin(angleRad) + windNPerM
  const holdsNPerM = frictionRatio * lineLoadNPerM * Math.cos(angleRad)
  return { drivesNPerM, holdsNPerM, safetyRatio: drivesNPerM > 0 ? holdsNPerM / drivesNPerM : Infinity }
}

/**
 * Wind on a pipe by length, ½ρ·c·V²·OD, N/m.
 * Source: dynamic pressure; 0.00256 V² lb/ft² at V mph.
 */
export function windOnPipeNPerM(input: { odM: number; windMPerS: number; airDensityKgPerM3: number; dragCoefficientRatio: number }): number {
  const { odM, windMPerS, airDensityKgPerM3, dragCoefficientRatio } = input
  requireNumber('odM', odM, { above: 0 })
  return 0.5 * airDensityKgPerM3 * dragCoefficientRatio * windMPerS ** 2 * odM
}
