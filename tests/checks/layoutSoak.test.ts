import { describe, expect, it } from 'vitest'
import { runLayoutSoak } from '../helpers/layoutSoak.ts'

describe('random layouts', () => {
  it('go through every check without exception or NaN, and nearly all bodies settle', () => {
    const result = runLayoutSoak({ seed: 1, count: 200 })
    expect(result.failures).toEqual([])
    expect(result.findings).toBeGreaterThan(200 * 8)
    expect(result.notConverged).toBe(0)
  }, 60_000)
})
