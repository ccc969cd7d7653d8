import { describe, expect, it } from 'vitest'
import { commandOf, CommandError } from '../../../src/scene/commands/index.ts'
import { layoutOf, recordsOf, type YardDocument } from '../../../src/scene/document.ts'
import { applyEdit } from '../../../src/scene/edit.ts'
import { newDocument } from '../../../src/scene/newYard.ts'
import { createDocumentStore } from '../../../src/state/documentStore.ts'

let count = 0
const env = { newId: (prefix: string) => `${prefix}:${(count += 1)}`, now: () => '2026-01-01T00:00:00Z' }
const yard = newDocument({ pipe: null, neededLengthM: null, stickLengthM: null, stripLengthM: null, stripWidthM: null, fallRatio: null }, env, 'metric')
const run = (args: unknown): YardDocument => applyEdit(yard, commandOf('bringIn')!.run(yard, args, env))
const level = (xM: number, levelM: number) => ({ kind: 'level', place: { at: 'free', xM, yM: 0, headingRad: 0 }, patch: { source: 'level book, line 2', figures: { levelM: { value: levelM, basis: 'measured' } } } })

describe('bringIn', () => {
  it('brings levels in with their figure measured', () => {
    const [only] = recordsOf(run({ records: [level(7.62, -0.1524)], mapOrigin: null }), 'level')
    expect(only).toMatchObject({ place: { at: 'free', xM: 7.62 }, source: 'level book, line 2', figures: { levelM: { value: -0.1524, basis: 'measured' } } })
  })

  it('keeps the origin of the map in the layout, and leaves the layout alone without one', () => {
    const feature = { kind: 'boundary', points: [{ xM: 0, yM: 0 }, { xM: 9, yM: 0 }, { xM: 9, yM: 9 }] }
    expect(layoutOf(run({ records: [feature], mapOrigin: { eastM: 500_000, northM: 4_000_000 } })).mapOrigin).toEqual({ eastM: 500_000, northM: 4_000_000 })
    expect(layoutOf(run({ records: [feature], mapOrigin: null }))).toBe(layoutOf(yard))
  })

  it('names the record that does not fit', () => {
    const thrown = (args: unknown): string => {
      try {
        run(args)
      } catch (error) {
        return error instanceof CommandError ? error.field : 'another error'
      }
      return 'nothing'
    }
    expect(thrown({ records: [level(0, 0), { kind: 'level' }], mapOrigin: null })).toBe('records[1].place')
    expect(thrown({ records: [{ kind: 'fence' }], mapOrigin: null })).toBe('records[0].points')
    expect(thrown({ records: [{ kind: 'machine', place: { at: 'free', xM: 0, yM: 0, headingRad: 0 } }], mapOrigin: null })).toBe('records[0].kind')
    expect(thrown({ records: [], mapOrigin: null })).toBe('records')
  })

  it('brings 10,000 levels in as one step, and one undo takes them away', () => {
    const store = createDocumentStore(yard)
    const edit = commandOf('bringIn')!.run(yard, { records: Array.from({ length: 10_000 }, (_, i) => level(i / 10, 0)), mapOrigin: null }, env)
    store.getState().commit({ text: { en: 'bring in', es: 'traer' } }, edit)
    expect(recordsOf(store.getState().document, 'level')).toHaveLength(10_000)
    store.getState().undo()
    expect(recordsOf(store.getState().document, 'level')).toHaveLength(0)
  })
})
