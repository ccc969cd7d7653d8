import { z } from 'zod'
import { expect, it } from 'vitest'
import { issuesOf, pathText } from '../../src/scene/issues.ts'

const said = (schema: z.ZodType, value: unknown, base: PropertyKey[] = []): string[] => {
  const parsed = schema.safeParse(value)
  return parsed.success ? [] : issuesOf(parsed.error, value, base).map(({ path, message }) => `${path}: ${message.en} / ${message.es}`)
}

it('a path reads as one would write it', () => {
  expect(pathText(['items', 3, 'figures', 'ratedLoadN', 'value'])).toBe('items[3].figures.ratedLoadN.value')
  expect(pathText([])).toBe('')
})
it.each([
  ['a missing field', z.strictObject({ a: z.number() }), {}, 'a: is missing; must be a number / falta; debe ser un número'],
  ['another type', z.strictObject({ a: z.boolean() }), { a: 1 }, 'a: must be true or false, is 1 / debe ser true o false, es 1'],
  ['a list for a group', z.strictObject({ a: z.strictObject({}) }), { a: [1] }, 'a: must be a group of fields { … }, is […] / debe ser un grupo de campos { … }, es […]'],
  ['a number out of range', z.strictObject({ a: z.number().positive() }), { a: 0 }, 'a: must be more than 0, is 0 / debe ser mayor que 0, es 0'],
  ['a number above', z.strictObject({ a: z.number().max(4) }), { a: 5 }, 'a: must be at most 4, is 5 / debe ser como máximo 4, es 5'],
  ['an infinite number', z.strictObject({ a: z.number() }), { a: Infinity }, 'a: must be a number, is Infinity / debe ser un número, es Infinity'],
  ['a long text', z.strictObject({ a: z.string().max(3) }), { a: 'abcd' }, 'a: is longer than 3 characters / tiene más de 3 caracteres'],
  ['a short list', z.strictObject({ a: z.array(z.number()).min(2) }), { a: [1] }, 'a: has fewer than 2 entries / tiene menos de 2 elementos'],
  ['an unknown choice', z.strictObject({ a: z.enum(['L', 'R']) }), { a: 'M' }, 'a: "M" is not known here; must be one of: L, R / "M" no se conoce aquí; debe ser uno de: L, R'],
  ['an unknown variant', z.strictObject({ a: z.discriminatedUnion('at', [z.strictObject({ at: z.literal('x') }), z.strictObject({ at: z.literal('y') })]) }), { a: { at: 'z' } }, 'a.at: "z" is not known here; must be one of: x, y / "z" no se conoce aquí; debe ser uno de: x, y'],
])('%s', (_what, schema, value, text) => expect(said(schema, value)).toEqual([text]))
it('each unknown field has its own path, below the path it was read at', () => {
  expect(said(z.strictObject({}), { p: 1, q: 2 }, ['items', 0])).toEqual(['items[0].p: is not a field known here / no es un campo conocido aquí', 'items[0].q: is not a field known here / no es un campo conocido aquí'])
})
it('a long value is cut short in the message', () => {
  expect(said(z.strictObject({ a: z.number() }), { a: 'x'.repeat(500) })[0]?.length).toBeLessThan(160)
})
