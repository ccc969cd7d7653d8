import { describe, expect, it } from 'vitest'
import { endRoom } from '../../src/checks/list/endRoom.ts'
import { item, onRun } from '../helpers/documents.ts'
import { boxM, findingsOf, ftM, inM, levelsOf, machineAt0, siteOf, withFigures } from './yardCase.ts'

/** 8 × 40 ft less 7 × 7/8 in. */
const STRING_M = 320 * ftM - 7 * 0.875 * inM
const puller = withFigures('puller', 'puller:1', onRun(300 * ftM), { ropeLengthM: 8 * ftM, lengthM: 12 * ftM })
/** Infeed 40 ft (the stick), string, rope 8 ft, puller 12 ft, over-run 10 ft. */
const NEED_M = 40 * ftM + STRING_M + 30 * ftM
const strip = (backM: number, aheadM: number) => item('boundary', 'boundary:1', boxM(-backM, aheadM, -8, 8))

describe('room end to end', () => {
  it('is short by what the parts need beyond the yard', () => {
    // 40 + 319.49 + 30 = 389.49 ft; a yard of 380 ft is 9.49 ft short.
    const [short] = findingsOf(endRoom, siteOf({}, puller, strip(40 * ftM, 340 * ftM)))
    expect(short!.level).toBe('FIX')
    expect(short!.measured!.value).toBeCloseTo(NEED_M, 9)
    expect(-short!.margin!.value!).toBeCloseTo(NEED_M - 380 * ftM, 9)
  })

  it('passes to the millimetre and notes a spare under 25 ft', () => {
    expect(levelsOf(endRoom, siteOf({}, puller, strip(40 * ftM, NEED_M - 40 * ftM)))).toEqual(['NOTE'])
    expect(levelsOf(endRoom, siteOf({}, puller, strip(40 * ftM, NEED_M - 40 * ftM - 0.001)))).toEqual(['FIX'])
  })

  it('notes a spare under a tenth of the strip and is silent from there on', () => {
    // Need 389.49 ft: a strip of 432.77 ft leaves 10 %: 43.28 ft.
    const at = (stripM: number) => levelsOf(endRoom, siteOf({}, puller, strip(50 * ftM, stripM - 50 * ftM)))
    expect(at(NEED_M / 0.9 - 0.01)).toEqual(['NOTE'])
    expect(at(NEED_M / 0.9 + 0.01)).toEqual(['met'])
  })

  it('slides the set-up where only one end reaches out', () => {
    // 60 ft behind where 40 are needed, 340 ahead where 349.49 are: it fits after sliding back 9.49 ft.
    const [out] = findingsOf(endRoom, siteOf({}, machineAt0(), puller, strip(60 * ftM, 340 * ftM)))
    expect(out!.level).toBe('FIX')
    expect(out!.remedy).toMatchObject({ command: 'slideBy', args: { ids: ['machine:1'] } })
    expect((out!.remedy!.args as { dRunningM: number }).dRunningM).toBeCloseTo(-(STRING_M + 30 * ftM - 340 * ftM) - 0.01, 9)
  })

  it('counts a rack that reaches behind the stick', () => {
    // Rack in the middle at −30 ft with beams 23 ft 4 in apart reaches to 42 ft 2 in behind with its 6 in of frame.
    const rack = withFigures('rack', 'rack:1', onRun(-30 * ftM), { beamSpacingM: 7.112 })
    const [found] = findingsOf(endRoom, siteOf({}, puller, rack, strip(60 * ftM, 400 * ftM)))
    expect(found!.measured!.value).toBeCloseTo(NEED_M - 40 * ftM + 30 * ftM + 7.112 / 2 + 0.15, 6)
  })

  it('lets a winch stand where it is drawn', () => {
    const winch = withFigures('puller', 'puller:1', onRun(360 * ftM), { lengthM: 4 * ftM }, { pullerKind: 'winch' })
    const [found] = findingsOf(endRoom, siteOf({}, winch, strip(50 * ftM, 400 * ftM)))
    expect(found!.measured!.value).toBeCloseTo((40 + 360 + 4) * ftM, 9)
  })

  it('follows the run round a bend to where it leaves the yard', () => {
    // 30 m straight, then a quarter turn left with R = 10 m about (20, 10): on at x = 30 from (30, 10) up. Top of the yard at y = 90.
    // Running to the top: 20 + 10·π/2 + 80 = 115.708 m; behind 20 m.
    const bent = siteOf({ run: { vertices: [{ xM: 30, yM: 0, radiusM: 10 }, { xM: 30, yM: 200, radiusM: null }] } }, puller, item('boundary', 'boundary:1', boxM(-20, 40, -10, 90)))
    const [found] = findingsOf(endRoom, bent)
    expect(found!.limit!.value).toBeCloseTo(20 + 20 + 5 * Math.PI + 80, 2)
  })

  it('never passes without boundary, stick length or puller', () => {
    expect(levelsOf(endRoom, siteOf({}, puller))).toEqual(['CHECK?'])
    expect(levelsOf(endRoom, siteOf({ job: { stickLengthM: null } }, puller, strip(40, 200)))).toEqual(['CHECK?'])
    expect(levelsOf(endRoom, siteOf({}, strip(40, 200)))).toEqual(['CHECK?'])
    // Too short even without the lead stays FIX.
    expect(levelsOf(endRoom, siteOf({}, strip(10, 90)))).toEqual(['FIX'])
  })

  it('wants the datum inside', () => {
    expect(levelsOf(endRoom, siteOf({}, puller, item('boundary', 'boundary:1', boxM(10, 300, -8, 8))))).toEqual(['FIX'])
  })
})
