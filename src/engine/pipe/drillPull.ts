/** Pull at the four points of a directionally drilled crossing: what the string in the yard is pulled with. */
import { requireNumber } from '../outcome.ts'

export interface DrillPullInput {
  /** Weight of the pipe on the ground, and its net weight in the drilling fluid (down positive, floating negative). */
  lineLoadNPerM: number
  fluidLoadNPerM: number
  /** L1 extra length, L2 entry slope, L3 level run, L4 exit slope. */
  extraM: number
  entryM: number
  levelM: number
  exitM: number
  depthM: number
  entryRad: number
  exitRad: number
  groundFrictionRatio: number
  boreFrictionRatio: number
}

/**
 * Pull when the pipe enters (A), at the end of the entry slope (B), of the level run (C) and at the exit (D).
 *
 * Model:  drag on the ground and in the bore, capstan at both slopes, weight over the depth; no drag of the fluid.
 * Fails:  RangeError for a friction, length or angle below 0 or not finite.
 * Source: ASTM F1962, equations for TA to TD, from memory, confirm.
 */
export function drillPullN(input: DrillPullInput): { enterN: number; entryN: number; levelN: number; exitN: number } {
  const { lineLoadNPerM: wa, fluidLoadNPerM: wb, extraM: L1, entryM: L2, levelM: L3, exitM: L4, depthM: H, entryRad: a, exitRad: b, groundFrictionRatio: va, boreFrictionRatio: vb } = input
  for (const [name, value] of Object.entries(input)) requireNumber(name, value, name === 'fluidLoadNPerM' ? {} : { atLeast: 0 })
  const ground = Math.exp(va * a)
  const enterN = ground * va * wa * (L1 + L2 + L3 + L4)
  const entryN = Math.exp(vb * a) * (enterN + vb * Math.abs(wb) * L2 + wb * H - va * wa * L2 * ground)
  const levelN = entryN + vb * Math.abs(wb) * L3 - Math.exp(vb * a) * va * wa * L3 * ground
  const exitN = Math.exp(vb * b) * (levelN + vb * Math.abs(wb) * L4 - wb * H - Math.exp(vb * a) * va * wa * L4 * ground)
  return { enterN, entryN, levelN, exitN }
}
