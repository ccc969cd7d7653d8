import { formatOffset, formatRunning } from '../../units/format.ts'
import { parseQuantity } from '../../units/parse.ts'
import type { QuantityKind } from '../../units/quantity.ts'
import type { Words } from '../context.tsx'
import type { Reading } from './numberFieldState.ts'

/** How a number is written: plainly, or with the side it lies on. */
export type NumberManner = 'plain' | 'running' | 'offset'

/** Side words at the head of a running distance or an offset, in both languages whatever the reader's: crews mix them. */
const sides: Readonly<Record<Exclude<NumberManner, 'plain'>, readonly (readonly [RegExp, 1 | -1])[]>> = {
  running: [[/^(?:exit|salida|sal|e)\b[\s.:]*/i, 1], [/^(?:infeed|entrada|ent|i)\b[\s.:]*/i, -1]],
  offset: [[/^(?:right|derecha|der|r|d)\b[\s.:]*/i, 1], [/^(?:left|izquierda|izq|l|i)\b[\s.:]*/i, -1]],
}
const zeroWords: Readonly<Record<Exclude<NumberManner, 'plain'>, RegExp>> = {
  running: /^(?:at the datum|datum|jaws|en el origen|origen)$/i,
  offset: /^(?:on the line|on line|en la l[ií]nea)$/i,
}
/** Kinds that may be typed with a minus sign. */
const signed: readonly QuantityKind[] = ['temperature', 'temperatureChange', 'slope', 'angle', 'height', 'shortLength', 'length', 'percent']

/** Spanish writes feet and inches with words too long for a field: there they stand as on the tape, 44' 6". */
const compact = ({ language }: Words): { style?: 'tape' } => (language === 'es' ? { style: 'tape' } : {})

export const shownText = (value: number | null, kind: QuantityKind, manner: NumberManner, words: Words): string => {
  if (value === null) return ''
  if (manner === 'running') return formatRunning(value, { ...words.options, ...compact(words) })
  if (manner === 'offset') return formatOffset(value, { ...words.options, ...compact(words) })
  return words.figure({ kind, value }, compact(words))
}

/** What a typed text means in the reader's units; a side word or a minus sign says the side of a running distance or offset. */
export const readFor = (text: string, kind: QuantityKind, manner: NumberManner, words: Words): Reading => {
  const typed = text.trim()
  if (typed === '') return { as: 'empty' }
  if (manner === 'plain') return plain(typed, kind, 1, signed.includes(kind), words)
  if (zeroWords[manner].test(typed)) return { as: 'value', value: 0 }
  for (const [word, sign] of sides[manner]) {
    if (word.test(typed)) return plain(typed.replace(word, ''), kind, sign, false, words)
  }
  return plain(typed, kind, 1, true, words)
}

const plain = (text: string, kind: QuantityKind, sign: 1 | -1, allowNegative: boolean, words: Words): Reading => {
  const read = parseQuantity(text, kind, words.systemOf(kind), { allowNegative, language: words.language })
  if (read.ok) return { as: 'value', value: sign * read.value }
  if (read.reason === 'ask') return { as: 'ask', choices: read.choices.map(({ label, value }) => ({ text: label, value: sign * value })) }
  return { as: 'unreadable', reason: words.say('fieldUnreadable', { why: read.detail, example: read.example }) }
}
