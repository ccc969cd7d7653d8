import type { Localized } from '../localized.ts'

/** Words of a margin with more notes than are worth drawing at once. */
export const noteListWords = {
  more: { en: 'and {count} more {level}: show all', es: 'y {count} {level} más: mostrar todos' },
} as const satisfies Record<string, Localized>
