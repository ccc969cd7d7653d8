import { describe, expect, it } from 'vitest'
import { recordsOf, type YardDocument } from '../../../src/scene/document.ts'
import { documentIssues } from '../../../src/scene/references.ts'
import { after } from '../../helpers/commands.ts'
import { item, onRun, stringAt, yard } from '../../helpers/documents.ts'

const setUpId = 'setUp:1'
const shortOf = (document: YardDocument): string[] => recordsOf(document, 'string').toSorted((a, b) => a.order - b.order).map(({ stickCount, parkingRow, parkingSide, joinedToId }) => `${stickCount ?? '?'} row ${parkingRow ?? '-'} ${parkingSide} after ${joinedToId ?? '-'}`)

describe('strings of a job', () => {
  it('are written down in one step, the last on the line, each joined to the one before', () => {
    const document = after(yard(), 'splitStrings', { setUpId, counts: [5, 5, 4] })
    const [a, b] = recordsOf(document, 'string')
    // No rack: its closed side counts as left.
    expect(shortOf(document)).toEqual(['5 row 1 left after -', `5 row 2 left after ${a!.id}`, `4 row 0 left after ${b!.id}`])
    expect(documentIssues(document)).toEqual([])
  })

  it('keep id and name where they are split anew, and go where there are fewer', () => {
    const before = yard(stringAt(1, { stickCount: 9, name: 'north' }), stringAt(2, { stickCount: 9, joinedToId: 'string:1' }), stringAt(3, { stickCount: 1, joinedToId: 'string:2' }))
    const document = after(before, 'splitStrings', { setUpId, counts: [10, 9], side: 'right' })
    expect(recordsOf(document, 'string').map(({ id, name }) => `${id} ${name}`)).toEqual(['string:1 north', 'string:2 '])
    expect(documentIssues(document)).toEqual([])
  })

  it('are parked off the side the rack is loaded from', () => {
    const open = (openSide: 'L' | 'R') => after(yard(item('rack', 'rack:1', onRun(-6), { openSide })), 'splitStrings', { setUpId, counts: [2, 2] })
    expect([shortOf(open('L'))[0], shortOf(open('R'))[0]]).toEqual(['2 row 1 right after -', '2 row 1 left after -'])
  })

  it('are cut and joined again', () => {
    const cut = after(yard(stringAt(1, { stickCount: 9 })), 'splitString', { id: 'string:1', sticks: 9, first: 4 })
    expect(shortOf(cut).map((line) => line.slice(0, 1))).toEqual(['4', '5'])
    expect(shortOf(after(cut, 'joinString', { id: 'string:1' }))).toEqual(['9 row 0 left after -'])
    expect(() => after(cut, 'splitString', { id: 'string:1', sticks: 4, first: 4 })).toThrow(/first/)
    expect(() => after(yard(stringAt(1)), 'joinString', { id: 'string:1' })).toThrow(/last string/)
  })

  it('without a record adding one writes down two', () => {
    const document = after(yard(), 'addString', { setUpId })
    expect(shortOf(document).map((line) => line.slice(0, 7))).toEqual(['? row 1', '? row 0'])
  })

  it('changing one to what it is changes nothing', () => {
    const before = yard(stringAt(1, { parkingRow: 2 }))
    expect(after(before, 'setString', { id: 'string:1', parkingRow: 2 })).toEqual(before)
    expect(shortOf(after(before, 'setString', { id: 'string:1', stickCount: 3, parkingSide: 'left' }))).toEqual(['3 row 2 left after -'])
  })
})
