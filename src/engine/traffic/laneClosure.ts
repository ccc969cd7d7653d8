/** Taper and buffer of a closed traffic lane (shared/tables/traffic.json). */
import trafficJson from '../../../shared/tables/traffic.json' with { type: 'json' }
import { footM } from '../../units/factors.ts'

const MPH_M_PER_S = 0.44704

export interface LaneClosure {
  /** Cones that lead traffic out of the lane. */
  taperM: number
  /** A third of it, where only a shoulder is closed. */
  shoulderTaperM: number
  /** Empty road between taper and work; null past the table (75 mph). */
  bufferM: number | null
}

/**
 * Taper L = W·S²/60 (feet, mph) up to 40 mph, W·S above; buffer by the next speed of the table.
 * `widthM` > 0, `speedMPerS` > 0. Source: MUTCD Part 6; the buffer table from memory, confirm.
 */
export function laneClosure(widthM: number, speedMPerS: number): LaneClosure {
  const [widthFt, mph] = [widthM / footM, speedMPerS / MPH_M_PER_S]
  // Rounding of a speed stored in m/s must not take 40 mph for more.
  const isSlow = mph <= trafficJson.taper.slowestFastMph + 1e-6
  const taperM = (isSlow ? (widthFt * mph ** 2) / 60 : widthFt * mph) * footM
  const row = trafficJson.buffer.rows.find((one) => one.mph >= mph - 1e-6)
  return { taperM, shoulderTaperM: taperM / 3, bufferM: row === undefined ? null : row.ft * footM }
}
