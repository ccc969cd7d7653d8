import { describe, expect, it } from 'vitest'
import { jawsFitted } from '../../../src/checks/list/jawsFitted.ts'
import { changed, fusionYard, inch, runOne, textOf, withFigure } from '../../helpers/fusionYard.ts'

const fitted = (figures: Record<string, number>): ReturnType<typeof runOne> =>
  runOne(jawsFitted, Object.entries(figures).reduce((document, [name, value]) => changed(document, 'machine:1', (record) => withFigure(record, name, value)), fusionYard()))

describe('jaws fitted for the pipe', () => {
  it('the right inserts are met', () => expect(fitted({ jawsFittedOdM: inch(12.75) })[0]!.level).toBe('met'))
  it('12 in DIPS inserts for 12 in IPS pipe are FIX (13.2 in against 12.75 in)', () => {
    const [one] = fitted({ jawsFittedOdM: inch(13.2) })
    expect(one!.level).toBe('FIX')
    expect(textOf(one!)).toMatch(/^The jaws are fitted for 13 .* in, the pipe is 12 ¾ in outside\.$|^The jaws are fitted for 1 ft 1/)
    expect(one!.margin!.value).toBeLessThan(0)
  })
  it('a pipe outside the machine’s range is FIX', () => {
    expect(fitted({ largestOdM: inch(12) })[0]!.level).toBe('FIX')
    expect(fitted({ smallestOdM: inch(14) })[0]!.level).toBe('FIX')
  })
  it('unknown inserts are asked for elsewhere', () => expect(runOne(jawsFitted, fusionYard())).toEqual([]))
})
