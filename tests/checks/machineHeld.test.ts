import { describe, expect, it } from 'vitest'
import { machineHeld } from '../../src/checks/list/machineHeld.ts'
import { clampedPullsOf } from '../../src/derive/carriageDrags.ts'
import { onRun } from '../helpers/documents.ts'
import type { YardRecord } from '../../src/scene/document.ts'
import { findingsOf, ftM, levelsOf, rollersAt, siteOf, withFigures } from './yardCase.ts'

const rollers = rollersAt(11 * ftM, 320 * ftM, 11 * ftM)
const yard = (fallRatio: number, figures: Record<string, number | null>, ...more: readonly YardRecord[]) => siteOf({ setUp: { fallRatio } }, withFigures('machine', 'machine:1', onRun(0), figures), ...rollers, ...more)
const anchor = (ratedHoldN: number | null, runningM: number) => withFigures('anchor', 'anchor:1', onRun(runningM, { offsetM: 2 }), { ratedHoldN })

describe('the machine held on a grade', () => {
  it('needs the weight of all that is clamped down the slope, w·L·sinθ, at the last joint most', () => {
    // Falling 5 % over plan length: 0.05 of the weight from one stick behind the datum to the nose.
    const site = yard(0.05, { massKg: null, holdLoadN: null })
    const last = clampedPullsOf(site).at(-1)!
    const lengthM = site.sticks.stringLengthM(1) + site.sticks.stringLengthM(last.joint)
    expect(last.pullN).toBeCloseTo(0.05 * site.pipe.properties!.lineLoadNPerM * lengthM, 3)
    expect(Math.max(...clampedPullsOf(site).map(({ pullN }) => pullN))).toBe(last.pullN)
    // A machine of 2,000 kg adds 2,000 · 9.80665 · 0.05 = 980.665 N.
    expect(clampedPullsOf(yard(0.05, { massKg: 2000 })).at(-1)!.pullN - last.pullN).toBeCloseTo(980.665, 3)
    expect(clampedPullsOf(yard(-0.05, { massKg: null })).at(-1)!.pullN).toBeCloseTo(-last.pullN, 3)
  })
  it('is not asked below 1 % (house rule)', () => expect(levelsOf(machineHeld, yard(0.009, { holdLoadN: null }))).toEqual(['met']))
  it('from 1 % on what holds it is asked for, and never taken as enough', () => {
    const [asked] = findingsOf(machineHeld, yard(0.01, { holdLoadN: null }))
    expect([asked!.isUnknown, asked!.level, asked!.missing.map(({ path }) => path)]).toEqual([true, 'CHECK', ['figures.holdLoadN.value']])
  })
  it('is STOP where chocks and anchor uphill together hold less, met where they hold as much', () => {
    const neededN = clampedPullsOf(yard(0.05, {})).at(-1)!.pullN
    expect(levelsOf(machineHeld, yard(0.05, { holdLoadN: neededN + 1 }))).toEqual(['met'])
    expect(levelsOf(machineHeld, yard(0.05, { holdLoadN: neededN - 1 }))).toEqual(['STOP'])
    expect(levelsOf(machineHeld, yard(0.05, { holdLoadN: 0 }))).toEqual(['STOP'])
    expect(levelsOf(machineHeld, yard(0.05, { holdLoadN: neededN / 2 }, anchor(neededN / 2 + 1, -5)))).toEqual(['met'])
    expect(levelsOf(machineHeld, yard(0.05, { holdLoadN: neededN / 2 }, anchor(neededN, 9)))).toEqual(['STOP'])
    expect(levelsOf(machineHeld, yard(0.05, { holdLoadN: neededN / 2 }, anchor(null, -5)))).toEqual(['CHECK?'])
    // An anchor that is enough by itself answers the question.
    expect(levelsOf(machineHeld, yard(0.05, { holdLoadN: null }, anchor(neededN, -5)))).toEqual(['met'])
  })
  it('falling to the infeed the anchor ahead of the machine counts', () => {
    const neededN = -clampedPullsOf(yard(-0.05, {})).at(-1)!.pullN
    expect(levelsOf(machineHeld, yard(-0.05, { holdLoadN: 0 }, anchor(neededN, 9)))).toEqual(['met'])
    expect(levelsOf(machineHeld, yard(-0.05, { holdLoadN: 0 }, anchor(neededN, -5)))).toEqual(['STOP'])
  })
})
