import type { Localized } from '../localized.ts'

/** Behind the letter in the title block, the one it replaces: 'was A'. */
export const revisionWords = {
  was: { en: 'was {before}', es: 'era {before}' },
} satisfies Record<string, Localized>
