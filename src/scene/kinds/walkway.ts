import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { featureBase, figureSchema, phaseSchema, pointsSchema, typical } from '../parts.ts'
import { walkwayPlan } from '../symbols/walkway.ts'

/** A way the public walks. */
export const walkwaySchema = z.strictObject({
  ...featureBase,
  kind: z.literal('walkway'),
  points: pointsSchema,
  access: z.enum(['open', 'closed', 'diverted']).nullable(),
  /** Phases in which an open way is shut by a marshal or a barrier. */
  closedPhases: z.array(phaseSchema).max(8),
  /** The crew's marked crossing over the string, used while the string lies still. */
  isCrossing: z.boolean().nullable(),
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
    id, kind: 'walkway', name: '', locked: false, note: null, points: (at.points ?? []).map(({ xM, yM }) => ({ xM, yM })), access: null, closedPhases: [], isCrossing: null, figures: { widthM: typical(1.5) },
  }),
  fields: [
    { path: 'name', label: { en: 'name', es: 'nombre' }, input: { as: 'text' }, first: true },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.3, max: 30, nullable: true } },
    { path: 'access', label: { en: 'public', es: 'público' }, input: { as: 'choice', choices: [{ value: null, label: { en: 'not said', es: 'sin decir' } }, { value: 'open', label: { en: 'open', es: 'abierto' } }, { value: 'closed', label: { en: 'closed by marshal or barrier', es: 'cerrado con controlador o barrera' } }, { value: 'diverted', label: { en: 'diverted', es: 'desviado' } }] } },
    { path: 'closedPhases', label: { en: 'shut in', es: 'cerrado en' }, input: { as: 'phases' } },
    { path: 'isCrossing', label: { en: 'marked crossing over the string', es: 'cruce marcado sobre la sarta' }, input: { as: 'yesNo', nullable: true } },
  ],
  footprint: () => [],
  planSymbol: walkwayPlan,
})
