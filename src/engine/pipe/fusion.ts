/** Times and forces of a butt joint that a yard plan needs. It does not qualify a joint: the procedure on the job wins. */
import { inchM, minuteS, psiPa } from '../../units/factors.ts'
import { requireNumber } from '../outcome.ts'
import { fusionTable } from './tables.ts'

export interface JointFigures {
  /** Cooling under pressure: 11 min for each inch of wall. */
  coolingS: number
  /** Least heat soak; null below 14 in OD, where the bead decides. */
  soakS: number | null
  /** Longest time from heater out to joined. */
  heaterOutS: number
  /** Most radial offset of the walls. */
  hiLoM: number
  /** Depth of a cut or gouge from which the pipe is cut out. */
  damageDepthM: number
}

/**
 * Times and allowances of a joint by outside diameter and minimum wall.
 *
 * Source: ASTM F2620 (times from memory, confirm); damage depth: PPI Municipal Advisory Board, handling and storage of PE pipe.
 */
export function jointFigures(input: { odM: number; minimumWallM: number }): JointFigures {
  const { odM, minimumWallM } = input
  requireNumber('odM', odM, { above: 0 })
  requireNumber('minimumWallM', minimumWallM, { above: 0 })
  const { cooling, soak, heaterOut, hiLo, damage } = fusionTable
  const wallIn = minimumWallM / inchM
  const row = heaterOut.rows.find(([upToIn = 0]) => wallIn <= upToIn)
  return {
    coolingS: cooling.minPerIn * wallIn * minuteS,
    soakS: odM / inchM >= soak.fromOdIn - 1e-9 ? soak.minPerIn * wallIn * minuteS : null,
    heaterOutS: row?.[1] ?? heaterOut.aboveS,
    hiLoM: hiLo.ratio * minimumWallM,
    damageDepthM: damage.ratio * minimumWallM,
  }
}

/** Interfacial pressure commonly used: 75 psi (ASTM F2620, from memory, confirm). */
export const usualInterfacialPa = fusionTable.interfacial.usualPsi * psiPa

/** Force that presses the faces together: interfacial pressure × face area. */
export function fusionForceN(input: { faceAreaM2: number; interfacialPa: number }): number {
  return input.faceAreaM2 * input.interfacialPa
}

/**
 * What the gauge reads while fusing: fusion force ÷ effective piston area + drag read on the gauge.
 *
 * Source: generic butt fusion procedure of PPI TR-33.
 */
export function gaugePressurePa(input: { forceN: number; pistonAreaM2: number; dragPa: number }): number {
  requireNumber('pistonAreaM2', input.pistonAreaM2, { above: 0 })
  return input.forceN / input.pistonAreaM2 + input.dragPa
}

/** Single high pressure procedure by wall, as a cross-check of the cooling rate. Source: ISO 21307:2017, from memory, confirm. */
export function singleHighPressure(wallM: number): { soakS: number; beadM: number; removalS: number; coolingS: number } {
  requireNumber('wallM', wallM, { above: 0 })
  const e = wallM * 1000
  const row = fusionTable.singleHighPressure
  return { soakS: row.soakSPerMm * e, beadM: (row.beadMmPerMm * e + row.beadMm) / 1000, removalS: row.removalSPerMm * e + row.removalS, coolingS: row.coolMinPerMm * e * minuteS }
}
