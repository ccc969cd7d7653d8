/**
 * The languages a text for a person exists in. `Localized` lives here, in the lowest layer,
 * because parsing answers with a reason a person reads; src/messages re-exports both types.
 */
export type Language = 'en' | 'es'

export interface Localized {
  en: string
  es: string
}
