import { describe, expect, it } from 'vitest'
import { free, item, onRun, yard } from '../../helpers/documents.ts'
import { contextOf } from '../toolHarness.ts'
import { handleUnder, itemsInBox, itemsUnder, nextBeneath, type HitQuery } from '../../../src/canvas/plan/hit.ts'
import type { YardRecord } from '../../../src/scene/document.ts'
import type { Pickable } from '../../../src/canvas/tools/types.ts'

const pickables = (...records: YardRecord[]): readonly Pickable[] => contextOf(yard(...records)).pickables
const under = (list: readonly Pickable[], xM: number, yM: number, over: Partial<HitQuery> = {}): string[] => itemsUnder(list, { xM, yM, pxPerM: 20, pointer: 'mouse', ...over })
const box = (kind: 'building' | 'boundary' | 'zone', id: string, x0: number, y0: number, x1: number, y1: number): YardRecord => item(kind, id, [{ xM: x0, yM: y0 }, { xM: x1, yM: y0 }, { xM: x1, yM: y1 }, { xM: x0, yM: y1 }])

describe('what lies under a point', () => {
  it('the smallest first, areas of the site after all gear', () => {
    const list = pickables(box('zone', 'zone:z', -20, -20, 20, 20), item('machine', 'machine:m', onRun(0)), item('stand', 'stand:s', onRun(0.4)))
    expect(under(list, 0.4, 0)).toEqual(['stand:s', 'machine:m', 'zone:z'])
  })

  it('a boundary is hit at its edge only', () => {
    const list = pickables(box('boundary', 'boundary:b', -20, -20, 20, 20))
    expect(under(list, 5, 5)).toEqual([])
    // 4 px at 20 px/m = 0.2 m
    expect(under(list, 20.15, 5)).toEqual(['boundary:b'])
    expect(under(list, 20.3, 5)).toEqual([])
  })

  it('a line of the site is hit along its stroke', () => {
    const list = pickables(item('fence', 'fence:f', [{ xM: 0, yM: 5 }, { xM: 10, yM: 5 }]))
    expect(under(list, 5, 5.15)).toEqual(['fence:f'])
    expect(under(list, 5, 6)).toEqual([])
    // Beyond its end there is no line.
    expect(under(list, 11, 5)).toEqual([])
  })

  it('a finger has 48 px whatever the size of the thing, nearest first', () => {
    const list = pickables(item('crew', 'crew:a', free(0, 5)), item('crew', 'crew:b', free(1.5, 5)))
    // crew mark 0.5 m = 10 px: reach 19 px = 0.95 m from its outline
    expect(under(list, 0.9, 5, { pointer: 'touch' })).toEqual(['crew:b', 'crew:a'])
    expect(under(list, -1.1, 5, { pointer: 'touch' })).toEqual(['crew:a'])
    expect(under(list, -1.3, 5, { pointer: 'touch' })).toEqual([])
  })

  it('on touch a support under 24 px is chosen by its flag where the tap could mean something else', () => {
    const pair = pickables(item('stand', 'stand:a', onRun(5)), item('stand', 'stand:b', onRun(5.8)), box('zone', 'zone:z', 0, -5, 60, 5), item('crew', 'crew:c', free(20.8, 0)), item('stand', 'stand:c', onRun(20)), item('stand', 'stand:alone', onRun(40)))
    expect(under(pair, 5.4, 0, { pointer: 'touch' })).toEqual(['zone:z'])
    expect(under(pair, 20, 0, { pointer: 'touch' })).toEqual(['crew:c', 'zone:z'])
    expect(under(pair, 40, 0, { pointer: 'touch' })).toEqual(['stand:alone', 'zone:z'])
  })

  it('from 24 px on a support is chosen by itself, other things at any size', () => {
    // a stand of 0.6 × 0.9 m: 18 px long at 20 px/m, 45 px at 50 px/m
    const list = pickables(item('stand', 'stand:s', onRun(5)), item('crew', 'crew:a', free(20, 5)))
    expect(under(list, 5, 0, { pointer: 'touch', pxPerM: 50 })).toEqual(['stand:s'])
    expect(under(list, 5, 0)).toEqual(['stand:s'])
    expect(under(list, 20, 5, { pointer: 'touch' })).toEqual(['crew:a'])
  })

  it('inside a thing goes before near to a smaller one', () => {
    const list = pickables(item('machine', 'machine:m', onRun(0)), item('crew', 'crew:a', free(1.2, -1.4)))
    expect(under(list, 1.2, -0.8, { pointer: 'touch' })[0]).toBe('machine:m')
  })

  it('agrees with a plain search on a seeded crowd', () => {
    const list = pickables(...Array.from({ length: 60 }, (_, i) => item('loader', `loader:l${i}`, free(((i * 7919) % 97) / 2, ((i * 104729) % 53) / 2, i))))
    for (let i = 0; i < 40; i++) {
      const [xM, yM] = [((i * 31) % 47) + 0.3, ((i * 17) % 25) + 0.7]
      const inside = list.filter(({ outlineM }) => windings(outlineM, xM, yM) !== 0).map(({ id }) => id)
      expect(under(list, xM, yM).filter((id) => inside.includes(id)).sort()).toEqual(inside.sort())
    }
  })

  it('the next tap goes on to what lies beneath and round to the top', () => {
    expect(nextBeneath(['a', 'b', 'c'], [])).toBe('a')
    expect(nextBeneath(['a', 'b', 'c'], ['a'])).toBe('b')
    expect(nextBeneath(['a', 'b', 'c'], ['c'])).toBe('a')
    expect(nextBeneath([], ['a'])).toBeNull()
  })

  it('a box takes what lies wholly in it', () => {
    const list = pickables(item('stand', 'stand:a', onRun(5)), item('stand', 'stand:b', onRun(9)))
    expect(itemsInBox(list, [4, -1, 9, -1, 9, 1, 4, 1])).toEqual(['stand:a'])
  })

  it('the nearest handle is taken, within 10 px of a mouse and 24 px of a finger', () => {
    const handles = [{ kind: 'vertex', id: 'a', index: 0, xPx: 0, yPx: 0 }, { kind: 'vertex', id: 'a', index: 1, xPx: 30, yPx: 0 }] as const
    expect(handleUnder(handles, 18, 0, 'touch')?.index).toBe(1)
    expect(handleUnder(handles, 12, 0, 'mouse')).toBeNull()
    expect(handleUnder(handles, 8, 0, 'mouse')?.index).toBe(0)
  })
})

/** Winding number by turning angle: another way than even–odd crossing. */
const windings = (ring: readonly number[], x: number, y: number): number => {
  let turn = 0
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length
    const [ax, ay, bx, by] = [ring[i]! - x, ring[i + 1]! - y, ring[j]! - x, ring[j + 1]! - y]
    turn += Math.atan2(ax * by - ay * bx, ax * bx + ay * by)
  }
  return Math.round(turn / (2 * Math.PI))
}
