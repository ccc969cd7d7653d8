import { describe, expect, it } from 'vitest'
import { parseQuantity } from '../../src/units/parseQuantity.ts'

// The accepted and refused texts are the table of docs/number-entry.md; here is what the table cannot show.
describe('the reading of a quantity', () => {
  it('is echoed in both systems', () => {
    expect(parseQuantity('1800 lb', 'force', 'feetInches')).toMatchObject({ ok: true, echo: { feetInches: '1800 lb', metric: '8.01 kN' } })
    expect(parseQuantity('60 °C', 'temperature', 'feetInches')).toMatchObject({ ok: true, echo: { feetInches: '140 °F', metric: '60 °C' } })
  })

  it('sends lengths to the reader of lengths with the unit of their field', () => {
    expect(parseQuantity('28 1/2', 'height', 'feetInches')).toMatchObject({ ok: true, value: 0.7239 })
    expect(parseQuantity('724', 'height', 'metric')).toMatchObject({ ok: true, value: 0.724 })
    expect(parseQuantity('12', 'length', 'feetInches')).toMatchObject({ reason: 'ask', choices: [{ value: 3.6576 }, {}] })
  })

  it('does not ask about nothing: 0 V is 0 kV', () => expect(parseQuantity('0', 'voltage', 'metric')).toMatchObject({ ok: true, value: 0 }))

  it('lets a field allow or forbid what its kind does not', () => {
    expect(parseQuantity('-5 lb', 'force', 'feetInches', { allowNegative: true })).toMatchObject({ ok: true })
    expect(parseQuantity('-1 %', 'slope', 'feetInches', { allowNegative: false })).toMatchObject({ reason: 'unreadable' })
    expect(parseQuantity('-5 °F', 'temperature', 'feetInches')).toMatchObject({ ok: true })
    // A swing of 90 °F is one of 50 °C, not the temperature 32 °C.
    expect(parseQuantity('90 °F', 'temperatureChange', 'feetInches')).toMatchObject({ ok: true, echo: { feetInches: '90 °F', metric: '50 °C' } })
  })
})
