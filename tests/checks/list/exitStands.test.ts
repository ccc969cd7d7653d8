import { describe, expect, it } from 'vitest'
import { exitStands, levelExitStands } from '../../../src/checks/list/exitStands.ts'
import { fusionYard, levelsOf, runOne, siteOf } from '../../helpers/fusionYard.ts'

describe('two level stands on the exit (common practice, no source)', () => {
  it('two are met, a soft start of 1½ in counts as level', () => {
    expect(levelsOf(exitStands, fusionYard())['all']).toBe('met')
    expect(levelExitStands(siteOf(fusionYard({ exits: [[12.5, 0], [25, 1.5], [35.7, 8.5]] }))).map(({ label }) => label)).toEqual(['E1', 'E2'])
  })
  it('one is NOTE where C is 1 or less', () => expect(levelsOf(exitStands, fusionYard({ exits: [[20, 0]] }))['all']).toBe('NOTE'))
  it('none is CHECK where C is over 1', () => expect(levelsOf(exitStands, fusionYard({ exits: [] }))['all']).toBe('CHECK'))
  it('proposes the usual places: 20 ft, then 15 ft beyond it, with 40 ft sticks', () => {
    const at = (exits: [number, number][]): number => (runOne(exitStands, fusionYard({ exits }))[0]!.remedy!.args as { place: { runningM: number } }).place.runningM / 0.3048
    expect(at([])).toBeCloseTo(20, 2)
    expect(at([[20, 0]])).toBeCloseTo(35, 2)
  })
})
