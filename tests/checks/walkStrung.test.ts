import { describe, expect, it } from 'vitest'
import { walkStrung } from '../../src/checks/list/walkStrung.ts'
import { endRoom } from '../../src/checks/list/endRoom.ts'
import { gaugeDrag } from '../../src/checks/list/gaugeDrag.ts'
import { pullerPull } from '../../src/checks/list/pullerPull.ts'
import { walkOf } from '../../src/derive/walking.ts'
import { item, onRun } from '../helpers/documents.ts'
import { END_FT, laneFindings, laneSite } from './walkCase.ts'
import { boxM, findingsOf, ftM, inM, lbN, levelsOf, siteOf, withFigures } from './yardCase.ts'

describe('sticks strung for a machine that walks', () => {
  it('leave the travel of the carriage and 6 to 12 in between them', () => {
    const walk = walkOf(laneSite({}))!
    expect([walk.gapM!.least / inM, walk.gapM!.most / inM]).toEqual([expect.closeTo(18, 9), expect.closeTo(24, 9)])
    expect(walk.sticks).toHaveLength(34)
    expect(walk.joints).toHaveLength(33)
    // The first ends where the finished string ends; the next 18 in before it.
    expect(walk.sticks[0]!.toM / ftM).toBeCloseTo(END_FT, 9)
    expect((walk.sticks[0]!.fromM - walk.sticks[1]!.toM) / inM).toBeCloseTo(18, 9)
  })

  it('make joint 1 a stick from the far end and the last a stick from the datum', () => {
    const { joints } = walkOf(laneSite({}))!
    // 1,357.94 − 40; the last: all but 33 sticks less 32 losses, 33 × 40 − 32 × 0.0625 = 1,318: 39.94 ft.
    expect(joints[0]!.runningM / ftM).toBeCloseTo(END_FT - 40, 9)
    expect(joints.at(-1)!.runningM / ftM).toBeCloseTo(END_FT - 1318, 9)
  })

  it('take more than the string by all gaps and losses, and the last stick is drawn up by as much', () => {
    const [note] = laneFindings(walkStrung, {})
    // 33 × (18 + 0.75) in = 51.56 ft.
    expect(note!.level).toBe('NOTE')
    const walk = walkOf(laneSite({}))!
    expect(0 - walk.strungFromM / ftM).toBeCloseTo(51.5625, 6)
    expect(walk.joints.at(-1)!.moveM / ftM).toBeCloseTo(51.5625, 6)
  })

  it('do not fit a right-of-way that has room for the string alone', () => {
    const way = (backFt: number) => item('boundary', 'boundary:1', boxM(-backFt * ftM, 1400 * ftM, -5, 5))
    expect(laneFindings(walkStrung, {}, way(45))[0]!.level).toBe('FIX')
    expect(laneFindings(walkStrung, {}, way(52))[0]!.level).toBe('NOTE')
  })

  it('ask for the travel of the carriage', () => {
    const machine = withFigures('machine', 'machine:1', onRun(0), { carriageTravelM: null })
    const [asked] = laneFindings(walkStrung, {}, machine)
    expect([asked!.isUnknown, asked!.missing[0]!.path]).toEqual([true, 'figures.carriageTravelM.value'])
  })

  it('are no matter of a machine that stands, and a machine that walks pulls nothing', () => {
    expect(levelsOf(walkStrung, siteOf({}))).toEqual([])
    expect([laneFindings(endRoom, {}), laneFindings(pullerPull, {})]).toEqual([[], []])
  })

  it('are drawn by a carriage that holds the loose stick; one on the string’s side moves all of it', () => {
    // 36 in DR 17: at joint 10 ten sticks of 50 ft less 9 × 2 in lie there, 498.5 ft of 98.55 lb/ft = 49,100 lb; on grass × 0.5 = 24,560 lb.
    const flat = (carriageSide: 'infeed' | 'exit') => {
      const machine = { ...withFigures('machine', 'machine:1', onRun(0), {}), carriageSide } as ReturnType<typeof withFigures>
      const main = { method: 'walking', pipe: { system: 'IPS', size: '36', dr: 17, material: 'PE4710' }, stickLengthM: 50 * ftM, neededLengthM: 540 * ftM, jointLossM: { value: 2 * inM, basis: 'measured' } } as const
      return findingsOf(gaugeDrag, siteOf({ job: main }, machine)).find(({ key }) => key.endsWith('@drag'))!
    }
    // Less some 43 ft next to the jaws that come down in the air and count as on rollers, × 0.1: 1,700 lb.
    expect(flat('exit').measured!.value! / lbN).toBeGreaterThan(22_500)
    expect(flat('exit').measured!.value! / lbN).toBeLessThan(24_560)
    // One stick, 4,927 lb on rollers, × 0.1: 493 lb.
    expect(flat('infeed').measured!.value! / lbN).toBeCloseTo(493, -1)
    expect([flat('exit').level, flat('infeed').level]).toEqual(['CHECK', 'met'])
  })
})
