import { describe, expect, it } from 'vitest'
import { walkWindow } from '../../src/checks/list/walkWindow.ts'
import { walkOf } from '../../src/derive/walking.ts'
import { item, onRun } from '../helpers/documents.ts'
import type { PlacedRecord } from '../../src/scene/kinds/index.ts'
import { laneFindings, laneSite } from './walkCase.ts'
import { ftM } from './yardCase.ts'

const levelAt = (number: number, atFt: number, levelM: number): PlacedRecord => {
  const made = item('level', `level:${number}`, onRun(atFt * ftM)) as PlacedRecord & { figures: Record<string, unknown> }
  return { ...made, figures: { ...made.figures, levelM: { value: levelM, basis: 'measured' } } } as PlacedRecord
}

describe('the level window of a joint', () => {
  it('is met on level ground and asked for where nobody knows it', () => {
    expect(laneFindings(walkWindow, {}).map(({ level }) => level)).toEqual(['met'])
    expect(laneFindings(walkWindow, { setUp: { fallRatio: null } }).map(({ isUnknown }) => isUnknown)).toEqual([true])
  })

  it('leans too much past 1 degree', () => {
    // tan 1° = 0.01746.
    expect(laneFindings(walkWindow, { setUp: { fallRatio: 0.017 } }).map(({ level }) => level)).toEqual(['met'])
    const [steep] = laneFindings(walkWindow, { setUp: { fallRatio: 0.018 } })
    expect([steep!.level, steep!.key]).toEqual(['CHECK', 'walk-window@slope'])
    expect(steep!.joints).toHaveLength(33)
  })

  it('names the joints over a hump and how far it stands up', () => {
    // Level but for a hump of 1 ft at 680 ft, 20 ft to either side of its foot. Joint 17 lies at 1,357.94 − (17 × 40 − 16 × 0.0625) = 678.9 ft.
    const hump = [levelAt(1, -60, 0), levelAt(2, 660, 0), levelAt(3, 680, 0.3048), levelAt(4, 700, 0), levelAt(5, 1400, 0)]
    const found = laneFindings(walkWindow, {}, ...hump).find(({ key }) => key.endsWith('@bump'))!
    expect(found.level).toBe('CHECK')
    expect(found.joints).toContain(17)
    expect(found.measured!.value!).toBeGreaterThan(0.27)
    expect(found.measured!.value!).toBeLessThan(0.31)
  })

  it('swings two straight sticks off a bend of 400 ft by 2 ft', () => {
    // A stick of 40 ft along the tangent of R = 400 ft: R − √(R² − …) ≈ 40²/(2 × 400) = 2.0 ft.
    const bent = { run: { vertices: [{ xM: 700 * ftM, yM: 0, radiusM: 400 * ftM }, { xM: 1300 * ftM, yM: 300 * ftM, radiusM: null }] } }
    const found = laneFindings(walkWindow, bent).find(({ key }) => key.endsWith('@bend'))!
    expect(found.level).toBe('NOTE')
    expect(found.measured!.value! / ftM).toBeCloseTo(2, 1)
    expect(Math.max(...walkOf(laneSite({}))!.joints.map(({ swingM }) => swingM))).toBe(0)
  })
})
