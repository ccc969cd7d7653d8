import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { featureBase, figureSchema, pointsSchema, typical } from '../parts.ts'
import { lanePlan } from '../symbols/lane.ts'

/** A lane kept for vehicles: loader, truck or machine. */
export const laneSchema = z.strictObject({
  ...featureBase,
  kind: z.literal('lane'),
  points: pointsSchema,
  use: z.enum(['loader', 'truck', 'machine']),
  figures: z.strictObject({
    widthM: figureSchema,
  }),
})
export type LaneRecord = z.infer<typeof laneSchema>

export const lane = defineKind<LaneRecord>({
  kind: 'lane',
  idPrefix: 'lane',
  schema: laneSchema,
  name: { en: 'vehicle lane', es: 'carril de vehículos' },
  gear: 'lift',
  placing: 'polyline',
  labelLetter: '',
  create: (id, at) => ({
    id, kind: 'lane', name: '', locked: false, note: null, points: (at.points ?? []).map(({ xM, yM }) => ({ xM, yM })), use: 'loader', figures: { widthM: typical(3.6) },
  }),
  fields: [
    { path: 'name', label: { en: 'name', es: 'nombre' }, input: { as: 'text' }, first: true },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.5, max: 40, nullable: true } },
    { path: 'use', label: { en: 'used by', es: 'lo usa' }, input: { as: 'choice', choices: [{ value: 'loader', label: { en: 'loader', es: 'cargador' } }, { value: 'truck', label: { en: 'truck', es: 'camión' } }, { value: 'machine', label: { en: 'machine', es: 'máquina' } }] } },
  ],
  footprint: () => [],
  planSymbol: lanePlan,
})
