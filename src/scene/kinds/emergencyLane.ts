import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { featureBase, figureSchema, pointsSchema, typical } from '../parts.ts'
import { emergencyLanePlan } from '../symbols/emergencyLane.ts'

/** A way kept clear for ambulance and fire engine. */
export const emergencyLaneSchema = z.strictObject({
  ...featureBase,
  kind: z.literal('emergencyLane'),
  points: pointsSchema,
  /** Where a string lies across it: a gate or a way to bridge or open it within two minutes. */
  gapPlan: z.boolean().nullable(),
  figures: z.strictObject({
    /** 20 ft, International Fire Code 503. */
    widthM: figureSchema,
    /** 13 ft 6 in, International Fire Code 503. */
    clearHeightM: figureSchema,
  }),
})
export type EmergencyLaneRecord = z.infer<typeof emergencyLaneSchema>

export const emergencyLane = defineKind<EmergencyLaneRecord>({
  kind: 'emergencyLane',
  idPrefix: 'emergencyLane',
  schema: emergencyLaneSchema,
  name: { en: 'emergency lane', es: 'carril de emergencia' },
  gear: 'site',
  placing: 'polyline',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'emergencyLane', name: '', locked: false, note: null, points: (at.points ?? []).map(({ xM, yM }) => ({ xM, yM })), gapPlan: null, figures: { widthM: typical(6.096), clearHeightM: typical(4.1148) } }),
  fields: [
    { path: 'name', label: { en: 'name', es: 'nombre' }, input: { as: 'text' }, first: true },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.1, max: 30, nullable: true } },
    { path: 'figures.clearHeightM.value', label: { en: 'kept clear to', es: 'libre hasta' }, input: { as: 'quantity', kind: 'length', min: 1, max: 10, nullable: true } },
    { path: 'gapPlan', label: { en: 'plan to open it in 2 min', es: 'plan para abrirlo en 2 min' }, input: { as: 'yesNo', nullable: true } },
  ],
  footprint: () => [],
  planSymbol: emergencyLanePlan,
})
