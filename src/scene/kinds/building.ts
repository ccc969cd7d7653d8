import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { featureBase, ringSchema } from '../parts.ts'
import { buildingPlan } from '../symbols/building.ts'

/** A building or other solid obstacle. */
export const buildingSchema = z.strictObject({
  ...featureBase,
  kind: z.literal('building'),
  points: ringSchema,
})
export type BuildingRecord = z.infer<typeof buildingSchema>

export const building = defineKind<BuildingRecord>({
  kind: 'building',
  idPrefix: 'building',
  schema: buildingSchema,
  name: { en: 'building', es: 'edificio' },
  gear: 'site',
  placing: 'polygon',
  labelLetter: '',
  create: (id, at) => ({
    id, kind: 'building', name: '', locked: false, note: null, points: (at.points ?? []).map(({ xM, yM }) => ({ xM, yM })),
  }),
  fields: [
    { path: 'name', label: { en: 'name', es: 'nombre' }, input: { as: 'text' }, first: true },

  ],
  footprint: () => [],
  planSymbol: buildingPlan,
})
