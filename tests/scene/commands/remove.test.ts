import { describe, expect, it } from 'vitest'
import { deleteSays } from '../../../src/scene/commands/index.ts'
import { documentIssues } from '../../../src/scene/references.ts'
import type { YardRecord } from '../../../src/scene/document.ts'
import { after, recordOf, whereIs } from '../../helpers/commands.ts'
import { free, item, onItem, onRun, run, setUp, yard } from '../../helpers/documents.ts'

const asSet: YardRecord = { id: 'asSet:1', kind: 'asSet', itemId: 'rack:1', saddleM: 0.7, farSaddleM: null, isTicked: false, isFarTicked: false, offsetM: null, runningM: null, when: '' }
const zoneChange: YardRecord = { id: 'zoneChange:1', kind: 'zoneChange', zoneKey: 'Z-02@rack:1', marginM: 1, points: null, zoneClass: null, phases: null, reason: '' }
const string = (id: string, over: object = {}): YardRecord => ({ id, kind: 'string', setUpId: 'setUp:1', runId: 'run:1', name: '', stickCount: null, parkingRow: null, parkingSide: 'right', order: 0, joinedToId: null, note: null, ...over })

describe('deleting', () => {
  it('an item frees what is attached to it, at the point it had', () => {
    const document = yard(item('puller', 'puller:1', onRun(30)), item('crew', 'crew:1', onItem('puller:1', 1, 2)))
    const removed = after(document, 'remove', { ids: ['puller:1'] })
    expect(removed.records['puller:1']).toBe(undefined)
    expect(recordOf(removed, 'crew:1')['place']).toEqual(free(31, 2, 0))
    expect(deleteSays(document, ['puller:1'])).toMatchObject({ goes: ['puller:1'], goesWith: [], detached: ['crew:1'], text: { en: 'Stays where it is, no longer attached: O.', es: 'Queda donde está, ya sin fijar: O.' } })
  })
  it('an item takes its as-set figures and the changes of its zones with it', () => {
    const document = yard(item('rack', 'rack:1', onRun(-6)), asSet, zoneChange)
    expect(deleteSays(document, ['rack:1'])).toMatchObject({ goesWith: ['asSet:1', 'zoneChange:1'], text: { en: 'With it goes: as-set figure, change of a zone.' } })
    expect(Object.keys(after(document, 'remove', { ids: ['rack:1'] }).records)).toEqual(['layout:this', 'job:this', 'setUp:1', 'run:1'])
  })
  it('the machine leaves its set-up and all that stands along it', () => {
    const document = yard(item('machine', 'machine:1', onRun(0)), item('stand', 'stand:1', onRun(6)))
    expect(deleteSays(document, ['machine:1'])).toMatchObject({ goes: ['machine:1'], text: null })
    expect(whereIs(after(document, 'remove', { ids: ['machine:1'] }), 'stand:1').runningM).toBe(6)
  })
  it('a set-up takes path, string and machine with it and frees the stands', () => {
    const document = yard(item('machine', 'machine:1', onRun(0)), item('stand', 'stand:1', onRun(6)), string('string:1'))
    const removed = after(document, 'remove', { ids: ['setUp:1'] })
    expect(Object.keys(removed.records)).toEqual(['layout:this', 'job:this', 'stand:1'])
    expect(recordOf(removed, 'stand:1')['place']).toEqual(free(6, 0))
    expect(documentIssues(removed)).toEqual([])
  })
  it('what is the target of a path or joined to a string leaves no reference behind', () => {
    const document = yard(item('trench', 'trench:1', [{ xM: 50, yM: 0 }, { xM: 60, yM: 0 }]), run({ targetId: 'trench:1' }), string('string:1'), string('string:2', { joinedToId: 'string:1' }))
    const removed = after(document, 'remove', { ids: ['trench:1', 'string:1'] })
    expect([recordOf(removed, 'run:1')['targetId'], recordOf(removed, 'string:2')['joinedToId']]).toEqual([null, null])
    expect(documentIssues(removed)).toEqual([])
  })
  it('never takes layout, job, a release or what is locked', () => {
    const release: YardRecord = { id: 'release:1', kind: 'release', letter: 'A', what: 'printed', when: '', contentHash: '', replaces: null, text: null, stageId: null, language: null, people: [] }
    const document = yard(release, item('stand', 'stand:1', onRun(6), { locked: true }))
    const ids = ['layout:this', 'job:this', 'release:1', 'stand:1', 'stand:9']
    expect(deleteSays(document, ids)).toMatchObject({ goes: [], kept: ['layout:this', 'job:this', 'release:1', 'stand:1'] })
    expect(after(document, 'remove', { ids })).toBe(document)
  })
  it('one of two set-ups leaves the other alone', () => {
    const document = yard(setUp({ id: 'setUp:2' }), run({ id: 'run:2', setUpId: 'setUp:2' }), item('stand', 'stand:1', onRun(6)), item('stand', 'stand:2', onRun(6, { runId: 'run:2' })))
    const removed = after(document, 'remove', { ids: ['setUp:2'] })
    expect([recordOf(removed, 'stand:1')['place'], recordOf(removed, 'stand:2')['place']]).toEqual([onRun(6), free(6, 0)])
  })
})
