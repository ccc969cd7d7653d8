import { describe, expect, it } from 'vitest'
import { checks } from '../../src/checks/registry.ts'
import { runLayoutSoak, together } from '../helpers/layoutSoak.ts'

// A slice; all of it by `npm run soak -- layouts`.
describe('random layouts', () => {
  const [first, second] = [runLayoutSoak({ seed: 1, count: 150 }), runLayoutSoak({ seed: 151, count: 150 })]
  const result = together(first, second)

  it('go through every check without exception or NaN, passes and unknowns under their caps, and every body in range settles', () => {
    expect(result.failures).toEqual([])
    expect(result.failureCount).toBe(0)
    expect(result.notConverged).toBe(0)
    expect(result.count).toBe(300)
    expect(result.findings).toBeGreaterThan(300 * 8)
  })

  it('make every check speak, and come up in every level', () => {
    expect(checks.filter(({ id }) => result.fired[id] === undefined).map(({ id }) => id)).toEqual([])
    expect(Object.entries(result.withLevel).filter(([, layouts]) => layouts < 30)).toEqual([])
  })

  it('of two slices make one', () => {
    expect(result.findings).toBe(first.findings + second.findings)
    expect(result.longestMs.value).toBe(Math.max(first.longestMs.value, second.longestMs.value))
    expect(result.fired['sag']!.FIX).toBe((first.fired['sag']!.FIX ?? 0) + (second.fired['sag']!.FIX ?? 0))
  })
})
