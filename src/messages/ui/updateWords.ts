import type { Localized } from '../localized.ts'

/** Texts of a new version that waits. */
export const updateWords = {
  ready: { en: 'New version: reload when you are ready.', es: 'Versión nueva: recargue cuando quiera.' },
  reload: { en: 'Reload', es: 'Recargar' },
  later: { en: 'Later', es: 'Después' },
} satisfies Record<string, Localized>
