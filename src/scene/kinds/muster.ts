import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, typical } from '../parts.ts'
import { musterFootprint, musterPlan } from '../symbols/muster.ts'

/** Where the crew meets when something went wrong. */
export const musterSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('muster'),
  figures: z.strictObject({
    radiusM: figureSchema,
  }),
})
export type MusterRecord = z.infer<typeof musterSchema>

export const muster = defineKind<MusterRecord>({
  kind: 'muster',
  idPrefix: 'muster',
  schema: musterSchema,
  name: { en: 'muster point', es: 'punto de reunión' },
  gear: 'people',
  placing: 'item',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'muster', place: at.place, locked: false, note: null, gearId: null, figures: { radiusM: typical(2) } }),
  fields: [
    { path: 'figures.radiusM.value', label: { en: 'radius', es: 'radio' }, input: { as: 'quantity', kind: 'length', min: 0.5, max: 30, nullable: true }, first: true },
  ],
  footprint: musterFootprint,
  planSymbol: musterPlan,
})
