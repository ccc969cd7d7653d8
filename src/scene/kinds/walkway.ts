import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { featureBase, figureSchema, pointsSchema, typical } from '../parts.ts'
import { walkwayPlan } from '../symbols/walkway.ts'

/** A way the public walks. */
export const walkwaySchema = z.strictObject({
  ...featureBase,
  kind: z.literal('walkway'),
  points: pointsSchema,
  access: z.enum(['open', 'closed', 'diverted']).nullable(),
  figures: z.strictObject({
    widthM: figureSchema,
  }),
})
export type WalkwayRecord = z.infer<typeof walkwaySchema>

export const walkway = defineKind<WalkwayRecord>({
  kind: 'walkway',
  idPrefix: 'walkway',
  schema: walkwaySchema,
  name: { en: 'public walkway', es: 'paso peatonal' },
  gear: 'site',
  placing: 'polyline',
  labelLetter: '',
  create: (id, at) => ({
    id, kind: 'walkway', name: '', locked: false, note: null, points: (at.points ?? []).map(({ xM, yM }) => ({ xM, yM })), access: null, figures: { widthM: typical(1.5) },
  }),
  fields: [
    { path: 'name', label: { en: 'name', es: 'nombre' }, input: { as: 'text' }, first: true },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.3, max: 30, nullable: true } },
    { path: 'access', label: { en: 'public', es: 'público' }, input: { as: 'choice', choices: [{ value: null, label: { en: 'not said', es: 'sin decir' } }, { value: 'open', label: { en: 'open', es: 'abierto' } }, { value: 'closed', label: { en: 'closed by marshal or barrier', es: 'cerrado con controlador o barrera' } }, { value: 'diverted', label: { en: 'diverted', es: 'desviado' } }] } },
  ],
  footprint: () => [],
  planSymbol: walkwayPlan,
})
