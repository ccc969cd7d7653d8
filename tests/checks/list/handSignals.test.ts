import { describe, expect, it } from 'vitest'
import { handSignals } from '../../../src/checks/list/handSignals.ts'
import { item, onRun } from '../../helpers/documents.ts'
import { levelsOf, siteOf } from '../yardCase.ts'

const speaking = (...languages: (string | null)[]) => siteOf({}, ...languages.map((language, i) => item('crew', `crew:${i + 1}`, onRun(5 * i), { language })))

describe('hand signals', () => {
  it('are asked for from two first languages on, as on a crew of five of whom two speak only Spanish', () => {
    expect(levelsOf(handSignals, speaking('en', 'en', 'en', 'es', 'es'))).toEqual(['CHECK'])
    expect(levelsOf(handSignals, speaking('es', 'es'))).toEqual([])
  })
  it('are not asked for by spots of which nobody has said', () => expect(levelsOf(handSignals, speaking('en', null, null))).toEqual([]))
})
