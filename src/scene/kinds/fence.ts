import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { featureBase, pointsSchema } from '../parts.ts'
import { fencePlan } from '../symbols/fence.ts'

/** A fence or wall. */
export const fenceSchema = z.strictObject({
  ...featureBase,
  kind: z.literal('fence'),
  points: pointsSchema,
})
export type FenceRecord = z.infer<typeof fenceSchema>

export const fence = defineKind<FenceRecord>({
  kind: 'fence',
  idPrefix: 'fence',
  schema: fenceSchema,
  name: { en: 'fence', es: 'cerca' },
  gear: 'site',
  placing: 'polyline',
  labelLetter: '',
  create: (id, at) => ({
    id, kind: 'fence', name: '', locked: false, note: null, points: (at.points ?? []).map(({ xM, yM }) => ({ xM, yM })),
  }),
  fields: [
    { path: 'name', label: { en: 'name', es: 'nombre' }, input: { as: 'text' }, first: true },

  ],
  footprint: () => [],
  planSymbol: fencePlan,
})
