import { describe, expect, it } from 'vitest'
import type { Finding, Level } from '../../src/checks/finding.ts'
import { cappedNotes, MOST_OF_LEVEL } from '../../src/ui/findings/capped.ts'
import type { NumberedFinding } from '../../src/ui/findings/order.ts'

/** Only key and level are looked at. */
const many = (level: Level, count: number, from = 1): NumberedFinding[] => Array.from({ length: count }, (_, i) => ({ number: from + i, finding: { key: `${level} ${i}`, level } as Finding }))

describe('a margin with thousands of notes', () => {
  const numbered = [...many('STOP', 2), ...many('FIX', 3000, 3), ...many('NOTE', 41, 3003)]

  it('draws the first 40 of a level and says how many more there are', () => {
    // 3,000 − 40 = 2,960 and 41 − 40 = 1.
    expect(cappedNotes(numbered, [], null).map(({ level, shown, more }) => [level, shown.length, more])).toEqual([['STOP', 2, 0], ['FIX', 40, 2960], ['NOTE', 40, 1]])
  })

  it('keeps the numbers of the whole list', () => {
    expect(cappedNotes(numbered, [], null)[2]!.shown[0]!.number).toBe(3003)
  })

  it('shows all of a level that was asked for, and of no other', () => {
    expect(cappedNotes(numbered, ['FIX'], null).map(({ more }) => more)).toEqual([0, 0, 1])
  })

  it('shows the finding that is open even where it lies beyond', () => {
    expect(cappedNotes(numbered, [], 'NOTE 40').map(({ more }) => more)).toEqual([0, 2960, 0])
    expect(cappedNotes(numbered, [], 'NOTE 3').map(({ more }) => more)).toEqual([0, 2960, 1])
  })

  it('leaves a short list as it is', () => {
    const [notes] = cappedNotes(many('CHECK', MOST_OF_LEVEL), [], null)
    expect([notes!.shown.length, notes!.more]).toEqual([40, 0])
  })
})
