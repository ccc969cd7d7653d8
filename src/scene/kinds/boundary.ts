import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { featureBase, ringSchema } from '../parts.ts'
import { boundaryPlan } from '../symbols/boundary.ts'

/** The yard or right-of-way: nothing of ours leaves it without a finding. */
export const boundarySchema = z.strictObject({
  ...featureBase,
  kind: z.literal('boundary'),
  points: ringSchema,
})
export type BoundaryRecord = z.infer<typeof boundarySchema>

export const boundary = defineKind<BoundaryRecord>({
  kind: 'boundary',
  idPrefix: 'boundary',
  schema: boundarySchema,
  name: { en: 'yard boundary', es: 'límite del patio' },
  gear: 'site',
  placing: 'polygon',
  labelLetter: '',
  create: (id, at) => ({
    id, kind: 'boundary', name: '', locked: false, note: null, points: (at.points ?? []).map(({ xM, yM }) => ({ xM, yM })),
  }),
  fields: [
    { path: 'name', label: { en: 'name', es: 'nombre' }, input: { as: 'text' }, first: true },

  ],
  footprint: () => [],
  planSymbol: boundaryPlan,
})
