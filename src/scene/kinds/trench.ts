import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { featureBase, figureSchema, pointsSchema, typical, unknownFigure } from '../parts.ts'
import { trenchPlan } from '../symbols/trench.ts'

/** An open trench along a line, with its width and depth. */
export const trenchSchema = z.strictObject({
  ...featureBase,
  kind: z.literal('trench'),
  points: pointsSchema,
  /** The pipe goes down into a host pipe in it; its line is drawn along that way. */
  isPit: z.boolean(),
  figures: z.strictObject({
    widthM: figureSchema,
    depthM: figureSchema,
  }),
})
export type TrenchRecord = z.infer<typeof trenchSchema>

export const trench = defineKind<TrenchRecord>({
  kind: 'trench',
  idPrefix: 'trench',
  schema: trenchSchema,
  name: { en: 'trench', es: 'zanja' },
  gear: 'site',
  placing: 'polyline',
  labelLetter: '',
  create: (id, at) => ({
    id, kind: 'trench', name: '', locked: false, note: null, isPit: false, points: (at.points ?? []).map(({ xM, yM }) => ({ xM, yM })), figures: { widthM: typical(1.2), depthM: unknownFigure() },
  }),
  fields: [
    { path: 'name', label: { en: 'name', es: 'nombre' }, input: { as: 'text' }, first: true },
    { path: 'figures.depthM.value', label: { en: 'depth', es: 'profundidad' }, input: { as: 'quantity', kind: 'length', min: 0, max: 20, nullable: true }, first: true },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.1, max: 30, nullable: true } },
    { path: 'isPit', label: { en: 'pit: the pipe goes down into it', es: 'foso: el tubo baja en ella' }, input: { as: 'yesNo' } },
  ],
  footprint: () => [],
  planSymbol: trenchPlan,
})
