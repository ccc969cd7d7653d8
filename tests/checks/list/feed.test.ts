import { describe, expect, it } from 'vitest'
import { feed } from '../../../src/checks/list/feed.ts'
import { fusionYard, levelsOf, runOne, textOf } from '../../helpers/fusionYard.ts'

describe('feeding a stick', () => {
  it('from the usual rack is met', () => expect(levelsOf(feed, fusionYard())).toEqual({ tips: 'met' }))
  it('tips back off a single near stand: FIX with the position', () => {
    const [one] = runOne(feed, fusionYard({ infeed: [-8] }))
    expect(one!.level).toBe('FIX')
    expect(textOf(one!)).toBe('The stick tips back when fed: with its front end at the datum its weight is 12 ft 0 in behind the rear support.')
  })
  it('tips forward from a rack far back: FIX', () => expect(textOf(runOne(feed, fusionYard({ rackFt: -51 }))[0]!)).toMatch(/^The stick tips forward when fed/))
  it('a slender front end under the lift is CHECK', () => expect(levelsOf(feed, fusionYard({ size: '4', rackFt: -27 }))).toEqual({ tips: 'met', front: 'CHECK' }))
})
