import { describe, expect, it } from 'vitest'
import { assertPlaceholders, placeholdersOf } from '../../../src/messages/render.ts'
import { proposalWords } from '../../../src/messages/ui/proposalWords.ts'
import { examples } from '../../helpers/makeExamples.ts'
import { ownedRollers, ownedStands, proposeFor } from '../../checks/proposals/proposalCase.ts'

describe('words of the proposals', () => {
  it('have the same placeholders in both languages, and none is empty', () => {
    for (const text of Object.values(proposalWords)) {
      expect(text.es).not.toBe('')
      assertPlaceholders(text, placeholdersOf(text.en))
    }
  })

  it('every sentence of an answer has the values it names, in both languages', () => {
    const sketch = (): ReturnType<(typeof examples)[string]> => examples['maple-fork-first-sketch']!()
    const lists = [null, [ownedStands(12, 0.127, 1.1), ownedRollers(30)], [ownedStands(8, 0.1, 0.6), ownedRollers(40)], [ownedStands(1, 0.127, 1.1), ownedRollers(40)], [ownedStands(8, 0.127, 1.1), ownedRollers(10)], [ownedStands(12, 0.127, 1.1, 500), ownedRollers(40)]]
    const sentences = lists.flatMap((owned) => {
      const result = proposeFor(sketch(), 'stands', owned)
      if (result.status === 'found') return [...result.reasons.map(({ text }) => text), ...result.said, ...result.clears.map(({ what }) => what)]
      return result.status === 'impossible' ? result.unmet.flatMap(({ what, gear }) => [what, gear]) : []
    })
    expect(sentences.length).toBeGreaterThan(20)
    for (const { text, values } of sentences) assertPlaceholders(text, Object.keys(values ?? {}))
  })
})
