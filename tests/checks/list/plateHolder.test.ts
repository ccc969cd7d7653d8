import { describe, expect, it } from 'vitest'
import { plateHolderPlace } from '../../../src/checks/list/plateHolder.ts'
import { item, onRun } from '../../helpers/documents.ts'
import { levelsOf, machineAt0, siteOf } from '../yardCase.ts'

describe('the holder of the hot plate', () => {
  const holder = (offM: number, onGrass: boolean | null) => {
    // Half the width of the machine and of the holder (0.5 m) between the middles: offM is clear room.
    const halfM = (machineAt0() as unknown as { figures: { widthM: { value: number } } }).figures.widthM.value / 2
    return levelsOf(plateHolderPlace, siteOf({}, machineAt0(), item('plateHolder', 'plateHolder:1', onRun(0, { offsetM: halfM + 0.25 + offM }), { onGrass })))
  }
  it('stands within 6 ft of the machine', () => expect([holder(1.82, false), holder(1.84, false)]).toEqual([['met'], ['CHECK']]))
  it('stands on no dry grass, and an unknown ground is asked for', () => expect([holder(1, true), holder(1, null)]).toEqual([['FIX'], ['CHECK?']]))
})
