import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { featureBase, ringSchema } from '../parts.ts'
import { waterPlan } from '../symbols/water.ts'

/** Water: a pond, a ditch, a stream bank. */
export const waterSchema = z.strictObject({
  ...featureBase,
  kind: z.literal('water'),
  points: ringSchema,
})
export type WaterRecord = z.infer<typeof waterSchema>

export const water = defineKind<WaterRecord>({
  kind: 'water',
  idPrefix: 'water',
  schema: waterSchema,
  name: { en: 'water', es: 'agua' },
  gear: 'site',
  placing: 'polygon',
  labelLetter: '',
  create: (id, at) => ({
    id, kind: 'water', name: '', locked: false, note: null, points: (at.points ?? []).map(({ xM, yM }) => ({ xM, yM })),
  }),
  fields: [
    { path: 'name', label: { en: 'name', es: 'nombre' }, input: { as: 'text' }, first: true },

  ],
  footprint: () => [],
  planSymbol: waterPlan,
})
