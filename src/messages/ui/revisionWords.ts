import type { Localized } from '../localized.ts'

/** Letter in the title block with the one it replaces: 'B · was A'. */
export const revisionWords = {
  was: { en: '{letter} · was {before}', es: '{letter} · antes {before}' },
} satisfies Record<string, Localized>
