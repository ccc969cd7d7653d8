import { describe, expect, it } from 'vitest'
import { readerOf } from '../../src/sheet/content.ts'
import { dimensionRows, MOST_ROWS, type DimensionRow } from '../../src/sheet/dimensionRows.ts'
import { barScale, northOnPageRad } from '../../src/sheet/headings.ts'
import { footM } from '../../src/units/factors.ts'
import { item, onRun } from '../helpers/documents.ts'
import { regionOf, wordsOf } from './drawn.ts'
import { contentOf, ft, lotYard } from './samples.ts'

const rowsOf = (over: Parameters<typeof lotYard>[0] = {}, contentOver: Parameters<typeof contentOf>[1] = {}): { rows: readonly DimensionRow[]; leftOut: number } => {
  const content = contentOf(lotYard(over), contentOver)
  return dimensionRows(content, readerOf(content))
}
const rowOf = (label: string, over: Parameters<typeof rowsOf>[0] = {}, contentOver: Parameters<typeof rowsOf>[1] = {}): DimensionRow => rowsOf(over, contentOver).rows.find((row) => row.label === label)!

describe('running dimensions', () => {
  it('give label, item, distance with its side, offset, BOP and load in both units', () => {
    // 25 ft = 7.62 m. Jaw centreline 0.9 m less half of 10.75 in is 0.7635 m: 30 1/16 in, 763 mm
    expect(rowOf('E2')).toMatchObject({ item: 'pipe stand', distance: 'exit 25\' 0" (7.62 m)', offset: 'on the line', saddle: '30\u20091/16" (763 mm)' })
    expect(rowOf('E2').carries).toMatch(/^\d+ lb \([\d.]+ k?N\)$/u)
    expect(rowOf('R1').distance).toBe('infeed 8\' 4" (2.54 m)')
  })
  it('run from the infeed end to the exit end', () => {
    const labels = rowsOf().rows.map(({ label }) => label)
    expect(labels.indexOf('R2')).toBeLessThan(labels.indexOf('R1'))
    expect(labels.indexOf('R1')).toBeLessThan(labels.indexOf('M'))
    expect(labels.indexOf('M')).toBeLessThan(labels.indexOf('E1'))
    expect(labels.indexOf('G13')).toBeLessThan(labels.indexOf('P'))
  })
  it('have the jaws at the datum with the BOP in them', () => {
    expect(rowOf('M')).toMatchObject({ item: 'closed jaws', distance: 'at the datum', saddle: '30\u20091/16" (763 mm)', carries: '–' })
  })
  it('say side and distance of what stands off the line', () => {
    expect(rowOf('O')).toMatchObject({ item: 'operator', offset: 'R 72" (1829 mm)' })
  })
  it('say that a stand floats, that no pipe lies on it, and what is not known', () => {
    const profile = contentOf(lotYard()).profile
    expect(rowOf('E1').carries).toBe('floats')
    expect(rowOf('R1').carries).toBe('no pipe on it')
    expect(rowOf('E3', { more: [item('stand', 'stand:2', onRun(ft(34.75)), { height: { rule: 'unknown' } })] })).toMatchObject({ saddle: '?', carries: '?' })
    expect(rowOf('E2', {}, { profile: { ...profile, status: 'notConverged' } }).carries).toBe('?')
    expect(rowOf('E2', { job: { pipe: null } }).carries).toBe('?')
  })
  it('are in metric alone on a metric page', () => {
    expect(rowOf('E2', { layout: { displayUnits: 'metric' } })).toMatchObject({ distance: 'exit 7.62 m', saddle: '763 mm' })
  })
  it('keep to 24 rows: what is left out is counted, vehicles and people first', () => {
    // 2 beams, jaws, 5 stands, 13 rollers, puller, 3 people, loader, offload place: 27 of which 24 are kept
    const { rows, leftOut } = rowsOf()
    expect([rows.length, leftOut]).toEqual([MOST_ROWS, 3])
    expect(rows.map(({ item: name }) => name)).not.toContain('loader')
    expect(rows.map(({ label }) => label)).toContain('P')
    expect(wordsOf(regionOf(contentOf(lotYard()), 'dimensions'))).toContain('and 3 more in the app')
  })
  it('keep what is nearest the datum when the line itself is longer', () => {
    const { rows, leftOut } = rowsOf({ more: Array.from({ length: 30 }, (_, i) => item('roller', `roller:x${i}`, onRun(ft(330 + 10 * i)))) })
    expect([rows.length, leftOut]).toEqual([24, 33])
    expect(rows.map(({ label }) => label)).toContain('E1')
    expect(rows.map(({ label }) => label)).not.toContain('G43')
  })
})

describe('the bar scale', () => {
  it('is a round length in the unit shown, as long as there is room for', () => {
    for (const isFeet of [true, false]) {
      for (let pxPerM = 0.05; pxPerM < 400; pxPerM *= 1.07) {
        const { count, lengthM, lengthPx } = barScale(pxPerM, isFeet)
        expect(lengthPx).toBeLessThanOrEqual(300 * (1 + 1e-9))
        expect(lengthPx).toBeGreaterThan(300 / 2.5 - 1e-6)
        expect(lengthM).toBeCloseTo(count * (isFeet ? footM : 1), 9)
        expect([1, 2, 5]).toContain(Number(String(count).replace(/^0\.|0+$/gu, '')))
      }
    }
  })
  it('of 3.3 px a foot is 50 ft', () => {
    // 300 px ÷ 3.3 px/ft = 90 ft, the next round length below is 50
    expect(barScale(3.3 / footM, true).count).toBe(50)
  })
})

describe('north on the page', () => {
  const north = (northRad: number | null, isTurned = false): number | null => northOnPageRad({ ...contentOf(lotYard({ layout: { northRad } })), isTurned })
  it('turns with the sheet: the axis lies to the right', () => {
    expect(north(Math.PI / 2)).toBeCloseTo(Math.PI / 2, 12)
    expect(north(0, true)).toBeCloseTo(Math.PI, 12)
  })
  it('is not made up where nobody has said', () => {
    expect(north(null)).toBeNull()
    expect(wordsOf(regionOf(contentOf(lotYard({ layout: { northRad: null } })), 'heading'))).toContain('north not said')
  })
  it('points its arrow tip that way', () => {
    const { list } = regionOf(contentOf(lotYard({ layout: { northRad: Math.PI / 2 } })), 'heading')
    const arrow = list.find((primitive) => primitive.t === 'path' && primitive.closed === true)
    const points = arrow?.t === 'path' ? arrow.points : []
    // First point is the tip: straight up the page, so the highest of all.
    expect(points[1]).toBe(Math.min(...points.filter((_p, i) => i % 2 === 1)))
  })
})
