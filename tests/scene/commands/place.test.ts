import { describe, expect, it } from 'vitest'
import { documentIssues } from '../../../src/scene/references.ts'
import { labelsOf } from '../../../src/scene/resolve.ts'
import { added, after, recordOf } from '../../helpers/commands.ts'
import { documentOf, free, job, layout, onItem, onRun, yard } from '../../helpers/documents.ts'

describe('placing', () => {
  it('an item takes a fresh id, typical figures and the patch over them', () => {
    const document = yard()
    const placed = after(document, 'place', { kind: 'stand', place: onRun(6.096), patch: { roller: 'V', figures: { ratedLoadN: { value: 9000, basis: 'plate' } } } })
    const [id] = added(document, placed)
    expect(recordOf(placed, id!)).toMatchObject({ id: 'stand:t1', place: onRun(6.096), roller: 'V', figures: { ratedLoadN: { value: 9000, basis: 'plate' }, lowestSaddleM: { basis: 'typical' } } })
  })
  it('a feature takes its points', () => {
    const placed = after(yard(), 'place', { kind: 'fence', points: [{ xM: 0, yM: 1 }, { xM: 4, yM: 1 }] })
    expect(recordOf(placed, 'fence:t1')['points']).toEqual([{ xM: 0, yM: 1 }, { xM: 4, yM: 1 }])
  })
  it('a machine on a sheet without a set-up brings set-up and path with it, the datum under it', () => {
    const placed = after(documentOf(layout(), job()), 'place', { kind: 'machine', place: free(3, 4, 0.5) })
    expect(Object.values(placed.records).map(({ kind }) => kind)).toEqual(['layout', 'job', 'setUp', 'run', 'machine'])
    expect(recordOf(placed, 'setUp:t1')).toMatchObject({ datum: { xM: 3, yM: 4 }, headingRad: 0.5 })
    expect(documentIssues(placed)).toEqual([])
  })
  it.each([
    ['an unknown kind', { kind: 'drone', place: free(0, 0) }, 'place: kind drone is nothing that can be placed'],
    ['an item without a place', { kind: 'stand' }, 'place: place is missing'],
    ['an area with too few corners', { kind: 'building', points: [{ xM: 0, yM: 1 }, { xM: 4, yM: 1 }] }, 'place: points has fewer than 3 entries'],
    ['a path that is not there', { kind: 'stand', place: onRun(1, { runId: 'run:9' }) }, 'place: place.runId names run:9'],
    ['a carrier that is not there', { kind: 'crew', place: onItem('machine:9') }, 'place: place.itemId names machine:9'],
    ['a patch of an unknown field', { kind: 'stand', place: onRun(1), patch: { colour: 'red' } }, 'place: colour is not a field known here'],
    ['a patch of the id', { kind: 'stand', place: onRun(1), patch: { id: 'stand:mine' } }, 'place: patch.id is not for a patch to set'],
    ['a distance that is no number', { kind: 'stand', place: { ...onRun(1), runningM: 'far' } }, 'place: place.runningM must be a number, is "far"'],
  ])('%s is refused by field', (_what, args, message) => expect(() => after(yard(), 'place', args)).toThrow(message))
})

describe('a row', () => {
  it('places equal items at a spacing along the run', () => {
    const document = yard()
    const placed = after(document, 'placeRow', { kind: 'roller', fromRunningM: 20, spacingM: 3.3528, count: 3, offsetM: 0.1 })
    expect(added(document, placed).map((id) => recordOf(placed, id)['place'])).toEqual([onRun(20, { offsetM: 0.1 }), onRun(23.3528, { offsetM: 0.1 }), onRun(26.7056, { offsetM: 0.1 })])
    expect([...labelsOf(placed).values()]).toEqual(['G1', 'G2', 'G3'])
  })
  it('of something drawn point by point, or before there is a path, is refused', () => {
    expect(() => after(yard(), 'placeRow', { kind: 'fence', fromRunningM: 0, spacingM: 1, count: 2 })).toThrow('fence is drawn point by point')
    expect(() => after(documentOf(layout(), job()), 'placeRow', { kind: 'roller', fromRunningM: 0, spacingM: 1, count: 2 })).toThrow('the layout has no set-up yet')
  })
})
