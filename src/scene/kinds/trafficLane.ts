import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { featureBase, figureSchema, pointsSchema, typical, unknownFigure } from '../parts.ts'
import { trafficLanePlan } from '../symbols/trafficLane.ts'

/** A lane with live traffic beside or through the site. */
export const trafficLaneSchema = z.strictObject({
  ...featureBase,
  kind: z.literal('trafficLane'),
  points: pointsSchema,
  /** Closed with a taper and cones while work goes on. */
  closed: z.boolean().nullable(),
  figures: z.strictObject({
    widthM: figureSchema,
    /** Speed limit, for taper and buffer. */
    speedMPerS: figureSchema,
  }),
})
export type TrafficLaneRecord = z.infer<typeof trafficLaneSchema>

export const trafficLane = defineKind<TrafficLaneRecord>({
  kind: 'trafficLane',
  idPrefix: 'trafficLane',
  schema: trafficLaneSchema,
  name: { en: 'traffic lane', es: 'carril con tráfico' },
  gear: 'site',
  placing: 'polyline',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'trafficLane', name: '', locked: false, note: null, points: (at.points ?? []).map(({ xM, yM }) => ({ xM, yM })), closed: null, figures: { widthM: typical(3.66), speedMPerS: unknownFigure() } }),
  fields: [
    { path: 'name', label: { en: 'name', es: 'nombre' }, input: { as: 'text' }, first: true },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.1, max: 30, nullable: true } },
    { path: 'figures.speedMPerS.value', label: { en: 'speed limit', es: 'límite de velocidad' }, input: { as: 'quantity', kind: 'speed', min: 1, max: 40, nullable: true } },
    { path: 'closed', label: { en: 'closed to traffic', es: 'cerrado al tráfico' }, input: { as: 'yesNo', nullable: true } },
  ],
  footprint: () => [],
  planSymbol: trafficLanePlan,
})
