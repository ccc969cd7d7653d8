import { describe, expect, it } from 'vitest'
import { inchM, poundForceN } from '../../src/units/factors.ts'
import { formatOffset, formatQuantity, formatRunning } from '../../src/units/format.ts'
import type { FormatOptions } from '../../src/units/format.ts'
import type { QuantityKind } from '../../src/units/quantity.ts'

const en: FormatOptions = { system: 'feetInches', language: 'en' }
const metric: FormatOptions = { system: 'metric', language: 'en' }
const thin = '\u2009'
const minus = '\u2212'
const show = (kind: QuantityKind, value: number | null, options: FormatOptions = en) => formatQuantity({ kind, value }, options)

describe('lengths in feet and inches', () => {
  it.each([
    ['length', 150, '12 ft 6 in'],
    ['length', 150.5, `12 ft 6${thin}½ in`],
    ['length', 144.25, `12 ft 0${thin}¼ in`],
    ['length', 11.9375, `11${thin}15/16 in`],
    ['length', 11.97, '1 ft 0 in'], // 11 31/32 is 11.96875: from there the sixteenth carries over
    ['length', 23.99, '2 ft 0 in'],
    ['length', -0.01, '0 in'],
    ['length', -150, `${minus}12 ft 6 in`],
    ['length', 0.5, '½ in'],
    ['length', 25.2, `2 ft 1${thin}3/16 in`], // 2.1 ft = 2 ft 1.2 in, nearest sixteenth 3/16
    ['height', 28.5, `28${thin}½ in`],
    ['height', 119.99, '10 ft 0 in'],
    ['height', 119, '119 in'],
    ['height', 130, '10 ft 10 in'],
    ['shortLength', 0.125, '⅛ in'],
    ['shortLength', 0.0625, '1/16 in'],
    ['shortLength', 0.019, '0.019 in'],
    ['shortLength', 0.075, '0.075 in'],
    ['shortLength', 0.75, '¾ in'],
    ['shortLength', 0, '0 in'],
    ['length', 1357.5 * 12, '1357 ft 6 in'],
    ['length', 10560 * 12, '10\u202f560 ft 0 in'],
  ] as const)('%s of %d in is %s', (kind, inchesValue, text) => expect(show(kind, inchesValue * inchM)).toBe(text))

  it('has a tape style and Spanish words', () => {
    expect(show('length', 150.5 * inchM, { ...en, style: 'tape' })).toBe(`12' 6${thin}½"`)
    expect(show('height', 28.5 * inchM, { ...en, style: 'tape' })).toBe(`28${thin}½"`)
    expect(show('length', 12 * inchM, { ...en, language: 'es' })).toBe('1 pie 0 pulg')
    expect(show('length', 150 * inchM, { ...en, language: 'es' })).toBe('12 pies 6 pulg')
  })

  it('shows both systems when asked, once where they are the same', () => {
    expect(show('length', 3.81, { ...en, both: true })).toBe('12 ft 6 in (3.81 m)')
    expect(show('length', 3.81, { ...metric, both: true })).toBe('3.81 m (12 ft 6 in)')
    expect(show('angle', 0, { ...en, both: true })).toBe('0°')
  })
})

describe('metric and the other kinds', () => {
  it.each([
    ['length', 3.81, metric, '3.81 m'],
    ['length', 3.8, metric, '3.8 m'],
    ['length', -0.001, metric, '0 m'],
    ['height', 0.7239, metric, '724 mm'],
    ['shortLength', 0.0019, metric, '1.9 mm'],
    ['shortLength', 0.0004, metric, '0.4 mm'],
    ['force', 494.4 * poundForceN, en, '494 lb'],
    ['force', 37605 * poundForceN, en, '37\u202f600 lb'],
    ['force', 0.4 * poundForceN, en, '0.4 lb'],
    ['force', -0.001, en, '0 lb'],
    ['force', 999.6, metric, '1 kN'],
    ['force', 249_123, metric, '249 kN'],
    ['force', 870.9, metric, '871 N'],
    ['mass', 285.4, metric, '285 kg'],
    ['mass', 7.42, metric, '7.4 kg'],
    ['moment', 100, metric, '100 N·m'],
    ['moment', 13558.179483314, en, '10\u202f000 ft-lb'],
    ['moment', 13558.179483314, metric, '13.6 kN·m'],
    ['stress', 9169851.5, en, '1330 psi'],
    ['stress', 9169851.5, metric, '9.17 MPa'],
    ['pressure', 1.94e6, metric, '19.4 bar'],
    ['lineLoad', 180.4, metric, '18.4 kg/m'],
    ['lineLoad', 180.4, en, '12.4 lb/ft'],
    ['lineLoad', 180.4, { ...en, language: 'es' }, '12.4 lb/pie'],
    ['temperature', 23, en, '73 °F'],
    ['temperature', -17.7777778, en, '0 °F'],
    ['temperature', 60, metric, '60 °C'],
    ['temperatureChange', 20 / 1.8, en, '20 °F'], // a difference: no 32 is added
    ['temperatureChange', 20 / 1.8, metric, '11 °C'],
    ['ratio', 0.876, en, '0.88'],
    ['ratio', 1 / 200, en, '1/200'],
    ['ratio', 9.8, en, '9.8'],
    ['ratio', 0, en, '0'],
    ['percent', 0.25, en, '25 %'],
    ['slope', 0.01, en, '1 %'],
    ['slope', 0.0125, en, '1.3 %'],
    ['angle', Math.PI / 180, en, '1°'],
    ['count', 33, en, '33'],
    ['voltage', 138_000, en, '138 kV'],
    ['voltage', 12_470, en, '12.47 kV'],
    ['voltage', 480, en, '480 V'],
    ['area', 100, metric, '100 m²'],
    // 9.4 in² · 6.4516 cm²/in² = 60.6 cm²
    ['pistonArea', 0.00606, metric, '60.6 cm²'],
    ['pistonArea', 0.00606, en, '9.39 in²'],
    ['duration', 90, en, '90 s'],
    ['duration', 495, en, '8.3 min'],
    ['duration', 43_200, en, '12 h'],
    ['speed', 4.4704, en, '10 mph'],
    ['speed', 4.4704, metric, '4.5 m/s'],
  ] as const)('%s %d', (kind, value, options, text) => expect(show(kind, value, options)).toBe(text))

  it('shows unknown as ? and refuses what is not a number', () => {
    expect(show('length', null)).toBe('?')
    expect(() => show('length', Number.NaN)).toThrow(/length/)
  })
})

describe('side words', () => {
  it('says exit and infeed, and the datum for what rounds to nothing', () => {
    expect(formatRunning(3.81, en)).toBe('exit 12 ft 6 in')
    expect(formatRunning(-2.54, en)).toBe('infeed 8 ft 4 in') // 100 in
    expect(formatRunning(3.81, { ...en, language: 'es' })).toBe('salida 12 pies 6 pulg')
    expect(formatRunning(-2.54, { ...metric, language: 'es' })).toBe('entrada 2.54 m')
    expect(formatRunning(-0.0001, en)).toBe('at the datum')
    expect(formatRunning(null, en)).toBe('?')
  })

  it('says right and left looking down-string', () => {
    expect(formatOffset(6 * inchM, en)).toBe('R 6 in')
    expect(formatOffset(-6 * inchM, en)).toBe('L 6 in')
    expect(formatOffset(-6 * inchM, { ...en, language: 'es' })).toBe('I 6 pulg')
    expect(formatOffset(0, en)).toBe('on the line')
  })
})
