import type { Localized } from '../../messages/localized.ts'

const isLocalized = (value: unknown): value is Localized => typeof value === 'object' && value !== null && 'en' in value && 'es' in value

/** What storage says of work it has and cannot open. */
export const reasonOf = (error: unknown): Localized => {
  if (typeof error === 'object' && error !== null && 'reason' in error && isLocalized(error.reason)) return error.reason
  const detail = error instanceof Error ? error.message : String(error)
  return { en: `This device could not read it: ${detail}`, es: `Este equipo no lo pudo leer: ${detail}` }
}
