import { describe, expect, it } from 'vitest'
import { runChecks } from '../../src/checks/runner.ts'
import { deriveSite } from '../../src/derive/site.ts'
import type { YardRecord } from '../../src/scene/document.ts'
import { differenceText, standingText } from '../../src/ui/asSet/asSetText.ts'
import { byTheTapeM, heightRows, standingOf, type HeightRow } from '../../src/ui/asSet/measured.ts'
import { fusionYard, inch } from '../helpers/fusionYard.ts'
import { english, metric, spanish } from './words.ts'

const e1: YardRecord = { id: 'asSet:1', kind: 'asSet', itemId: 'stand:e1', saddleM: inch(29), farSaddleM: null, isTicked: false, isFarTicked: false, offsetM: null, runningM: null, when: '' }
const rowsOf = (...more: YardRecord[]): HeightRow[] => {
  const site = deriveSite(fusionYard({ more }))
  return heightRows(site, runChecks(site), 'feetInches')
}
const plain = (text: string): string => text.replace(/[\u2009\u202f\u00a0]/g, ' ')

describe('heights to measure', () => {
  it('go down the line from the rear of the infeed, jaws among them', () => expect(rowsOf().map(({ label }) => label ?? 'jaws')).toEqual(['R2', 'R1', 'jaws', 'E1', 'E2']))
  it('the far beam of a rack has a figure of its own', () => expect(rowsOf().map(({ itemId, path }) => `${itemId} ${path}`).slice(0, 2)).toEqual(['rack:1 farSaddleM', 'rack:1 saddleM']))
  it('the jaws are held to the tightest tolerance of all', () => {
    const rows = rowsOf()
    const jaws = rows.find(({ label }) => label === null)!
    expect(jaws.toleranceM).toBe(Math.min(...rows.filter(({ label }) => label !== null).map(({ toleranceM }) => toleranceM!)))
  })
  it('without findings the tolerance is unknown, not none', () => {
    const [row] = heightRows(deriveSite(fusionYard()), null, 'feetInches')
    expect(row!.toleranceM).toBeNull()
    expect(standingOf({ ...row!, measuredM: 1 })).toBe('unknown')
    expect(standingText({ ...row!, measuredM: 1 }, english)).toBe('tolerance not known yet')
  })
  it('stands off where it differs by more than its tolerance and the reading of a tape', () => {
    const row = rowsOf(e1).find(({ label }) => label === 'E1')!
    expect([standingOf(row), plain(differenceText(row, english)), plain(standingText(row, english))]).toEqual(['off', '1 in low', 'off: ± ½ in allowed'])
    expect(plain(differenceText(row, spanish))).toBe('25 mm bajo')
    const near = { ...row, measuredM: inch(30.25) }
    expect([standingOf(near), plain(differenceText(near, english)), plain(standingText(near, english))]).toEqual(['ok', '¼ in high', 'within ± ½ in'])
    const same = { ...row, measuredM: row.plannedM }
    expect([standingOf(same), differenceText(same, metric)]).toEqual(['ok', 'as planned'])
    expect([standingOf({ ...row, measuredM: null }), differenceText({ ...row, measuredM: null }, english), standingText({ ...row, measuredM: null }, english)]).toEqual(['open', '', ''])
  })
  it('a tolerance is told by the marks of the tape, rounded down', () => {
    // 0.131 in is two sixteenths and a bit; 3.9 mm is 3.
    expect(byTheTapeM(inch(0.131), 'feetInches')).toBeCloseTo(inch(1 / 8), 12)
    expect(byTheTapeM(inch(1 / 2), 'feetInches')).toBeCloseTo(inch(1 / 2), 12)
    expect(byTheTapeM(inch(1 / 16), 'feetInches')).toBeCloseTo(inch(1 / 16), 12)
    expect(byTheTapeM(0.0039, 'metric')).toBeCloseTo(0.003, 12)
    expect(byTheTapeM(0.0004, 'metric')).toBeCloseTo(0.001, 12)
    expect(byTheTapeM(null, 'metric')).toBeNull()
  })
})
