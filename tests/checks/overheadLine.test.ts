import { describe, expect, it } from 'vitest'
import { overheadLine } from '../../src/checks/list/overheadLine.ts'
import { free, item, onRun } from '../helpers/documents.ts'
import { findingsOf, ftM, levelsOf, siteOf, withFigures } from './yardCase.ts'

/** A line across the run at x. */
const line = (xM: number, voltageV: number | null, lowestHeightM: number | null) => withFigures('overheadLine', 'overheadLine:1', [{ xM, yM: -100 }, { xM, yM: 100 }], { voltageV, lowestHeightM })
/** Only what the test names: no string, so that the line has nothing else near. */
const bare = (...records: Parameters<typeof siteOf>[1][]) => siteOf({ job: { pipe: null } }, ...records)
const lane = (fromXM: number, toXM: number) => withFigures('lane', 'lane:1', [{ xM: fromXM, yM: 30 }, { xM: toXM, yM: 30 }], { widthM: 3 })
const loaderFar = (topHeightM: number | null) => withFigures('loader', 'loader:1', free(-200, 0), { topHeightM })

describe('overhead line', () => {
  it('keeps 15 ft at 138 kV in plan, measured to the nearest part', () => {
    // 29 CFR 1926.1408 Table A: over 50 to 200 kV 15 ft = 4.572 m; 1926.600(a)(6) gives 10 ft + 88 · 0.4 in = 12.93 ft, the smaller.
    // Machine 3.35 m long at 0: its end lies at 1.675 m.
    const at = (clearM: number) => levelsOf(overheadLine, bare(item('machine', 'machine:1', onRun(0)), line(1.675 + clearM, 138_000, 9)))
    expect(at(15 * ftM)).toEqual(['met'])
    expect(at(15 * ftM - 0.001)).toEqual(['STOP'])
  })

  it('takes the larger of both rules', () => {
    // 200 kV: Table A 15 ft; vehicles 10 ft + 150 · 0.4 in = 15 ft exactly. 345 kV: Table A 20 ft; vehicles 10 ft + 295 · 0.4 in = 19.83 ft.
    // 180 kV: 15 ft against 10 ft + 130 · 0.4 in = 14.33 ft. 500 kV: 25 ft against 10 ft + 450 · 0.4 in = 25 ft.
    const at = (volts: number, clearFt: number) => levelsOf(overheadLine, bare(item('machine', 'machine:1', onRun(0)), line(1.675 + clearFt * ftM, volts, 9)))
    expect([at(345_000, 20), at(345_000, 19.99)]).toEqual([['met'], ['STOP']])
    expect([at(50_000, 10), at(50_000, 9.99)]).toEqual([['met'], ['STOP']])
    expect([at(50_001, 15), at(50_001, 14.99)]).toEqual([['met'], ['STOP']])
    // 750 kV: Table A 35 ft; vehicles 10 ft + 700 · 0.4 in = 33.33 ft.
    expect([at(750_000, 35), at(750_000, 34.99)]).toEqual([['met'], ['STOP']])
  })

  it('lets a loader pass under where it carries low enough', () => {
    // 138 kV, lowest wire 31 ft: 31 − 15 = 16 ft for boom and load.
    const at = (topFt: number) => levelsOf(overheadLine, bare(lane(0, 100), loaderFar(topFt * ftM), line(50, 138_000, 31 * ftM)))
    expect(at(13)).toEqual(['met'])
    expect(at(16)).toEqual(['met'])
    expect(at(16.01)).toEqual(['STOP'])
    const [high] = findingsOf(overheadLine, bare(lane(0, 100), loaderFar(24 * ftM), line(50, 138_000, 31 * ftM)))
    expect(high!.margin!.value).toBeCloseTo(-8 * ftM, 9)
    expect(high!.source.cite).toContain('1926.1408')
  })

  it('stops where the reach of the loader is not known', () => {
    const [found] = findingsOf(overheadLine, bare(lane(0, 100), loaderFar(null), line(50, 138_000, 31 * ftM)))
    expect([found!.level, found!.missing.map(({ recordId, path }) => `${recordId} ${path}`)]).toEqual(['STOP', ['loader:1 figures.topHeightM.value']])
    expect(levelsOf(overheadLine, bare(lane(0, 100), line(50, 138_000, 31 * ftM)))).toEqual(['STOP'])
  })

  it('reckons with the stick the loader swings', () => {
    // 40 ft stick at 1.2 m reach: √(6.096² + 1.2²) = 6.213 m; 33 kV asks for 10 ft: 9.261 m in plan from the loader's middle.
    const at = (xM: number) => levelsOf(overheadLine, bare(withFigures('loader', 'loader:1', free(0, 0), { reachM: 1.2, topHeightM: 8 }), line(xM, 33_000, 6.5)))
    expect(at(Math.hypot(6.096, 1.2) + 10 * ftM + 0.01)).toEqual(['met'])
    expect(at(Math.hypot(6.096, 1.2) + 10 * ftM - 0.01)).toEqual(['STOP'])
  })

  it('never unloads under a wire: STOP where the load reaches too high, FIX where it does not', () => {
    // 33 kV at 6.5 m leaves 6.5 − 3.048 = 3.452 m; a load of 3.6 m is too high, one of 3 m with a loader of 3.4 m is under a line all the same.
    const at = (loadM: number, topM: number) => levelsOf(overheadLine, bare(withFigures('offload', 'offload:1', free(50, 0), { loadHeightM: loadM }), loaderFar(topM), line(50, 33_000, 6.5)))
    expect(at(3.6, 3)).toEqual(['STOP'])
    expect(at(3, 3.4)).toEqual(['FIX'])
    expect(at(3, 3.46)).toEqual(['STOP'])
  })

  it('stops until voltage and height are known wherever something works within reach', () => {
    const machine = item('machine', 'machine:1', onRun(0))
    const found = findingsOf(overheadLine, bare(machine, line(10, null, null)))
    expect(found.map(({ level }) => level)).toEqual(['STOP'])
    expect(found[0]!.missing.map(({ path }) => path)).toEqual(['figures.voltageV.value', 'figures.lowestHeightM.value'])
    expect(found[0]!.remedy).toBeNull()
    // Height unknown matters only within the distance of the voltage: 10 ft at 12 kV.
    expect(levelsOf(overheadLine, bare(machine, line(1.675 + 3, 12_000, null)))).toEqual(['STOP'])
    expect(levelsOf(overheadLine, bare(machine, line(1.675 + 3.1, 12_000, null)))).toEqual(['CHECK?'])
  })

  it('excludes an unknown line only beyond 50 ft, the most any rule asks', () => {
    // 29 CFR 1926.1409: over 350 kV the trigger is 50 ft = 15.24 m.
    const machine = item('machine', 'machine:1', onRun(0))
    expect(levelsOf(overheadLine, bare(machine, line(1.675 + 15.23, null, 9)))).toEqual(['STOP'])
    expect(levelsOf(overheadLine, bare(machine, line(1.675 + 15.25, null, 9)))).toEqual(['CHECK?'])
  })

  it('leaves voltages over 1,000 kV to the owner of the line', () => {
    expect(levelsOf(overheadLine, bare(item('machine', 'machine:1', onRun(0)), line(10, 1_100_000, 40)))).toEqual(['STOP'])
  })

  it('lets a driven puller pass under where it stays low enough, and asks for its highest point until then', () => {
    // The run passes under at 106 m; the puller drives ahead of the nose. 33 kV at 6.5 m leaves 6.5 − 3.048 = 3.452 m.
    const at = (topHeightM: number | null) => siteOf({}, item('machine', 'machine:1', onRun(0)), withFigures('puller', 'puller:1', onRun(80), { ropeLengthM: 6, topHeightM }), line(106, 33_000, 6.5))
    expect(levelsOf(overheadLine, at(3.45))).toEqual(['met'])
    expect(levelsOf(overheadLine, at(3.46))).toEqual(['STOP'])
    const [unknown] = findingsOf(overheadLine, at(null))
    expect([unknown!.level, unknown!.isUnknown, unknown!.missing.map(({ recordId, path }) => `${recordId} ${path}`)]).toEqual(['STOP', false, ['puller:1 figures.topHeightM.value']])
    expect(unknown!.move!.text.en).toContain('give its highest point')
  })

  it('asks nobody for the height of a machine, which has no such field', () => {
    const [found] = findingsOf(overheadLine, bare(item('machine', 'machine:1', onRun(0)), line(3, 33_000, 6.5)))
    expect([found!.level, found!.missing, found!.move!.text.en]).toEqual(['STOP', [], 'Work {clearance} away.'])
  })

  it('lets the string pass under where its top is known', () => {
    // Jaws at 0.9 m: top of 10 in pipe 0.9 + 0.1365 = 1.0365 m above the datum; 12 kV at 5 m leaves 1.952 m.
    const site = siteOf({}, item('machine', 'machine:1', onRun(0)), line(50, 12_000, 5))
    expect(levelsOf(overheadLine, site)).toEqual(['met'])
    expect(levelsOf(overheadLine, siteOf({}, item('machine', 'machine:1', onRun(0)), line(50, 12_000, 4)))).toEqual(['STOP'])
  })
})
