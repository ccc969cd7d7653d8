import { expect, it } from 'vitest'
import { kindOf } from '../../src/scene/kinds/index.ts'
import { JOB_ID, LAYOUT_ID, type YardDocument, type YardRecord } from '../../src/scene/document.ts'
import { patchOf, shelfOf } from '../../src/ui/gear/left.ts'
import { sampleRecord } from '../../src/ui/gear/ShelfSymbol.tsx'
import type { GearItem } from '../../src/scene/gear.ts'

const stand = (id: string, over: Record<string, unknown> = {}): YardRecord =>
  ({ ...kindOf('stand')!.create(id, { place: { at: 'free', xM: 0, yM: 0, headingRad: 0 }, setUpId: 'setUp:a', runId: 'run:a' }), ...over }) as YardRecord
const documentOf = (...records: YardRecord[]): YardDocument => ({ records: Object.fromEntries(records.map((record) => [record.id, record])) })
const gear = (over: Partial<GearItem> = {}): GearItem => ({ id: 'gear:a', kind: 'stand', name: 'yellow stands', count: 4, choices: { roller: 'V' }, figures: { ratedLoadN: { value: 8900, basis: 'plate' } }, ...over })

it('without a gear list the shelf shows the varieties of a kind, uncounted', () => {
  expect(shelfOf('stand', [], documentOf()).map(({ key, leftCount }) => `${key} ${String(leftCount)}`)).toEqual(['stand.flat null', 'stand.V null', 'stand.cradle null'])
  expect(shelfOf('roller', [], documentOf()).map(({ key }) => key)).toEqual(['roller'])
})

it('the crew’s own gear replaces the variety it covers and says how many are left', () => {
  const shelf = shelfOf('stand', [gear()], documentOf(stand('stand:1', { roller: 'V' }), stand('stand:2', { roller: 'V' }), stand('stand:3', { roller: 'flat' })))
  expect(shelf.map(({ key, leftCount }) => `${key} ${String(leftCount)}`)).toEqual(['gear:a 2', 'stand.flat null', 'stand.cradle null'])
})

it('more placed than owned counts below nothing', () => {
  const five = [1, 2, 3, 4, 5].map((n) => stand(`stand:${n}`, { gearId: 'gear:a' }))
  expect(shelfOf('stand', [gear()], documentOf(...five))[0]!.leftCount).toBe(-1)
})

it('an item counts against the gear it names, whatever its variety', () => {
  const other = gear({ id: 'gear:b', name: 'old stands', count: 3 })
  const shelf = shelfOf('stand', [gear(), other], documentOf(stand('stand:1', { roller: 'V', gearId: 'gear:b' })))
  expect(shelf.slice(0, 2).map(({ leftCount }) => leftCount)).toEqual([4, 2])
})

it('what is placed takes over variety, gear and figures with their basis', () => {
  const [own, flat] = shelfOf('stand', [gear()], documentOf())
  expect(patchOf(own!)).toEqual({ roller: 'V', gearId: 'gear:a', figures: { ratedLoadN: { value: 8900, basis: 'plate' } } })
  expect(patchOf(flat!)).toEqual({ roller: 'flat' })
})

it('every kind of the shelf can be drawn as a sample', () => {
  for (const kind of ['machine', 'rack', 'stand', 'roller', 'puller', 'building', 'trench', 'crew', 'zone']) {
    for (const entry of shelfOf(kind, [], documentOf())) expect(sampleRecord(entry)?.kind).toBe(kind)
  }
})

it('the fixed records of a layout are no gear', () => {
  expect(shelfOf(LAYOUT_ID, [], documentOf())).toEqual([])
  expect(shelfOf(JOB_ID, [], documentOf())).toEqual([])
})
