/**
 * Texts with `{name}` places filled by values. A quantity is written in the reader's units, a running
 * distance and an offset with their side words, a Localized value in the reader's language.
 */
import { formatOffset, formatQuantity, formatRunning } from '../units/format.ts'
import type { FormatOptions } from '../units/format.ts'
import type { Quantity } from '../units/quantity.ts'
import { textIn } from './localized.ts'
import type { Language, Localized } from './localized.ts'

/** A running distance from the datum, exit positive. */
export interface RunningValue {
  runningM: number | null
}

/** An offset from the axis, right positive looking down-string. */
export interface OffsetValue {
  offsetM: number | null
}

export type TextValue = Quantity | RunningValue | OffsetValue | Localized | string | number

const placeholder = /\{([A-Za-z][A-Za-z0-9]*)\}/g

function valueText(value: TextValue, options: FormatOptions): string {
  if (typeof value === 'string') return value
  if (typeof value === 'number') return formatQuantity({ kind: 'count', value }, options)
  if ('kind' in value) return formatQuantity(value, options)
  if ('runningM' in value) return formatRunning(value.runningM, options)
  if ('offsetM' in value) return formatOffset(value.offsetM, options)
  return textIn(value, options.language)
}

/**
 * The text in one language with every `{name}` replaced.
 *
 * Input:  a bare number is a count and is rounded to whole; use a Quantity for anything with a unit.
 * Fails:  RangeError naming the placeholder where no value was given: a half-filled sentence must not reach a person.
 */
export function renderText(text: Localized, values: Readonly<Record<string, TextValue>>, options: FormatOptions): string {
  return textIn(text, options.language).replace(placeholder, (_match, name: string) => {
    const value = values[name]
    if (value === undefined) throw new RangeError(`renderText: no value for {${name}} in "${text.en}"`)
    return valueText(value, options)
  })
}

/** The text with a capital at its start. Marks that open a sentence (¿, ¡, quotes, brackets) are passed over; a figure stays. */
export const asSentence = (text: string, language: Language): string =>
  text.replace(/^([\s¿¡«“‘"'(]*)(\p{Ll})/u, (_match, before: string, first: string) => `${before}${first.toLocaleUpperCase(language)}`)

/**
 * A sentence a person reads, as a finding's `what` and `move`: as `renderText`, with a capital at its start where it
 * begins with an item's name ('Loader L reaches …').
 */
export const renderSentence = (text: Localized, values: Readonly<Record<string, TextValue>>, options: FormatOptions): string => asSentence(renderText(text, values, options), options.language)

/** The placeholder names of a text in one language, each once, in order of first use. */
export function placeholdersOf(text: string): string[] {
  return [...new Set([...text.matchAll(placeholder)].map((match) => match[1] ?? ''))]
}

/**
 * Throws where English and Spanish use other placeholders, or one uses a name not among `allowed`.
 * For tests over message tables; an empty Spanish text passes, it is shown in English.
 */
export function assertPlaceholders(text: Localized, allowed: readonly string[]): void {
  const inEnglish = placeholdersOf(text.en)
  const unknown = inEnglish.filter((name) => !allowed.includes(name))
  if (unknown.length > 0) throw new RangeError(`"${text.en}" uses {${unknown.join('}, {')}}, allowed are ${allowed.join(', ') || 'none'}`)
  if (text.es === '') return
  const inSpanish = placeholdersOf(text.es)
  if ([...inEnglish].sort().join() !== [...inSpanish].sort().join()) {
    throw new RangeError(`"${text.en}" and "${text.es}" differ in placeholders: ${inEnglish.join(', ')} and ${inSpanish.join(', ')}`)
  }
}
