import type { StorageState } from '../services.ts'

/** Edits in no file after which one is asked for, where the browser may clear this device's storage. House rule. */
export const NUDGE_EDITS = 40
/** With a low battery a few are enough. */
const NUDGE_EDITS_LOW = 1
/** Share of the allowed room above which the next write may fail. */
const FULL_RATIO = 0.9

export type Nudge = 'battery' | 'edits' | 'room'

type Facts = Pick<StorageState, 'editsSinceFile' | 'isBatteryLow' | 'persisted' | 'usedBytes' | 'allowedBytes'>

/** Why a file should be saved now, the most pressing reason first; null: no reason. */
export function nudgeOf({ editsSinceFile, isBatteryLow, persisted, usedBytes, allowedBytes }: Facts): Nudge | null {
  if (isBatteryLow && editsSinceFile >= NUDGE_EDITS_LOW) return 'battery'
  if (usedBytes !== null && allowedBytes !== null && allowedBytes > 0 && usedBytes > FULL_RATIO * allowedBytes && editsSinceFile > 0) return 'room'
  if (persisted !== true && editsSinceFile >= NUDGE_EDITS) return 'edits'
  return null
}
