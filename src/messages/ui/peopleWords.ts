import type { Localized } from '../localized.ts'

/** Words of the people group of the gear edge. */
export const peopleWords = {
  usual: { en: 'Usual crew spots', es: 'Puestos habituales' },
} as const satisfies Record<string, Localized>
