import type { Finding, Level, Sentence, Source } from '../../checks/finding.ts'
import { asSentence } from '../../messages/render.ts'
import type { UiKey } from '../../messages/ui/text.ts'
import type { Words } from '../context.tsx'

export const levelKey = (level: Level): UiKey => (({ STOP: 'levelStop', FIX: 'levelFix', CHECK: 'levelCheck', NOTE: 'levelNote', met: 'levelMet' }) as const)[level]

/** What a finding says or advises, with a capital at its start. */
export const sentenceWords = ({ text, values }: Sentence, words: Words): string => asSentence(words.local(text, values), words.language)

const sourceKeys = { published: 'sourcePublished', mechanics: 'sourceMechanics', plate: 'sourcePlate', jobRule: 'sourceJobRule', houseRule: 'sourceHouseRule' } as const

/** Class of a source in words: 'house rule', 'house rule, edited', 'published, from memory, confirm'. */
export const sourceWords = (source: Source, words: Words): string =>
  [words.say(sourceKeys[source.class]), ...(source.edited === true ? [words.say('sourceEdited')] : []), ...(source.fromMemory === true ? [words.say('sourceFromMemory')] : [])].join(', ')

/**
 * Value against limit. Whether the limit is a most or a least is read off the margin, which by contract is
 * negative where the limit is passed: limit − measured for a most, measured − limit for a least.
 */
export const valueWords = (finding: Finding, words: Words): string | null => {
  const { measured, limit, margin } = finding
  if (measured === null) return limit === null ? null : words.say('valueLimitOnly', { limit: words.figure(limit) })
  if (limit === null || limit.value === null) return words.figure(measured)
  const values = { measured: words.figure(measured), limit: words.figure(limit) }
  // Where the two read alike, 'at most' would say that nothing is wrong.
  if (finding.level !== 'met' && values.measured === values.limit) return words.say('valueLimit', values)
  if (measured.value === null || margin?.value === null || margin === null) return words.say('valueLimit', values)
  const isMost = Math.abs(limit.value - measured.value - margin.value) <= Math.abs(measured.value - limit.value - margin.value)
  return words.say(isMost ? 'valueAtMost' : 'valueAtLeast', values)
}
