import { describe, expect, it } from 'vitest'
import { textIn } from '../../src/messages/localized.ts'
import { assertPlaceholders, placeholdersOf, renderSentence, renderText } from '../../src/messages/render.ts'

const text = { en: '{label} at {where} carries {load}, {n} sticks', es: '{label} en {where} lleva {load}, {n} tubos' }
const values = {
  label: { en: 'Stand', es: 'Soporte' },
  where: { runningM: 7.62 },
  load: { kind: 'force' as const, value: null },
  n: 7,
}

describe('texts with values', () => {
  it('fills every placeholder in the language and units of the reader', () => {
    expect(renderText(text, values, { system: 'feetInches', language: 'en' })).toBe('Stand at exit 25 ft 0 in carries ?, 7 sticks')
    expect(renderText(text, values, { system: 'metric', language: 'es' })).toBe('Soporte en salida 7.62 m lleva ?, 7 tubos')
  })

  it('writes an offset with its side and leaves a string as it is', () => {
    const offset = { en: '{a} {b}', es: '{a} {b}' }
    expect(renderText(offset, { a: { offsetM: -0.1524 }, b: '{b}' }, { system: 'feetInches', language: 'en' })).toBe('L 6 in {b}')
  })

  it('throws for a missing value, naming it', () => {
    expect(() => renderText(text, { label: 'x' }, { system: 'metric', language: 'en' })).toThrow('{where}')
  })

  it('shows English where Spanish is not written yet', () => {
    expect(textIn({ en: 'Rack', es: '' }, 'es')).toBe('Rack')
  })
})

describe('a sentence', () => {
  const sentence = (en: string, es: string, about: string, language: 'en' | 'es' = 'en') => renderSentence({ en, es }, { about }, { system: 'metric', language })
  it('starts with a capital where it begins with the name of an item', () => {
    expect(sentence('{about} reaches the wire.', '{about} llega al cable.', 'loader L')).toBe('Loader L reaches the wire.')
    expect(sentence('{about} reaches the wire.', '{about} llega al cable.', 'ángulo del tubo', 'es')).toBe('Ángulo del tubo llega al cable.')
    expect(sentence('Is {about} there?', '¿{about} está ahí?', 'anclaje', 'es')).toBe('¿Anclaje está ahí?')
  })
  it('is left alone where it begins with a capital or a figure, and inside', () => {
    expect(sentence('E1 and {about}.', '', 'loader L')).toBe('E1 and loader L.')
    expect(sentence('{about}: too near.', '', '138 kV line')).toBe('138 kV line: too near.')
  })
})

describe('the placeholder check of message tables', () => {
  it('lists each name once', () => expect(placeholdersOf('{a} {b} {a}')).toEqual(['a', 'b']))
  it('accepts equal sets in another order', () => expect(() => assertPlaceholders({ en: '{a} {b}', es: '{b} {a}' }, ['a', 'b'])).not.toThrow())
  it('refuses a name not allowed', () => expect(() => assertPlaceholders({ en: '{c}', es: '{c}' }, ['a'])).toThrow('{c}'))
  it('refuses languages that differ', () => expect(() => assertPlaceholders({ en: '{a}', es: 'nada' }, ['a'])).toThrow('differ'))
})
