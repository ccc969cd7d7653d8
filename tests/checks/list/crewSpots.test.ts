import { describe, expect, it } from 'vitest'
import { crewInZone } from '../../../src/checks/list/crewInZone.ts'
import { crewSpots } from '../../../src/checks/list/crewSpots.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import { commandOf } from '../../../src/scene/commands/index.ts'
import { recordsOf } from '../../../src/scene/document.ts'
import { applyEdit } from '../../../src/scene/edit.ts'
import { item, onRun, testEnv } from '../../helpers/documents.ts'
import { findingsOf, levelsOf, machineAt0, rackAtInfeed, siteOf } from '../yardCase.ts'

describe('no crew spots', () => {
  it('are asked for once there is a machine', () => {
    expect(levelsOf(crewSpots, siteOf({}))).toEqual([])
    expect(levelsOf(crewSpots, siteOf({}, machineAt0()))).toEqual(['CHECK'])
    expect(levelsOf(crewSpots, siteOf({}, machineAt0(), item('crew', 'crew:1', onRun(5), {})))).toEqual([])
  })
  it('come with the usual ones, none of which stands in a RED zone, a seat staying in its vehicle', () => {
    const site = siteOf({}, machineAt0(), rackAtInfeed({ openSide: 'R', stopsLeft: true, stopsRight: true }), item('puller', 'puller:1', onRun(110), { guardedCab: true }))
    const { remedy } = findingsOf(crewSpots, site)[0]!
    const after = applyEdit(site.document, commandOf(remedy!.command)!.run(site.document, remedy!.args, testEnv()))
    expect(recordsOf(after, 'crew').map(({ role }) => role)).toEqual(['operator', 'infeedHand', 'exitHand', 'noseSpotter', 'pullerOperator'])
    expect(recordsOf(after, 'crew').find(({ role }) => role === 'pullerOperator')!.place).toMatchObject({ at: 'onItem', itemId: 'puller:1' })
    expect(levelsOf(crewInZone, deriveSite(after)).filter((level) => level === 'STOP')).toEqual([])
    expect(levelsOf(crewSpots, deriveSite(after))).toEqual([])
  })
})
