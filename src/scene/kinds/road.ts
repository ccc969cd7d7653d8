import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { featureBase, figureSchema, pointsSchema, typical } from '../parts.ts'
import { roadPlan } from '../symbols/road.ts'

/** A road or driveway with its width. */
export const roadSchema = z.strictObject({
  ...featureBase,
  kind: z.literal('road'),
  points: pointsSchema,
  /** Open to traffic, closed at the stages named, or unknown. */
  traffic: z.enum(['open', 'closed']).nullable(),
  figures: z.strictObject({
    widthM: figureSchema,
  }),
})
export type RoadRecord = z.infer<typeof roadSchema>

export const road = defineKind<RoadRecord>({
  kind: 'road',
  idPrefix: 'road',
  schema: roadSchema,
  name: { en: 'road', es: 'camino' },
  gear: 'site',
  placing: 'polyline',
  labelLetter: '',
  create: (id, at) => ({
    id, kind: 'road', name: '', locked: false, note: null, points: (at.points ?? []).map(({ xM, yM }) => ({ xM, yM })), traffic: null, figures: { widthM: typical(3.66) },
  }),
  fields: [
    { path: 'name', label: { en: 'name', es: 'nombre' }, input: { as: 'text' }, first: true },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.5, max: 60, nullable: true } },
    { path: 'traffic', label: { en: 'traffic', es: 'tráfico' }, input: { as: 'choice', choices: [{ value: null, label: { en: 'not said', es: 'sin decir' } }, { value: 'open', label: { en: 'open', es: 'abierto' } }, { value: 'closed', label: { en: 'closed', es: 'cerrado' } }] } },
  ],
  footprint: () => [],
  planSymbol: roadPlan,
})
