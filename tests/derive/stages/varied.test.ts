import { describe, expect, it } from 'vitest'
import { deriveSite } from '../../../src/derive/site.ts'
import { createRunMemory } from '../../../src/derive/stages/memory.ts'
import { runThroughOf } from '../../../src/derive/stages/runThrough.ts'
import { seededRandom } from '../../helpers/seededRandom.ts'
import { variedCase } from '../../helpers/variedLayout.ts'

/** Paths of numbers in plain JSON that are none. */
function badNumbers(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} ${value}`]
  if (value === null || typeof value !== 'object') return value === undefined ? [`${path} undefined`] : []
  return Object.entries(value).flatMap(([key, inner]) => badNumbers(inner, `${path}.${key}`))
}

describe('random layouts', () => {
  const random = seededRandom(41)
  const runs = Array.from({ length: 60 }, () => {
    const { document } = variedCase(random)
    return { document, run: runThroughOf(deriveSite(document)) }
  })

  it('are rehearsed without exception, and hold nothing that is no number', () => {
    expect(runs.flatMap(({ run }) => badNumbers(run))).toEqual([])
    expect(runs.filter(({ run }) => run.stages.some(({ arrivals }) => arrivals.length > 0)).length).toBeGreaterThan(10)
  })

  it('have pulls whose parts add up and that never go below zero', () => {
    for (const { pull } of runs.flatMap(({ run }) => run.stages)) {
      if (pull === null) continue
      const { parts } = pull
      const sumN = parts.rollersN + parts.gradeN + parts.bendsN + parts.slackN + parts.ground.reduce((sum, { dragN }) => sum + dragN, 0)
      expect(Math.abs(sumN - pull.pullN)).toBeLessThan(1e-6 * pull.weightN)
      expect(pull.pullN).toBeGreaterThanOrEqual(0)
      expect(pull.needN).toBeGreaterThanOrEqual(pull.pullN - 1e-6 * pull.weightN)
    }
  })

  it('give the same from a memory as without one', () => {
    const memory = createRunMemory()
    for (const { document, run } of runs.slice(0, 20)) {
      for (let i = 0; i < 2; i += 1) expect({ ...runThroughOf(deriveSite(document), { memory }), counts: 0 }).toEqual({ ...run, counts: 0 })
    }
  })
})
