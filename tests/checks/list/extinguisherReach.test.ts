import { describe, expect, it } from 'vitest'
import { extinguisherReach } from '../../../src/checks/list/extinguisherReach.ts'
import { item, free } from '../../helpers/documents.ts'
import { findingsOf, ftM, siteOf, withFigures } from '../yardCase.ts'

// Fuel 1.2 m long with its edge at x = 0.6 m; an extinguisher at x is x − 0.6 m away.
const fuel = (amount: string | null) => withFigures('fuel', 'fuel:1', free(0, 0), { lengthM: 1.2, widthM: 0.9 }, { amount })
const at = (feet: number, rating: string | null, id = 'extinguisher:1') => item('extinguisher', id, free(0.6 + feet * ftM, 0), { rating })
const found = (...records: Parameters<typeof siteOf>[1][]) => findingsOf(extinguisherReach, siteOf({}, ...records)).map(({ level, key, isUnknown }) => `${level} ${key.split(':').at(-1)}${isUnknown ? '?' : ''}`)
const stored = at(30, '20B', 'extinguisher:9')

describe('extinguishers near fuel', () => {
  it('10-B within 50 ft of more than 5 gal (29 CFR 1926.150(c)(1)(vi)): met at 50 ft, FIX at 50 ft 1 in', () => {
    const far = at(74, '20B', 'extinguisher:9')
    expect(found(fuel('over5Gal'), at(50, '10B'), far)).toEqual(['met extinguisher-reach'])
    expect(found(fuel('over5Gal'), at(50 + 1 / 12, '10B'), far)).toEqual(['FIX use'])
  })
  it('20-B not less than 25 ft and not more than 75 ft from storage outside (29 CFR 1926.152(d)(2))', () => {
    const near = at(10, '10B')
    const storedAt = (feet: number) => found(fuel('over5Gal'), near, at(feet, '20B', 'extinguisher:2'))
    expect([storedAt(24.9), storedAt(25), storedAt(75), storedAt(75.1)]).toEqual([['CHECK storage'], ['met extinguisher-reach'], ['met extinguisher-reach'], ['CHECK storage']])
  })
  it('one rated less than 10-B does not count, one of which nobody knows neither', () => {
    expect(found(fuel('over5Gal'), at(10, 'other'), at(60, '20B', 'extinguisher:9'))).toEqual(['FIX use'])
    expect(found(fuel('over5Gal'), at(10, null), stored)).toEqual(['CHECK extinguisher-reach@missing?'])
  })
  it('5 gal or less asks for nothing; an amount nobody has said is asked for', () => {
    expect(found(fuel('upTo5Gal'))).toEqual(['met extinguisher-reach'])
    expect(found(fuel(null))).toEqual(['CHECK extinguisher-reach@missing?'])
    expect(found(stored)).toEqual([])
  })
})
