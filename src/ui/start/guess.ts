import type { Language } from '../../messages/localized.ts'
import type { UnitSystem } from '../../units/format.ts'

/** Countries whose crews tape in feet and inches. Common practice, no source; shown on the start page and changeable there. */
const feetCountries = ['US', 'PR', 'GU', 'VI', 'AS', 'LR']

/** Units guessed from the languages the browser asks for: the country of the first that names one; English without a country counts as feet. */
export const guessedSystem = (languages: readonly string[]): UnitSystem => {
  const country = languages.map((tag) => /[-_]([A-Z]{2})\b/i.exec(tag)?.[1]?.toUpperCase()).find((code) => code !== undefined)
  if (country !== undefined) return feetCountries.includes(country) ? 'feetInches' : 'metric'
  return languages[0]?.toLowerCase().startsWith('en') === true || languages.length === 0 ? 'feetInches' : 'metric'
}

export const guessedLanguage = (languages: readonly string[]): Language =>
  languages.find((tag) => /^(en|es)\b/i.test(tag))?.toLowerCase().startsWith('es') === true ? 'es' : 'en'
