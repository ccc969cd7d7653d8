import { expect, it } from 'vitest'
import { en } from '../../../src/messages/ui/en.ts'
import { es } from '../../../src/messages/ui/es.ts'
import { pseudoText, t, uiText, type UiKey } from '../../../src/messages/ui/text.ts'
import { placeholdersOf } from '../../../src/messages/render.ts'

const keys = Object.keys(en) as UiKey[]

it('Spanish has every key of English and no other', () => {
  expect(Object.keys(es).sort()).toEqual([...keys].sort())
})

it('every key has words in both languages and the same places for values', () => {
  const wrong = keys.filter((key) => en[key].trim() === '' || es[key].trim() === '' || placeholdersOf(es[key]).sort().join() !== placeholdersOf(en[key]).sort().join())
  expect(wrong).toEqual([])
})

it('fills values in and says which one is missing', () => {
  expect(t('en', 'gearLeft', { count: 3 })).toBe('3 left')
  expect(t('es', 'gearLeft', { count: 3 })).toBe('quedan 3')
  expect(() => t('en', 'gearLeft')).toThrow(/count/)
})

it('writes quantities in the units of the reader', () => {
  // 0.7239 m / 0.0254 = 28.5 in
  const values = { length: { kind: 'height', value: 0.7239 } as const }
  expect(uiText('sticksShort', { language: 'en', system: 'feetInches' }, values)).toBe('28\u2009½ in short')
  expect(uiText('sticksShort', { language: 'es', system: 'metric' }, values)).toBe('faltan 724 mm')
})

it('the pseudo-language accents every small letter, is about a third longer and leaves places for values alone', () => {
  const text = pseudoText('typed {typed}, read as {read}')
  expect(text).toContain('{typed}')
  expect(text).toContain('{read}')
  expect(text.replace(/\{[^}]*\}/g, '')).not.toMatch(/[a-z]/)
  // 'typed , read as ' has 16 letters; 35 % of it, rounded up, is 6.
  expect(text.length).toBe('typed {typed}, read as {read}'.length + 6)
  expect(uiText('gearLeft', { language: 'en', system: 'metric', pseudo: true }, { count: 3 })).toMatch(/^3 łéƒŧ/)
})
