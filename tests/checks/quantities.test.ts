import { describe, expect, it } from 'vitest'
import { limitsOf } from '../../src/checks/limits.ts'
import { setOutTolerance } from '../../src/checks/list/setOutTolerance.ts'
import { runChecks } from '../../src/checks/runner.ts'
import { createMechanics } from '../../src/derive/mechanics.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { bodySolverOf } from '../../src/derive/bodies.ts'
import { poundForceN } from '../../src/units/factors.ts'
import { ft, fusionYard, inch, runOne } from '../helpers/fusionYard.ts'

const line = { exits: [[12.5, 0], [25, 0], [37.5, 0]], rollers: Array.from({ length: 24 }, (_, i) => 50 + 12.5 * i), neededFt: 350 } as const

describe('figures of the supports beside the findings', () => {
  it('give every support a tolerance between 1/16 and ½ in and the most it carries', () => {
    const { quantities } = runChecks(fusionYard(line))
    expect(Object.keys(quantities!.supports)).toHaveLength(2 + 3 + 24)
    for (const { toleranceM, loadN, when } of Object.values(quantities!.supports)) {
      expect(toleranceM).toBeGreaterThanOrEqual(inch(1 / 16) - 1e-12)
      expect(toleranceM).toBeLessThanOrEqual(inch(1 / 2) + 1e-12)
      expect(loadN).toBeGreaterThanOrEqual(0)
      expect(when).not.toBeNull()
    }
  })
  it('two level beams at the quarter points share a 40 ft stick of 494 lb, less what the jaws take', () => {
    const { supports } = runChecks(fusionYard()).quantities!
    const sumN = supports['rack:1#1']!.loadN! + supports['rack:1#2']!.loadN!
    expect(sumN / poundForceN).toBeGreaterThan(400)
    expect(sumN / poundForceN).toBeLessThan(600)
  })
  it('are left out of the quick run', () => expect(runChecks(fusionYard(), { only: 'quick' }).quantities).toBeUndefined())
  it('are unknown where nothing can be solved, and the check does not say met', () => {
    const document = fusionYard({ job: { stickLengthM: null } })
    for (const figures of Object.values(runChecks(document).quantities!.supports)) expect(figures).toEqual({ toleranceM: null, loadN: null, when: null })
    expect(runOne(setOutTolerance, document)).toEqual([])
  })
  it.each([['4', 11], ['12', 17], ['24', 11], ['36', 17], ['54', 21]] as const)('in %s in pipe a support beyond 40 m is free to be off by ½ in: C changes by less than a quarter', (size, dr) => {
    const document = fusionYard({ ...line, size, dr })
    const site = deriveSite(document)
    const mechanics = createMechanics(site, limitsOf(document))
    const weightLever = site.pipe.properties!.lineLoadNPerM * ft(40) * ft(2)
    for (const joint of mechanics.joints) {
      const { body, effortRatio } = mechanics.joint(joint)!.exit
      for (const { key, runningM } of site.supports) {
        if (runningM <= 40 || runningM > body.endM) continue
        for (const byM of [inch(0.5), -inch(0.5)]) {
          const largestN = Math.max(...bodySolverOf(site).solve({ ...body, shift: { key, byM } })!.jaws.map(({ forceN }) => Math.abs(forceN)))
          expect(Math.abs((largestN * ft(2)) / weightLever - effortRatio), `${key} at joint ${joint}`).toBeLessThan(0.25)
        }
      }
    }
  })
})
