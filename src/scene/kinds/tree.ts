import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, typical } from '../parts.ts'
import { treeFootprint, treePlan } from '../symbols/tree.ts'

/** A tree, pole or other round obstacle. */
export const treeSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('tree'),
  figures: z.strictObject({ radiusM: figureSchema }),
})
export type TreeRecord = z.infer<typeof treeSchema>

export const tree = defineKind<TreeRecord>({
  kind: 'tree',
  idPrefix: 'tree',
  schema: treeSchema,
  name: { en: 'tree', es: 'árbol' },
  gear: 'site',
  placing: 'item',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'tree', place: at.place, locked: false, note: null, gearId: null, figures: { radiusM: typical(2) } }),
  fields: [{ path: 'figures.radiusM.value', label: { en: 'radius', es: 'radio' }, input: { as: 'quantity', kind: 'length', min: 0.05, max: 30, nullable: true }, first: true }],
  footprint: treeFootprint,
  planSymbol: treePlan,
})
