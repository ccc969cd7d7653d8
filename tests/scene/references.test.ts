import { expect, it } from 'vitest'
import type { YardRecord } from '../../src/scene/document.ts'
import { documentIssues } from '../../src/scene/references.ts'
import { documentOf, item, job, layout, onItem, onRun, run, yard } from '../helpers/documents.ts'

const said = (...records: readonly YardRecord[]): string[] => documentIssues(yard(...records)).map(({ path, message }) => `${path} ${message.en}`)
const string = (id: string, joinedToId: string | null): YardRecord => ({ id, kind: 'string', setUpId: 'setUp:1', runId: 'run:1', name: '', stickCount: null, parkingRow: null, parkingSide: 'right', order: 0, joinedToId, note: null })

it('a sound document has no issues', () => {
  expect(said(item('machine', 'machine:1', onRun(0)), item('crew', 'crew:1', onItem('machine:1')), string('string:1', null), string('string:2', 'string:1'))).toEqual([])
})
it.each([
  ['an item on a path that is none', item('stand', 'stand:1', onRun(1, { runId: 'setUp:1' })), 'stand:1.place.runId names setUp:1, which is not a pull path in this file'],
  ['an item on a feature', item('crew', 'crew:1', onItem('run:1')), 'crew:1.place.itemId names run:1, which is not an item with a place in this file'],
  ['a machine of no set-up', item('machine', 'machine:1', onRun(0), { setUpId: 'setUp:9' }), 'machine:1.setUpId names setUp:9, which is not a set-up in this file'],
  ['a path to a target that is gone', run({ id: 'run:2', targetId: 'trench:9' }), 'run:2.targetId names trench:9, which is not a record in this file'],
  ['a figure of an item that is gone', { id: 'asSet:1', kind: 'asSet', itemId: 'stand:9', saddleM: 1, farSaddleM: null, isTicked: false, isFarTicked: false, offsetM: null, runningM: null, when: '' } as YardRecord, 'asSet:1.itemId names stand:9, which is not an item with a place in this file'],
  ['a string joined to itself', string('string:1', 'string:1'), 'string:1.joinedToId goes round in a loop: string:1 → string:1'],
])('%s', (_what, record, text) => expect(said(record)).toEqual([text]))
it('a loop names every member once, what hangs on it none', () => {
  expect(said(item('crew', 'crew:a', onItem('crew:b')), item('crew', 'crew:b', onItem('crew:a')), item('note', 'note:1', onItem('crew:a')))).toEqual([
    'crew:a.place.itemId goes round in a loop: crew:a → crew:b → crew:a', 'crew:b.place.itemId goes round in a loop: crew:a → crew:b → crew:a',
  ])
})
it('a record that does not fit, is filed under another id, or a missing job', () => {
  expect(documentIssues({ records: { ...yard().records, 'stand:x': item('stand', 'stand:1', onRun(1)) } }).map(({ path }) => path)).toEqual(['stand:x'])
  expect(documentIssues(documentOf(layout())).map(({ path, message }) => `${path} ${message.en}`)).toEqual(['job:this is missing'])
  expect(documentIssues(documentOf(layout(), job({ stickLengthM: -1 }))).map(({ path }) => path)).toEqual(['job:this.stickLengthM'])
})
