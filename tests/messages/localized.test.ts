import { expect, it } from 'vitest'
import { textIn } from '../../src/messages/localized.ts'

it('gives the text in the language asked for, English where Spanish is not written yet', () => {
  expect(textIn({ en: 'Rack', es: 'Cama' }, 'es')).toBe('Cama')
  expect(textIn({ en: 'Rack', es: 'Cama' }, 'en')).toBe('Rack')
  expect(textIn({ en: 'Rack', es: '' }, 'es')).toBe('Rack')
})
