import { describe, expect, it } from 'vitest'
import { InputRefused, listField, numberField, objectField, oneOf, textField } from '../../src/headless/fields.ts'

const read = objectField({ length: numberField({ above: 0 }), kind: oneOf('a', 'b') }, { note: textField, levels: listField(numberField({ atLeast: 0, atMost: 5 }), { atLeast: 1, atMost: 3 }) })
const good = { length: 2, kind: 'a' }

describe('strict fields', () => {
  it('reads what is right, and leaves out what was not given', () => {
    expect(read(good, '')).toEqual(good)
    expect(read({ ...good, levels: [0, 5], note: 'x' }, '')).toEqual({ ...good, levels: [0, 5], note: 'x' })
  })

  it.each<[string, unknown, string]>([
    ['unknown field', { ...good, colour: 1 }, 'colour is not a known field'],
    ['missing field', { kind: 'a' }, 'length is missing'],
    ['null is no value', { ...good, length: null }, 'length is null, must be a number'],
    ['text for a number', { ...good, length: '2' }, 'length is "2", must be a number'],
    ['not finite', { ...good, length: JSON.parse('1e999') }, 'length is not a finite number'],
    ['beyond sense', { ...good, length: 1e20 }, 'length is 100000000000000000000, larger'],
    ['bound above', { ...good, length: 0 }, 'length is 0, must be above 0'],
    ['bound at least', { ...good, levels: [-1] }, 'levels[0] is -1, must be at least 0'],
    ['bound at most', { ...good, levels: [1, 6] }, 'levels[1] is 6, must be at most 5'],
    ['list too short', { ...good, levels: [] }, 'levels has 0 entries, needs at least 1'],
    ['list too long', { ...good, levels: [1, 1, 1, 1] }, 'levels has 4 entries, at most 3'],
    ['no list', { ...good, levels: { 0: 1 } }, 'levels is an object, must be a list'],
    ['no such choice', { ...good, kind: 'c' }, 'kind is "c", must be "a" or "b"'],
    ['no object', [1], 'the case is a list, must be an object'],
    ['nothing', null, 'the case is null, must be an object'],
    ['a name of the prototype', JSON.parse('{"length":2,"kind":"a","__proto__":1}'), '__proto__ is not a known field'],
    ['an inherited name', { ...good, toString: 1 }, 'toString is not a known field'],
    ['text too long', { ...good, note: 'x'.repeat(1001) }, 'note is longer than 1000 characters'],
  ])('%s', (_name, value, message) => {
    expect(() => read(value, '')).toThrow(InputRefused)
    expect(() => read(value, '')).toThrow(message)
  })

  it('names the whole path of a nested field', () => {
    const outer = objectField({ path: listField(read, { atLeast: 1, atMost: 9 }) }, {})
    expect(() => outer({ path: [good, { ...good, length: -1 }] }, '')).toThrow('path[1].length is -1')
  })
})
