import { describe, expect, it } from 'vitest'
import { lengthEcho, parseLength } from '../../src/units/parseLength.ts'

// The accepted and refused texts are the table of docs/number-entry.md; here is what the table cannot show.
describe('the reading of a length', () => {
  it('is echoed in both systems, in the language asked for', () => {
    expect(parseLength('2.10 ft', { fieldUnit: 'feetInches' })).toMatchObject({ ok: true, echo: { feetInches: '2 ft 1\u20093/16 in', metric: '640 mm' } })
    expect(parseLength('4.5 ft', { fieldUnit: 'feetInches', language: 'es' })).toMatchObject({ ok: true, echo: { feetInches: '4 pies 6 pulg', metric: '1.37 m' } })
    expect(lengthEcho(0.0004826)).toEqual({ feetInches: '0.019 in', metric: '0.48 mm' })
  })

  it('offers choices with their values, labelled in the language asked for', () => {
    expect(parseLength('12', { fieldUnit: 'feetInches', language: 'es' })).toEqual({ ok: false, reason: 'ask', choices: [{ label: '12 pies', valueM: 3.6576 }, { label: '12 pulg', valueM: 0.3048 }] })
    expect(parseLength('6-1/2', { fieldUnit: 'ft' })).toMatchObject({ reason: 'ask' })
    expect(parseLength('infeed 12', { fieldUnit: 'feetInches', allowNegative: true })).toMatchObject({ choices: [{ valueM: -3.6576 }, {}] })
  })

  it('gives an example that fits the field with every refusal', () => {
    expect(parseLength('?', { fieldUnit: 'mm' })).toMatchObject({ reason: 'unreadable', example: '724 mm' })
    expect(parseLength('?', { fieldUnit: null })).toMatchObject({ example: '12 ft 6 in' })
    expect(parseLength('9'.repeat(61), { fieldUnit: 'm' })).toMatchObject({ reason: 'unreadable' })
  })

  it('never gives −0', () => {
    const read = parseLength('infeed 0 ft', { fieldUnit: 'feetInches', allowNegative: true })
    expect(read.ok && Object.is(read.valueM, 0)).toBe(true)
  })
})
