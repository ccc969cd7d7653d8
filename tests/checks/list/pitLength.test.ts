import { describe, expect, it } from 'vitest'
import { pitLength } from '../../../src/checks/list/pitLength.ts'
import { findingsOf, ftM, levelsOf, siteOf, withFigures } from '../yardCase.ts'

const pipe = { system: 'IPS', size: '24', dr: 17, material: 'PE4710' } as const
const pit = (lengthFt: number, depthFt: number | null, isPit = true) => siteOf({ job: { pipe } }, withFigures('trench', 'trench:1', [{ xM: 100, yM: 0 }, { xM: 100 + lengthFt * ftM, yM: 0 }], { depthM: depthFt === null ? null : depthFt * ftM }, { isPit }))

describe('length of the insertion pit', () => {
  it('8 ft down with 24 in DR 17 takes 40.8 ft: a pit of 30 ft is too short', () => {
    // R = 27 × 2 ft = 54 ft; √(8 × (4 × 54 − 8)) = √1,664 = 40.79 ft. ASTM F585, from memory, confirm.
    const [short] = findingsOf(pitLength, pit(30, 8))
    expect([short!.level, short!.measured!.value! / ftM, short!.limit!.value! / ftM]).toEqual(['FIX', expect.closeTo(30, 6), expect.closeTo(40.792, 3)])
    expect(levelsOf(pitLength, pit(40.7, 8))).toEqual(['FIX'])
    expect(levelsOf(pitLength, pit(40.8, 8))).toEqual(['met'])
  })
  it('asks for the depth, and leaves a trench that is no pit alone', () => {
    const [unknown] = findingsOf(pitLength, pit(30, null))
    expect([unknown!.isUnknown, unknown!.missing[0]!.path]).toEqual([true, 'figures.depthM.value'])
    expect(findingsOf(pitLength, pit(30, 8, false))).toEqual([])
  })
  it('of a pipe without a published radius it says so', () => {
    expect(levelsOf(pitLength, siteOf({ job: { pipe: { ...pipe, dr: 50 } } }, withFigures('trench', 'trench:1', [{ xM: 0, yM: 9 }, { xM: 9, yM: 9 }], { depthM: 2 }, { isPit: true })))).toEqual(['CHECK'])
  })
})
