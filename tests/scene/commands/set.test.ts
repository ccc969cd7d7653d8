import { describe, expect, it } from 'vitest'
import { commandOf } from '../../../src/scene/commands/index.ts'
import { recordsOf } from '../../../src/scene/document.ts'
import { documentIssues } from '../../../src/scene/references.ts'
import { after, recordOf, whereIs } from '../../helpers/commands.ts'
import { documentOf, free, item, job, layout, onRun, run, setUp, yard } from '../../helpers/documents.ts'

const document = yard(item('stand', 'stand:1', onRun(6)), item('roller', 'roller:1', onRun(20)), item('level', 'level:1', free(3, 3)), item('fence', 'fence:1', [{ xM: 0, yM: 5 }, { xM: 9, yM: 5 }]))
const set = (args: Record<string, unknown>) => after(document, 'setField', args)

describe('a typed figure', () => {
  it('of gear has the plate as its basis, of the site a measurement', () => {
    expect(recordOf(set({ ids: ['stand:1'], path: 'figures.ratedLoadN.value', value: 9000 }), 'stand:1')['figures']).toMatchObject({ ratedLoadN: { value: 9000, basis: 'plate' } })
    expect(recordOf(set({ ids: ['level:1'], path: 'figures.levelM.value', value: -0.3 }), 'level:1')['figures']).toMatchObject({ levelM: { value: -0.3, basis: 'measured' } })
  })
  it('keeps a basis that was already better than typical, and is typical again when unknown', () => {
    const measured = set({ ids: ['stand:1'], path: 'figures.leadInM.value', value: 0.05, basis: 'measured' })
    const again = after(measured, 'setField', { ids: ['stand:1'], path: 'figures.leadInM.value', value: 0.06 })
    expect(recordOf(again, 'stand:1')['figures']).toMatchObject({ leadInM: { value: 0.06, basis: 'measured' } })
    expect(recordOf(after(again, 'setField', { ids: ['stand:1'], path: 'figures.leadInM.value', value: null }), 'stand:1')['figures']).toMatchObject({ leadInM: { value: null, basis: 'typical' } })
  })
  it('drops a band that no longer holds it and keeps one that does', () => {
    const banded = yard({ ...item('stand', 'stand:1', onRun(6)), figures: { ...(recordOf(document, 'stand:1')['figures'] as object), leadInM: { value: 0.05, basis: 'measured', band: { low: 0.04, likely: 0.05, high: 0.06 } } } } as never)
    const figureAfter = (value: number): unknown => (recordOf(after(banded, 'setField', { ids: ['stand:1'], path: 'figures.leadInM.value', value }), 'stand:1')['figures'] as { leadInM: unknown }).leadInM
    expect(figureAfter(0.055)).toEqual({ value: 0.055, basis: 'measured', band: { low: 0.04, likely: 0.05, high: 0.06 } })
    expect(figureAfter(0.09)).toEqual({ value: 0.09, basis: 'measured' })
  })
  it('of several at once reaches those that have it', () => {
    const now = set({ ids: ['stand:1', 'roller:1', 'fence:1'], path: 'figures.ratedLoadN.value', value: 4000 })
    expect([recordOf(now, 'stand:1'), recordOf(now, 'roller:1')].map((one) => (one['figures'] as { ratedLoadN: { value: number } }).ratedLoadN.value)).toEqual([4000, 4000])
    expect(recordOf(now, 'fence:1')).toBe(recordOf(document, 'fence:1'))
  })
})

describe('a field', () => {
  it.each([
    ['a choice that does not exist', { ids: ['stand:1'], path: 'roller', value: 'oval' }, 'setField: roller "oval" is not known here; must be one of: flat, V, cradle'],
    ['a field of none of them', { ids: ['fence:1'], path: 'figures.ratedLoadN.value', value: 1 }, 'is a field of none of them'],
    ['a field nobody has', { ids: ['stand:1'], path: 'colour', value: 'red' }, 'colour is not a field known here'],
    ['a text for a number', { ids: ['stand:1'], path: 'figures.ratedLoadN.value', value: '9 kN' }, 'figures.ratedLoadN.value must be a number, is "9 kN"'],
    ['the id', { ids: ['stand:1'], path: 'id', value: 'stand:2' }, 'id is not for a command to set'],
    ['the place', { ids: ['stand:1'], path: 'place.runId', value: 'run:9' }, 'place.runId is not for a command to set'],
    ['a poisoned path', { ids: ['stand:1'], path: '__proto__.polluted', value: 1 }, 'is a field of none of them'],
  ])('%s is refused by path', (_what, args, message) => expect(() => set(args)).toThrow(message))
  it('that is free text or a list can be set too, points with brackets or dots', () => {
    expect(recordOf(set({ ids: ['fence:1'], path: 'points[1].xM', value: 12 }), 'fence:1')['points']).toEqual([{ xM: 0, yM: 5 }, { xM: 12, yM: 5 }])
    expect(recordOf(set({ ids: ['stand:1'], path: 'note', value: 'soft ground' }), 'stand:1')['note']).toBe('soft ground')
  })
  it('names its step by the field and the item', () => {
    expect(commandOf('setField')?.label(document, { ids: ['stand:1'], path: 'roller', value: 'V' }).text).toEqual({ en: 'roller of E1', es: 'rodillo de E1' })
  })
})

describe('job, layout, set-up and path', () => {
  it('the job takes whole groups and figures, a typed figure counts as measured', () => {
    const pipe = { system: 'IPS', size: '10', dr: 17, material: 'PE4710' }
    expect(recordOf(after(document, 'setJob', { path: 'pipe', value: pipe }), 'job:this')['pipe']).toEqual(pipe)
    expect(recordOf(after(document, 'setJob', { path: 'jointLossM.value', value: 0.022 }), 'job:this')['jointLossM']).toEqual({ value: 0.022, basis: 'measured' })
    expect(() => after(document, 'setJob', { path: 'stickLengthM', value: 0 })).toThrow('stickLengthM must be more than 0, is 0')
  })
  it('the layout keeps its layoutId', () => {
    expect(recordOf(after(document, 'setLayout', { path: 'title', value: 'Maple lot' }), 'layout:this')['title']).toBe('Maple lot')
    expect(() => after(document, 'setLayout', { path: 'layoutId', value: 'other' })).toThrow('layoutId is not for a command to set')
  })
  it('heading and datum of a set-up take what is attached with them', () => {
    const turned = after(document, 'setSetUp', { setUpId: 'setUp:1', path: 'headingRad', value: Math.PI })
    expect(whereIs(turned, 'stand:1').xM).toBeCloseTo(-6, 9)
    expect(whereIs(after(document, 'setSetUp', { setUpId: 'setUp:1', path: 'datum', value: { xM: 1, yM: 2 } }), 'stand:1')).toMatchObject({ xM: 7, yM: 2 })
  })
  it('the first corner of a path is kept on the axis', () => {
    const now = after(document, 'setRun', { runId: 'run:1', path: 'vertices', value: [{ xM: 30, yM: 3, radiusM: 9 }, { xM: 40, yM: 20, radiusM: null }] })
    expect(recordOf(now, 'run:1')['vertices']).toEqual([{ xM: 30, yM: 0, radiusM: 9 }, { xM: 40, yM: 20, radiusM: null }])
  })
  it('a target that is not there, or a set-up that is none, is refused', () => {
    expect(() => after(document, 'setRun', { runId: 'run:1', path: 'targetId', value: 'trench:9' })).toThrow('targetId names trench:9, which is not here')
    expect(() => after(document, 'setSetUp', { setUpId: 'run:1', path: 'name', value: 'x' })).toThrow('setUpId names run:1, which is not a set-up here')
  })
  it('surfaces by leg', () => {
    const one = documentOf(layout(), job(), setUp(), run())
    expect(recordOf(after(one, 'setRun', { runId: 'run:1', path: 'surfaces', value: ['gravel'] }), 'run:1')['surfaces']).toEqual(['gravel'])
  })
})

describe('the number of sticks', () => {
  const countOf = (now: typeof document) => recordsOf(now, 'string').map(({ stickCount }) => stickCount)
  it('is fixed on the string of the set-up, which is made where there is none, and worked out again with null', () => {
    const seven = after(document, 'setStickCount', { stickCount: 7 })
    expect(recordsOf(seven, 'string')).toMatchObject([{ setUpId: 'setUp:1', runId: 'run:1', stickCount: 7 }])
    const eight = after(seven, 'setStickCount', { stickCount: 8, setUpId: 'setUp:1' })
    expect([countOf(eight), countOf(after(eight, 'setStickCount', { stickCount: null }))]).toEqual([[8], [null]])
    expect(documentIssues(eight)).toEqual([])
  })
  it('changes nothing where nothing was fixed', () => expect(after(document, 'setStickCount', { stickCount: null })).toBe(document))
  it.each([[{ stickCount: 0 }, 'stickCount'], [{ stickCount: 2.5 }, 'stickCount'], [{ stickCount: 5, setUpId: 'setUp:9' }, 'setUpId names setUp:9']])('%j is refused', (args, message) => {
    expect(() => after(document, 'setStickCount', args)).toThrow(message)
  })
})
