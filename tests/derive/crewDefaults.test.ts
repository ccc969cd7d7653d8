import { describe, expect, it } from 'vitest'
import { runChecks } from '../../src/checks/runner.ts'
import { defaultCrew } from '../../src/derive/crewDefaults.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { commandOf } from '../../src/scene/commands/index.ts'
import { recordsOf, type YardDocument } from '../../src/scene/document.ts'
import { applyEdit } from '../../src/scene/edit.ts'
import { testEnv } from '../helpers/documents.ts'
import { arenalGood, mapleGood, otterGood, redstemGood } from '../helpers/makeExamples.ts'

/** The layout with the crew of the command and no other. */
const crewed = (document: YardDocument): YardDocument => {
  const bare = applyEdit(document, { put: [], remove: recordsOf(document, 'crew').map(({ id }) => id) })
  return applyEdit(bare, commandOf('crewDefaults')!.run(bare, { setUpId: recordsOf(bare, 'setUp')[0]!.id }, testEnv()))
}

describe('the crew command on a good plan', () => {
  it.each([['Maple Fork', mapleGood], ['Redstem Flat', redstemGood], ['Campo Arenal', arenalGood], ['Otter Bend', otterGood]])('%s: everybody stands where the zones leave room, to a millimetre, with no STOP and no FIX', (_name, make) => {
    const site = deriveSite(make())
    const placed = [...site.placed.values()].flatMap(({ record, runningM, offsetM }) => (record.kind === 'crew' ? [{ role: record.role, phases: record.phases, runningM, offsetM }] : []))
    const near = (valueM: number) => expect.closeTo(valueM, 3) as number
    expect(placed).toEqual(defaultCrew(site).map(({ role, phases, runningM, offsetM }) => ({ role, phases, runningM: near(runningM), offsetM: near(offsetM) })))
    expect(placed.length).toBeGreaterThan(6)
    expect(runChecks(site).findings.filter(({ checkId }) => checkId === 'crew-in-zone').map(({ level }) => level)).toEqual(['met'])
  })

  it('Redstem Flat: the nose spotter goes to the side away from the trench, where nothing has to move', () => {
    // 18 ft 6 in off the line; the trench runs on the right, 19 ft off: offsets to the left are negative.
    const site = deriveSite(crewed(redstemGood()))
    expect(runChecks(site).findings.filter(({ checkId }) => checkId === 'crew-in-zone').map(({ level }) => level)).toEqual(['met'])
    expect(defaultCrew(site).find(({ role }) => role === 'noseSpotter')!.offsetM).toBeCloseTo(-18.5 * 0.3048, 3)
  })
})
