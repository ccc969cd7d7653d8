import { expect, it } from 'vitest'
import { kindOf, type PlacedRecord } from '../../src/scene/kinds/index.ts'
import { basisAt, sharedFields, valueAt } from '../../src/ui/fields/path.ts'

const make = (kind: string, id: string): PlacedRecord => kindOf(kind)!.create(id, { place: { at: 'free', xM: 0, yM: 0, headingRad: 0 }, setUpId: 'setUp:a', runId: 'run:a' })

it('reads a dotted path and the basis of the figure it ends in', () => {
  const stand = make('stand', 'stand:1')
  expect(valueAt(stand, 'figures.baseWidthM.value')).toBe(0.9)
  expect(valueAt(stand, 'figures.nothing.value')).toBeUndefined()
  expect(basisAt(stand, 'figures.baseWidthM.value')).toBe('typical')
  expect(basisAt(stand, 'roller')).toBeNull()
})

it('several items share the fields all of them have, mixed where they differ', () => {
  const roller = make('roller', 'roller:1')
  const shared = sharedFields([make('stand', 'stand:1'), { ...roller, landingAid: 'ramp' } as PlacedRecord])
  const paths = shared.map(({ field }) => field.path)
  expect(paths).toContain('landingAid')
  expect(paths).toContain('figures.ratedLoadN.value')
  expect(paths).not.toContain('roller')
  expect(shared.find(({ field }) => field.path === 'landingAid')?.isMixed).toBe(true)
  expect(shared.find(({ field }) => field.path === 'figures.rollerRadiusM.value')?.isMixed).toBe(false)
})

it('nothing chosen shares nothing', () => {
  expect(sharedFields([])).toEqual([])
})
