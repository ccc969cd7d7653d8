/** A text for a person, in each language; the types live in units because parsing answers in them too. */
import type { Language, Localized } from '../units/language.ts'

export type { Language, Localized }

/** The text in one language. Spanish may be empty until its text is written; then English is shown. */
export function textIn(text: Localized, language: Language): string {
  return text[language] || text.en
}
