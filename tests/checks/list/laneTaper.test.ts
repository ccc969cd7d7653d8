import { describe, expect, it } from 'vitest'
import { laneTaper } from '../../../src/checks/list/laneTaper.ts'
import { laneClosure } from '../../../src/engine/traffic/laneClosure.ts'
import { findingsOf, ftM, levelsOf, siteOf, withFigures } from '../yardCase.ts'

const MPH = 0.44704
const closed = (figures: Record<string, number | null>, isClosed: boolean | null = true) => siteOf({}, withFigures('trafficLane', 'trafficLane:1', [{ xM: 0, yM: 20 }, { xM: 90, yM: 20 }], figures, { closed: isClosed }))

describe('taper and buffer', () => {
  // MUTCD Part 6: L = W·S²/60 to 40 mph, W·S from 45 mph.
  it.each([[8, 35, (8 * 35 ** 2) / 60], [12, 40, 320], [12, 45, 540], [12, 41, 492]])('a lane of %s ft at %s mph: %s ft', (widthFt, mph, taperFt) => {
    expect(laneClosure(widthFt * ftM, mph * MPH).taperM).toBeCloseTo(taperFt * ftM, 9)
  })
  it('a shoulder of 8 ft at 35 mph: 163 ft, a third is 54 ft, buffer 250 ft (table from memory)', () => {
    const { taperM, shoulderTaperM, bufferM } = laneClosure(8 * ftM, 35 * MPH)
    expect([Math.round(taperM / ftM), Math.round(shoulderTaperM / ftM), bufferM! / ftM]).toEqual([163, 54, expect.closeTo(250, 9)])
  })
  it('the buffer is that of the next speed of the table, none past 75 mph', () => {
    expect(laneClosure(3, 36 * MPH).bufferM! / ftM).toBeCloseTo(305, 9)
    expect(laneClosure(3, 80 * MPH).bufferM).toBeNull()
  })
  it('are said of a closed lane, asked for where the speed is not known, and not of an open one', () => {
    expect(levelsOf(laneTaper, closed({ widthM: 3.66, speedMPerS: 15 }))).toEqual(['CHECK'])
    expect(findingsOf(laneTaper, closed({ widthM: 3.66, speedMPerS: null }))[0]!.missing.map(({ path }) => path)).toEqual(['figures.speedMPerS.value'])
    expect(levelsOf(laneTaper, closed({ widthM: 3.66, speedMPerS: 15 }, false))).toEqual([])
  })
})
