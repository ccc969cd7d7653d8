import { describe, expect, it } from 'vitest'
import { copyOf } from '../../../src/scene/commands/index.ts'
import { documentIssues } from '../../../src/scene/references.ts'
import { added, after, recordOf, whereIs } from '../../helpers/commands.ts'
import { documentOf, free, item, job, layout, onItem, onRun, run, setUp, yard } from '../../helpers/documents.ts'

const group = yard(item('puller', 'puller:1', onRun(30)), item('crew', 'crew:1', onItem('puller:1', 1, 2)), item('stand', 'stand:1', onRun(6), { locked: true }))

describe('duplicating', () => {
  it('gives fresh ids, keeps the attachment inside the group, and nothing of it is locked', () => {
    const now = after(group, 'duplicate', { ids: ['puller:1', 'crew:1', 'stand:1'], dxM: 2, dyM: 0 })
    expect(added(group, now)).toEqual(['puller:t1', 'crew:t2', 'stand:t3'])
    expect(recordOf(now, 'crew:t2')['place']).toEqual(onItem('puller:t1', 1, 2))
    expect(recordOf(now, 'puller:t1')['place']).toEqual(onRun(32))
    expect(recordOf(now, 'stand:t3')).toMatchObject({ place: onRun(8), locked: false })
    expect(recordOf(now, 'stand:1')).toBe(recordOf(group, 'stand:1'))
  })
  it('of the machine is free: one nail lies under one machine', () => {
    const now = after(yard(item('machine', 'machine:1', onRun(0))), 'duplicate', { ids: ['machine:1'], dxM: 3, dyM: 1 })
    expect(recordOf(now, 'machine:t1')['place']).toEqual(free(3, 1))
  })
  it('of a passenger alone is free at its point', () => {
    const now = after(group, 'duplicate', { ids: ['crew:1'], dxM: 1, dyM: 0 })
    expect(recordOf(now, 'crew:t1')['place']).toEqual(free(32, 2))
  })
})

describe('pasting', () => {
  it('puts the middle of the group at the point, attached to the path as before', () => {
    const clip = copyOf(group, ['stand:1', 'puller:1', 'crew:1'])
    // Middle of the two roots: (6 + 30) / 2 = 18.
    const now = after(group, 'paste', { records: clip, xM: 48, yM: 0 })
    expect(recordOf(now, 'stand:t1')['place']).toEqual(onRun(36))
    expect(recordOf(now, 'puller:t2')['place']).toEqual(onRun(60))
    expect(recordOf(now, 'crew:t3')['place']).toEqual(onItem('puller:t2', 1, 2))
  })
  it('into another layout goes on to its own path', () => {
    const other = documentOf(layout(), job(), setUp({ id: 'setUp:9', datum: { xM: 100, yM: 0 } }), run({ id: 'run:9', setUpId: 'setUp:9' }))
    const now = after(other, 'paste', { records: copyOf(group, ['stand:1', 'puller:1']), xM: 120, yM: 1 })
    expect(recordOf(now, 'stand:t1')['place']).toMatchObject({ at: 'onRun', runId: 'run:9', runningM: 8, offsetM: -1 })
    expect(documentIssues(now)).toEqual([])
  })
  it('into a layout without a path keeps the distances between the items', () => {
    const now = after(documentOf(layout(), job()), 'paste', { records: copyOf(group, ['stand:1', 'puller:1']), xM: 0, yM: 0 })
    expect([whereIs(now, 'stand:t1').xM, whereIs(now, 'puller:t2').xM]).toEqual([-12, 12])
    expect(documentIssues(now)).toEqual([])
  })
  it('of a machine into a layout without a set-up is refused', () => {
    const clip = copyOf(yard(item('machine', 'machine:1', onRun(0))), ['machine:1'])
    expect(() => after(documentOf(layout(), job()), 'paste', { records: clip, xM: 0, yM: 0 })).toThrow('this layout has no set-up yet')
  })
  it('of what is no record of ours is refused by its place in the list', () => {
    expect(() => after(group, 'paste', { records: [{ id: 'drone:1', kind: 'drone' }], xM: 0, yM: 0 })).toThrow('records[0].kind drone is nothing that can be placed')
    expect(() => after(group, 'paste', { records: [{ ...item('stand', 'stand:1', onRun(1)), roller: 'oval' }], xM: 0, yM: 0 })).toThrow('records[0].roller "oval" is not known here')
    expect(() => after(group, 'paste', { records: 'text', xM: 0, yM: 0 })).toThrow('paste: records must be a list')
  })
  it('of items that hang on one another in a loop is refused', () => {
    const records = [item('crew', 'crew:8', onItem('crew:9')), item('crew', 'crew:9', onItem('crew:8'))]
    expect(() => after(group, 'paste', { records, xM: 0, yM: 0 })).toThrow('hang on one another in a loop')
  })
})
