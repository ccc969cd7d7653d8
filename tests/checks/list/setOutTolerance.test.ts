import { describe, expect, it } from 'vitest'
import { setOutTolerance } from '../../../src/checks/list/setOutTolerance.ts'
import { fusionYard, inch, runOne, textOf } from '../../helpers/fusionYard.ts'

describe('set-out tolerance', () => {
  it('a stiff pipe on a stand near the jaws is CHECK under ⅛ in', () => {
    const [one] = runOne(setOutTolerance, fusionYard({ size: '36', exits: [[10, 0], [30, 0]] }))
    expect(one!.level).toBe('CHECK')
    expect(one!.itemIds).toContain('stand:e1')
    expect(one!.measured!.value).toBeGreaterThanOrEqual(inch(1 / 16) - 1e-12)
    expect(one!.measured!.value).toBeLessThan(inch(1 / 8))
  })
  it('is NOTE where only the rack, levelled as one frame, has to be set so fine', () => {
    const [one] = runOne(setOutTolerance, fusionYard())
    expect([one!.level, textOf(one!)]).toEqual(['NOTE', 'Set R1 to within ± 0.093 in of the planned height.'])
  })
  it('slender pipe is met and names the tightest', () => expect(textOf(runOne(setOutTolerance, fusionYard({ size: '8' }))[0]!)).toMatch(/^Set R1 to ± .* the others no finer\.$/))
})
