import type { Localized } from '../localized.ts'

/** Texts of the range of a finding: low, likely, high and where the limit lies. */
export const rangeWords = {
  low: { en: 'low', es: 'bajo' },
  likely: { en: 'likely', es: 'probable' },
  high: { en: 'high', es: 'alto' },
  limit: { en: 'limit {limit}', es: 'límite {limit}' },
  said: { en: 'low {low}, likely {likely}, high {high}', es: 'bajo {low}, probable {likely}, alto {high}' },
  saidLimit: { en: 'low {low}, likely {likely}, high {high}; limit {limit}', es: 'bajo {low}, probable {likely}, alto {high}; límite {limit}' },
  straddles: { en: 'Between {best} and {worst} by the range of {causes}.', es: 'Entre {best} y {worst} por el margen de {causes}.' },
  within: { en: 'Range by {causes}.', es: 'Margen por {causes}.' },
  working: { en: 'range: working', es: 'margen: calculando' },
  friction: { en: 'the friction', es: 'la fricción' },
  modulus: { en: 'the modulus', es: 'el módulo' },
  temperature: { en: 'the wall temperature', es: 'la temperatura de pared' },
  and: { en: ' and ', es: ' y ' },
  levelMet: { en: 'met', es: 'cumplido' },
} satisfies Record<string, Localized>
