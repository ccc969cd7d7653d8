import { describe, expect, it } from 'vitest'
import { layersOf, recordsOfPlan, suggestedKinds, kindChoices } from '../../src/ui/bringIn/layers.ts'
import { pickedText } from '../../src/ui/bringIn/pickedText.ts'
import type { ForeignPlan } from '../../src/read/plan/types.ts'

const shape = (layer: string, as: 'area' | 'line' | 'point', points: readonly (readonly [number, number])[], name = '') => ({ layer, as, points, name })
const plan: ForeignPlan = {
  saidUnit: null, skipped: [],
  shapes: [shape('BOUNDARY', 'area', [[0, 0], [9, 0], [9, 9]], 'lot'), shape('Límite del patio', 'area', [[0, 0], [9, 0], [9, 9]]), shape('0', 'line', [[0, 0], [1, 1]]), shape('Tree', 'point', [[4, 4]])],
}
const laid = plan.shapes.map((one) => ({ ...one, points: one.points.map(([xM, yM]) => ({ xM, yM })) }))

describe('layers of a foreign plan', () => {
  it('suggests a kind only for a layer that bears its name, in either language', () => {
    expect(suggestedKinds(layersOf(plan))).toEqual({ 'area BOUNDARY': 'boundary', 'area Límite del patio': 'boundary', 'line 0': null, 'point Tree': 'tree' })
  })

  it('makes records of the layers that have a kind, with their names; others are left out', () => {
    const records = recordsOfPlan(laid, { 'area BOUNDARY': 'boundary', 'area Límite del patio': 'fence', 'line 0': null, 'point Tree': 'tree' })
    expect(records.map(({ kind }) => kind)).toEqual(['boundary', 'fence', 'tree'])
    expect(records[0]).toMatchObject({ patch: { name: 'lot' } })
    // A fence of a closed shape comes back to its first corner.
    expect(records[1]!.points).toHaveLength(4)
    expect(records[2]!.place).toEqual({ at: 'free', xM: 4, yM: 4, headingRad: 0 })
  })

  it('offers no area kind for an open line', () => expect(kindChoices('line').map(({ kind }) => kind)).not.toContain('boundary'))
})

describe('a file of the device', () => {
  it('is read as UTF-8, else as the Western code page', async () => {
    expect(await pickedText(new File(['Estación'], 'a.csv'))).toMatchObject({ ok: true, text: 'Estación' })
    // 0xF3 is ó in windows-1252 and no UTF-8 here.
    expect(await pickedText(new File([new Uint8Array([0x45, 0xf3, 0x6e])], 'b.csv'))).toMatchObject({ ok: true, text: 'Eón' })
  })

  it('is refused by its size before it is read', async () => {
    expect(await pickedText(new File([new Uint8Array(3_000_000)], 'c.csv'), 2_000_000)).toEqual({ ok: false, name: 'c.csv', sizeMB: 3, mostMB: 2 })
  })
})
