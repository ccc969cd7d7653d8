import { describe, expect, it } from 'vitest'
import { stickCarry } from '../../src/checks/list/stickCarry.ts'
import { item, onRun } from '../helpers/documents.ts'
import { textOf } from '../helpers/fusionYard.ts'
import { laneFindings } from './walkCase.ts'
import { ftM, lbN, levelsOf, siteOf } from './yardCase.ts'

const loader = item('loader', 'loader:1', onRun(-30 * ftM))

describe('a stick and the hands that would carry it', () => {
  it('of 337 lb is not carried: FIX without a loader, NOTE with one', () => {
    // 8 in DR 11: 8.43 lb/ft × 40 ft = 337 lb; four people at 50 lb carry 200.
    const [heavy] = laneFindings(stickCarry, {})
    expect(heavy!.level).toBe('FIX')
    expect(heavy!.measured!.value! / lbN).toBeCloseTo(337, 0)
    expect(textOf(heavy!)).toContain('7 people')
    expect(laneFindings(stickCarry, {}, loader).map(({ level }) => level)).toEqual(['NOTE'])
  })

  it('of 4 in pipe is carried by four', () => {
    // 4 in DR 17: 1.5 lb/ft × 40 ft = 61 lb.
    expect(laneFindings(stickCarry, { job: { pipe: { system: 'IPS', size: '4', dr: 17, material: 'PE4710' } } }).map(({ level }) => level)).toEqual(['met'])
  })

  it('asks for the pipe, and asks nothing of a machine that stands', () => {
    expect(laneFindings(stickCarry, { job: { pipe: null } }).map(({ isUnknown }) => isUnknown)).toEqual([true])
    expect(levelsOf(stickCarry, siteOf({}))).toEqual([])
  })
})
