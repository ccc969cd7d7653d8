import type { Json, Migration } from './migration.ts'
import { toVersion2 } from './v2.ts'

export type { Json, Migration } from './migration.ts'

/** In order, without gaps: entry i leads to version i + 2. */
export const migrations: readonly Migration[] = [toVersion2]

/**
 * The file brought from the version it says to `to`, step by step; its `fileVersion` is set after each.
 * Fails: RangeError where a step is missing.
 */
export function migrate(file: { readonly [key: string]: Json }, to: number, list: readonly Migration[] = migrations): { readonly [key: string]: Json } {
  let now = file
  for (let version = Number(file['fileVersion']) + 1; version <= to; version++) {
    const step = list.find((one) => one.to === version)
    if (step === undefined) throw new RangeError(`no migration leads to version ${version}`)
    now = { ...step.up(now), fileVersion: version }
  }
  return now
}
