import { describe, expect, it } from 'vitest'
import { faceGap } from '../../../src/checks/list/faceGap.ts'
import { fusionYard, inch, levelsOf, mechanicsOf, runOne } from '../../helpers/fusionYard.ts'

describe('face gap before facing', () => {
  it('is met, CHECK and FIX as the pipe gets slender on the same stands', () => expect(['12', '6', '4'].map((size) => levelsOf(faceGap, fusionYard({ size, dr: 11 }))['all'])).toEqual(['met', 'CHECK', 'FIX']))
  it('is both angles times the outside diameter', () => {
    const document = fusionYard({ size: '6', dr: 11 })
    const { infeed, exit } = mechanicsOf(document).joint(1)!
    expect(runOne(faceGap, document)[0]!.measured!.value).toBeCloseTo((Math.abs(infeed.angleRatio) + Math.abs(exit.angleRatio)) * inch(6.625), 9)
  })
  it('is held against a share of a tenth of the wall', () => {
    // 6.625 / 11 = 0.602 in: CHECK from a quarter of 0.0602 in.
    expect(runOne(faceGap, fusionYard({ size: '6', dr: 11 }))[0]!.limit!.value! / inch(1)).toBeCloseTo(0.25 * 0.0602, 4)
  })
})
