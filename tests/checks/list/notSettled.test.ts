import { describe, expect, it } from 'vitest'
import { notSettled } from '../../../src/checks/list/notSettled.ts'
import { bodySolverOf } from '../../../src/derive/bodies.ts'
import { createMechanics } from '../../../src/derive/mechanics.ts'
import { limitsOf } from '../../../src/checks/limits.ts'
import { fusionYard, runOne, siteOf, textOf } from '../../helpers/fusionYard.ts'

describe('pipe that could not be worked out', () => {
  it('says nothing where everything settled', () => expect(runOne(notSettled, fusionYard())).toEqual([]))
  it('names the piece and the reason where the solver refused', () => {
    const document = fusionYard()
    const site = siteOf(document)
    const limits = limitsOf(document)
    // A level that is no number cannot come from a document; it stands for whatever the solver refuses.
    bodySolverOf(site).solve({ name: 'string', startM: 0, endM: 12, question: 'jaws', infeedJaws: 'out', exitJaws: 'closed', lifts: false, noseLevelM: Number.NaN })
    const [one] = notSettled.run(site, { limits, mechanics: createMechanics(site, limits), owned: null })
    expect(one!.level).toBe('CHECK')
    expect(textOf(one!)).toMatch(/^The pipe, at the datum to exit 39 ft .*, could not be worked out: /)
  })
})
