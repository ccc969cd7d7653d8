import { describe, expect, it } from 'vitest'
import { rackStops } from '../../src/checks/list/rackStops.ts'
import { onRun } from '../helpers/documents.ts'
import { findingsOf, levelsOf, machineAt0, siteOf, withFigures } from './yardCase.ts'

describe('stops of the rack', () => {
  const rack = (over: Record<string, unknown>, tiltRatio: number | null = 0) => withFigures('rack', 'rack:1', onRun(-6), { tiltRatio }, over)
  const both = { stopsLeft: true, stopsRight: true }

  it('are up on both sides, or somebody has to say so', () => {
    expect(levelsOf(rackStops, siteOf({}, rack(both)))).toEqual(['met'])
    const [unknown] = findingsOf(rackStops, siteOf({}, rack({})))
    expect([unknown!.level, unknown!.isUnknown, unknown!.missing.map(({ path }) => path)]).toEqual(['CHECK', true, ['stopsLeft', 'stopsRight']])
    expect(unknown!.remedy!.command).toBe('sequence')
  })

  it('hold what a tilt over half a percent would roll off', () => {
    // House rule: FIX over 0.5 % toward a side without a stop; tilt positive falls to the right.
    const right = { stopsLeft: true, stopsRight: false }
    expect(levelsOf(rackStops, siteOf({}, rack(right, 0.005)))).toEqual(['CHECK'])
    expect(levelsOf(rackStops, siteOf({}, rack(right, 0.0051)))).toEqual(['FIX'])
    expect(levelsOf(rackStops, siteOf({}, rack(right, -0.02)))).toEqual(['CHECK'])
    const left = { stopsLeft: false, stopsRight: true }
    expect(levelsOf(rackStops, siteOf({}, rack(left, -0.0051)))).toEqual(['FIX'])
    expect(findingsOf(rackStops, siteOf({}, rack(left, -0.0051)))[0]!.remedy).toMatchObject({ command: 'setField', args: { ids: ['rack:1'], path: 'stopsLeft', value: true } })
  })

  it('say how far a pipe over the edge rolls, and FIX where nothing stops it', () => {
    // Grass 0.05, level, BOP 0.9 − 0.1365 = 0.7635 m: h/c = 15.27 m. Cross-fall to the right of 2.5 % is half of it: nothing certain stops it.
    const right = rack({ stopsLeft: true, stopsRight: false })
    const [rolls] = findingsOf(rackStops, siteOf({}, machineAt0(), right))
    expect([rolls!.level, rolls!.measured!.value]).toEqual(['CHECK', expect.closeTo(0.763475 / 0.05, 6)])
    expect(levelsOf(rackStops, siteOf({ setUp: { crossFallRatio: 0.025 } }, machineAt0(), right))).toEqual(['FIX'])
    expect(levelsOf(rackStops, siteOf({ setUp: { crossFallRatio: 0.02 } }, machineAt0(), right))).toEqual(['CHECK'])
  })

  it('ask for the tilt only where a stop is down', () => {
    expect(levelsOf(rackStops, siteOf({}, rack(both, null)))).toEqual(['met'])
    expect(findingsOf(rackStops, siteOf({}, rack({ stopsLeft: true, stopsRight: false }, null))).map(({ level, isUnknown }) => `${level}${isUnknown ? '?' : ''}`)).toEqual(['CHECK?', 'CHECK'])
  })
})
