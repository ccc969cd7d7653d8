import { expect, it } from 'vitest'
import { runFileSoak } from '../helpers/fileSoak.ts'

it('500 mutated files are opened whole or refused with a reason, never with an exception', () => {
  const report = runFileSoak({ seed: 20_000, count: 500 })
  expect(report.failures).toEqual([])
  // The mutations must reach each outcome, or the test looks at nothing.
  expect(Math.min(report.opened, report.refused - report.salvaged, report.salvaged)).toBeGreaterThan(20)
})
