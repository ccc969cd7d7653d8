import { describe, expect, it } from 'vitest'
import { bendRadius } from '../../src/checks/list/bendRadius.ts'
import type { YardRecord } from '../../src/scene/document.ts'
import { free, item, onRun } from '../helpers/documents.ts'
import { findingsOf, levelsOf, siteOf } from './yardCase.ts'

/** 10.750 in × 27 = 24.186 ft = 7.37235 m. PPI Handbook of Polyethylene Pipe, 2nd edition, chapter 7: DR 17 to 21, 27 OD. */
const LEAST_M = 27 * 10.75 * 0.0254
const bent = (radiusM: number | null, over: Parameters<typeof siteOf>[0] = {}, ...records: readonly YardRecord[]) => siteOf({ ...over, run: { vertices: [{ xM: 40, yM: 0, radiusM }, { xM: 80, yM: 40, radiusM: null }], ...over.run } }, ...records)

describe('bends of the pull path', () => {
  it('may be as tight as the table, not tighter', () => {
    expect(levelsOf(bendRadius, bent(LEAST_M))).toEqual(['met'])
    const [tight] = findingsOf(bendRadius, bent(LEAST_M - 0.001))
    expect(tight!.level).toBe('FIX')
    expect(tight!.limit!.value).toBeCloseTo(LEAST_M, 9)
    expect(tight!.source.cite).toContain('chapter 7')
    // 24.19 ft goes up to 24 ft 6 in on the tape.
    expect(tight!.remedy).toMatchObject({ command: 'setRun', args: { runId: 'run:1', path: 'vertices.0.radiusM', value: 7.4676 } })
  })

  it('takes the row of its DR', () => {
    // 450 SDR 26: 34 OD = 15.3 m (PPI Handbook, chapter 7); 15 m asked for is too tight.
    const job = { pipe: { system: 'metric', size: '450', dr: 26, material: 'PE100' } as const }
    const [tight] = findingsOf(bendRadius, bent(15, { job }))
    expect([tight!.level, tight!.limit!.value]).toEqual(['FIX', expect.closeTo(15.3, 9)])
    expect(levelsOf(bendRadius, bent(15.3, { job }))).toEqual(['met'])
  })

  it('wants a quarter more where the wall is hot or cold, as a house rule', () => {
    const hot = (radiusM: number, value: number) => levelsOf(bendRadius, bent(radiusM, { job: { wallTemperatureC: { value, basis: 'measured' } } }))
    expect(hot(LEAST_M * 1.24, 60)).toEqual(['CHECK'])
    expect(hot(LEAST_M * 1.25, 60)).toEqual(['met'])
    expect(hot(LEAST_M * 1.24, 20)).toEqual(['met'])
    // 40 °F is 4.44 °C.
    expect(hot(LEAST_M * 1.24, 4.4)).toEqual(['CHECK'])
    expect(hot(LEAST_M * 1.24, 4.5)).toEqual(['met'])
  })

  it('wants 100 OD where the tie-in lies in the bend', () => {
    const target = item('anchor', 'anchor:1', free(40, 0.5))
    const site = siteOf({ run: { vertices: [{ xM: 40, yM: 0, radiusM: 20 }, { xM: 80, yM: 40, radiusM: null }], targetId: 'anchor:1' } }, target)
    const [found] = findingsOf(bendRadius, site)
    // 100 × 10.750 in = 27.305 m. PPI Handbook, 2nd edition, chapter 7.
    expect([found!.level, found!.limit!.value]).toEqual(['FIX', expect.closeTo(27.305, 9)])
  })

  it('wants half as much again where the wall is hot and thin', () => {
    // 450 SDR 26 at 60 °C: 15.3 m × 1.5 = 22.95 m; cold it stays at a quarter more, 19.1 m.
    const of = (radiusM: number, wallC: number) => levelsOf(bendRadius, bent(radiusM, { job: { pipe: { system: 'metric', size: '450', dr: 26, material: 'PE100' }, wallTemperatureC: { value: wallC, basis: 'measured' } } }))
    expect([of(22.9, 60), of(23, 60), of(19.1, 0), of(19.2, 0)]).toEqual([['CHECK'], ['met'], ['CHECK'], ['met']])
  })

  it('wants 100 OD where a fitting lies in the bend or is drawn through it', () => {
    // The arc of 20 m round the 45° corner at 40 m takes 20 × tan 22.5° = 8.28 m: from 31.72 m on, 15.71 m long, to 47.42 m.
    const withFitting = (runningM: number, over: Record<string, unknown> = {}) => findingsOf(bendRadius, bent(20, {}, item('fitting', 'fitting:1', onRun(runningM), over)))
    const levels = (found: readonly { level: string; isUnknown: boolean }[]): string[] => found.map(({ level, isUnknown }) => (isUnknown ? `${level}?` : level))
    const [lying] = withFitting(40)
    expect([lying!.level, lying!.limit!.value, lying!.itemIds]).toEqual(['FIX', expect.closeTo(27.305, 9), ['run:1', 'fitting:1']])
    // Its half length of 0.3 m reaches in.
    expect(levels(withFitting(31.5))).toEqual(['FIX'])
    expect(levels(withFitting(31.3))).toEqual(['met'])
    expect(levels(withFitting(60, { isPulledAlong: true }))).toEqual(['FIX'])
    expect(levels(withFitting(60, { isPulledAlong: false }))).toEqual(['met'])
    expect(levels(withFitting(60))).toEqual(['CHECK?'])
  })

  it('needs room on its legs', () => {
    // 45° takes R·tan 22.5° = 0.414 R of each leg: 100 m would take 41.4 m of the first 40.
    expect(levelsOf(bendRadius, bent(100))).toEqual(['FIX'])
    expect(levelsOf(bendRadius, bent(96))).toEqual(['met'])
  })

  it('never passes a bend without radius or pipe', () => {
    const [unknown] = findingsOf(bendRadius, bent(null))
    expect([unknown!.isUnknown, unknown!.missing[0]!.path]).toEqual([true, 'vertices.0.radiusM'])
    expect(levelsOf(bendRadius, bent(30, { job: { pipe: null } }))).toEqual(['CHECK?'])
  })

  it('says nothing of a straight run', () => {
    expect(findingsOf(bendRadius, siteOf({}))).toEqual([])
  })
})
