import { expect, it } from 'vitest'
import { watchBattery, type BatteryNow } from '../../src/app/services/battery.ts'
import { megabytes } from '../../src/ui/keep/megabytes.ts'
import { NUDGE_EDITS, nudgeOf } from '../../src/ui/keep/nudge.ts'
import { keeperOn } from '../helpers/keeperBench.ts'
import { memoryTables } from '../../src/app/storage/tables.ts'

const calm = { editsSinceFile: 0, isBatteryLow: false, persisted: null, usedBytes: 1e6, allowedBytes: 1e9 } as const

it('a file is asked for after many edits only where the browser has not promised to keep them', () => {
  expect(nudgeOf(calm)).toBeNull()
  expect(nudgeOf({ ...calm, editsSinceFile: NUDGE_EDITS - 1 })).toBeNull()
  expect(nudgeOf({ ...calm, editsSinceFile: NUDGE_EDITS })).toBe('edits')
  expect(nudgeOf({ ...calm, editsSinceFile: NUDGE_EDITS, persisted: false })).toBe('edits')
  expect(nudgeOf({ ...calm, editsSinceFile: 10 * NUDGE_EDITS, persisted: true })).toBeNull()
})

it('a low battery or a full device asks at the first edit that is in no file', () => {
  expect(nudgeOf({ ...calm, isBatteryLow: true })).toBeNull()
  expect(nudgeOf({ ...calm, isBatteryLow: true, editsSinceFile: 1, persisted: true })).toBe('battery')
  expect(nudgeOf({ ...calm, usedBytes: 9.5e8, editsSinceFile: 1, persisted: true })).toBe('room')
  expect(nudgeOf({ ...calm, usedBytes: null, editsSinceFile: 1 })).toBeNull()
})

it('the battery is low below a fifth while it is not charging', () => {
  const { state } = keeperOn(memoryTables())
  let hear: (now: BatteryNow) => void = () => undefined
  watchBattery({ watch: (told) => { hear = told } }, state)
  const lowAt = (levelRatio: number, isCharging: boolean): boolean => {
    hear({ levelRatio, isCharging })
    return state.getState().isBatteryLow
  }
  expect([lowAt(0.21, false), lowAt(0.19, false), lowAt(0.19, true), lowAt(0.2, false)]).toEqual([false, true, false, false])
})

it('room is told in MB, tenths while there is little', () => {
  expect([0, 440_000, 12_300_000, null].map(megabytes)).toEqual(['0', '0.4', '12', '?'])
})
