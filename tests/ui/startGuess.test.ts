import { expect, it } from 'vitest'
import { guessedLanguage, guessedSystem } from '../../src/ui/start/guess.ts'
import { timeWords } from '../../src/ui/title/timeWords.ts'
import { resolvedTheme } from '../../src/ui/shell/useWindow.ts'

it.each([
  [['en-US'], 'feetInches'], [['es-US', 'en'], 'feetInches'], [['en-GB'], 'metric'], [['es-MX'], 'metric'], [['de'], 'metric'], [['en'], 'feetInches'], [[], 'feetInches'], [['en', 'en-AU'], 'metric'],
] as const)('a browser that asks for %j gets %s', (languages, system) => {
  expect(guessedSystem(languages)).toBe(system)
})

it('Spanish only where it is asked for before English', () => {
  expect(guessedLanguage(['es-MX', 'en'])).toBe('es')
  expect(guessedLanguage(['en', 'es'])).toBe('en')
  expect(guessedLanguage(['de'])).toBe('en')
})

it('a time of today is a time of day, an older one has its day', () => {
  const now = new Date(2026, 4, 7, 18, 0)
  expect(timeWords(new Date(2026, 4, 7, 14, 32).toISOString(), 'en', now)).toBe('14:32')
  expect(timeWords(new Date(2026, 4, 6, 14, 32).toISOString(), 'en', now)).toMatch(/May 6.*14:32/)
  expect(timeWords('nonsense', 'en', now)).toBe('nonsense')
})

it('the light follows the device unless said otherwise', () => {
  expect(resolvedTheme('auto', true)).toBe('night')
  expect(resolvedTheme('auto', false)).toBe('day')
  expect(resolvedTheme('sun', true)).toBe('sun')
})
