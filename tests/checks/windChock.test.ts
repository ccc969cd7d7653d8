import { describe, expect, it } from 'vitest'
import { rollingWindMPerS, windChock } from '../../src/checks/list/windChock.ts'
import { pipeProperties } from '../../src/engine/pipe/pipeProperties.ts'
import { mphMPerS } from '../../src/units/factors.ts'
import { findingsOf, levelsOf, siteOf } from './yardCase.ts'

describe('wind on the string', () => {
  const pipe = (size: string, dr: number) => {
    const found = pipeProperties({ system: 'IPS', size, dr, material: 'PE4710' })
    if (found.status !== 'ok') throw new Error(size)
    return found.value
  }

  it('rolls it from the speed at which its force is 5 % of the weight', () => {
    // 12 in DR 17: 0.05 · 12.36 = 0.00256 · V² · 1.0625: V = 15.07 mph. 18 in DR 17: 0.05 · 24.64 / (0.00256 · 1.5): 17.9. 36 in DR 17: 25.3. 16 in DR 11: 20.6.
    const mph = (size: string, dr: number) => rollingWindMPerS(pipe(size, dr)) / mphMPerS
    expect([mph('12', 17), mph('18', 17), mph('16', 11), mph('36', 17)].map((speed) => Math.round(speed))).toEqual([15, 18, 21, 25])
    expect(mph('12', 17)).toBeCloseTo(15.07, 1)
  })

  it('follows the share the layout sets: at a quarter of it half the speed', () => {
    const change = { id: 'limitChange:1', kind: 'limitChange', limitId: 'wind-share', bound: 'check', value: 0.0125, reason: 'light string', who: 'lead', when: '2025-06-03T14:00:00Z' } as const
    const [wind] = findingsOf(windChock, siteOf({}, change))
    expect([wind!.measured!.value! / mphMPerS, wind!.source.edited]).toEqual([expect.closeTo(13.84 / 2, 1), true])
  })

  it('is always worth a check', () => {
    // 10 in DR 17: 0.05 · 8.78 / (0.00256 · 0.8958) = 191.4: 13.8 mph.
    const [wind] = findingsOf(windChock, siteOf({}))
    expect([wind!.level, wind!.measured!.value! / mphMPerS]).toEqual(['CHECK', expect.closeTo(13.84, 1)])
    expect(levelsOf(windChock, siteOf({ job: { pipe: null } }))).toEqual(['CHECK?'])
  })
})
