import { expect, it } from 'vitest'
import { recordsOf } from '../../../src/scene/document.ts'
import { documentIssues } from '../../../src/scene/references.ts'
import { after } from '../../helpers/commands.ts'
import { item, onRun, yard } from '../../helpers/documents.ts'

const document = yard(item('stand', 'stand:1', onRun(6)))
const limit = { limitId: 'jaw-effort', bound: 'check', value: 0.8, reason: 'owner asks for less', who: 'lead' }

it('a limit is changed once a bound, with who and when, and put back', () => {
  const changed = after(document, 'setLimit', limit)
  expect(recordsOf(changed, 'limitChange')).toEqual([{ id: 'limitChange:t1', kind: 'limitChange', ...limit, when: '2025-06-03T14:32:00.000Z' }])
  const again = after(changed, 'setLimit', { ...limit, value: 0.9 })
  expect(recordsOf(again, 'limitChange').map(({ id, value }) => [id, value])).toEqual([['limitChange:t1', 0.9]])
  const both = after(again, 'setLimit', { ...limit, bound: 'fix', value: 1.5 }, { newId: () => 'limitChange:2', now: () => '' })
  expect(recordsOf(after(both, 'clearLimit', { limitId: 'jaw-effort', bound: 'fix' }), 'limitChange').map(({ bound }) => bound)).toEqual(['check'])
  expect(after(both, 'clearLimit', { limitId: 'jaw-effort' }).records).toEqual(document.records)
})
it('as-set figures lie beside the plan, one record an item, kept until measured again', () => {
  const first = after(document, 'setAsSet', { itemId: 'stand:1', saddleM: 0.76 })
  const second = after(first, 'setAsSet', { itemId: 'stand:1', offsetM: 0.01 })
  expect(recordsOf(second, 'asSet')).toEqual([{ id: 'asSet:t1', kind: 'asSet', itemId: 'stand:1', saddleM: 0.76, farSaddleM: null, isTicked: false, isFarTicked: false, offsetM: 0.01, runningM: null, when: '2025-06-03T14:32:00.000Z' }])
  expect(second.records['stand:1']).toBe(document.records['stand:1'])
  expect(documentIssues(second)).toEqual([])
  const measuredAgain = after(second, 'setAsSet', { itemId: 'stand:1', saddleM: null })
  expect(recordsOf(measuredAgain, 'asSet')).toMatchObject([{ saddleM: null, offsetM: 0.01 }])
  // With the last figure taken back no record is left.
  expect(after(measuredAgain, 'setAsSet', { itemId: 'stand:1', offsetM: null }).records).toEqual(document.records)
  expect(after(document, 'setAsSet', { itemId: 'stand:1', saddleM: null }).records).toEqual(document.records)
  expect(() => after(document, 'setAsSet', { itemId: 'stand:9', saddleM: 1 })).toThrow('itemId names stand:9')
})
it('a derived zone is changed field by field and put back as derived', () => {
  const wide = after(document, 'changeZone', { zoneKey: 'Z-02@rack:1', marginM: 2, reason: 'slope' })
  const amber = after(wide, 'changeZone', { zoneKey: 'Z-02@rack:1', zoneClass: 'AMBER' })
  expect(recordsOf(amber, 'zoneChange')).toMatchObject([{ marginM: 2, zoneClass: 'AMBER', points: null, reason: 'slope' }])
  expect(after(amber, 'clearZoneChange', { zoneKey: 'Z-02@rack:1' }).records).toEqual(document.records)
})
it('a tick stands without a figure, and both gone leave nothing', () => {
  const ticked = after(document, 'setAsSet', { itemId: 'stand:1', isTicked: true })
  expect(recordsOf(ticked, 'asSet')).toMatchObject([{ itemId: 'stand:1', saddleM: null, isTicked: true, isFarTicked: false }])
  const measured = after(ticked, 'setAsSet', { itemId: 'stand:1', saddleM: 0.7 })
  expect(recordsOf(after(measured, 'setAsSet', { itemId: 'stand:1', isTicked: false }), 'asSet')).toMatchObject([{ saddleM: 0.7, isTicked: false }])
  expect(recordsOf(after(ticked, 'setAsSet', { itemId: 'stand:1', isTicked: false }), 'asSet')).toEqual([])
})
