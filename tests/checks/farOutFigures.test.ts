import { describe, expect, it } from 'vitest'
import { runChecks } from '../../src/checks/runner.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { jawEffort } from '../../src/checks/list/jawEffort.ts'
import { loaderPlate } from '../../src/checks/list/loaderPlate.ts'
import { overheadLine } from '../../src/checks/list/overheadLine.ts'
import { standLoad } from '../../src/checks/list/standLoad.ts'
import { trenchEdge } from '../../src/checks/list/trenchEdge.ts'
import { renderText } from '../../src/messages/render.ts'
import { documentOf, free, item, job, layout, onItem, onRun, run, setUp } from '../helpers/documents.ts'
import { findingsOf, levelsOf, machineAt0, rackAtInfeed, siteOf, tenInch, toolsFor, withFigures } from './yardCase.ts'

// Each of these came out of the random layouts (npm run soak -- layouts).
describe('figures no plate ever showed', () => {
  it.each([0, -900])('a loader whose plate says %d N may lift nothing, and the finding can be read', (plateLoadN) => {
    const [finding] = findingsOf(loaderPlate, siteOf({}, withFigures('loader', 'loader:1', free(0, 20), { plateLoadN })))
    expect(finding!.level).toBe('FIX')
    expect(renderText(finding!.what.text, finding!.what.values ?? {}, { system: 'feetInches', language: 'en' })).toContain('may lift nothing')
  })

  it('a stand whose plate says less than nothing is over its plate', () => {
    const stand = withFigures('stand', 'stand:1', onRun(4), { ratedLoadN: -1 })
    const [worst] = findingsOf(standLoad, siteOf({}, machineAt0(), rackAtInfeed(), stand))
    expect(worst!.level).toBe('FIX')
  })

  it('a voltage below zero is no voltage: asked for, like one that is missing', () => {
    const line = (voltageV: number | null) => siteOf({}, machineAt0(), withFigures('overheadLine', 'overheadLine:1', [{ xM: -20, yM: 5 }, { xM: 20, yM: 5 }], { voltageV, lowestHeightM: 8 }))
    expect(levelsOf(overheadLine, line(-1))).toEqual(levelsOf(overheadLine, line(null)))
    expect(runChecks(line(-1)).findings.filter(({ key }) => key.endsWith('@failed'))).toEqual([])
  })

  it('a trench less than nothing deep has no known depth', () => {
    const trench = (depthM: number | null) => siteOf({}, machineAt0(), withFigures('trench', 'trench:1', [{ xM: -20, yM: 3 }, { xM: 20, yM: 3 }], { widthM: 1, depthM }))
    expect(levelsOf(trenchEdge, trench(-1.5))).toEqual(levelsOf(trenchEdge, trench(null)))
  })

  it('a stand supposed missing takes no remedy at the jaws down with it when a level hangs on it', () => {
    const low = item('stand', 'stand:1', onRun(4), { height: { rule: 'aboveGround', saddleM: 0.2 } })
    const document = documentOf(layout(), job({ ...tenInch }), setUp({ fallRatio: 0, crossFallRatio: 0 }), run(), machineAt0(), rackAtInfeed(), low, item('stand', 'stand:2', onRun(9)), item('crew', 'crew:1', onItem('stand:2', 1, 1)))
    const site = deriveSite(document, { whatIf: { missing: ['stand:2'] } })
    const found = jawEffort.run(site, toolsFor(site))
    expect(found.map(({ level }) => level)).toContain('FIX')
    expect(found.some(({ remedy }) => remedy !== null)).toBe(true)
  })
  it('clamps in one place hold no bowed stick sideways: nothing is said, and nothing fails', () => {
    const machine = withFigures('machine', 'machine:1', onRun(0), { innerClampM: 0, outerClampM: 1e-9 })
    const v = item('stand', 'stand:1', onRun(4), { roller: 'V' })
    const site = siteOf({ job: { stickBowM: { value: 0.1, basis: 'measured' } } }, machine, rackAtInfeed(), v)
    expect(runChecks(site).findings.filter(({ key }) => key.endsWith('@failed'))).toEqual([])
  })
})
