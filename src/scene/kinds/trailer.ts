import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, typical, unknownFigure } from '../parts.ts'
import { trailerFootprint, trailerPlan } from '../symbols/trailer.ts'

/** A trailer standing with or without its load, apart from the offload place. */
export const trailerSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('trailer'),
  /** Pipe lies on it. */
  isLoaded: z.boolean().nullable(),
  figures: z.strictObject({
    lengthM: figureSchema,
    widthM: figureSchema,
    /** Top of the load above the ground. */
    loadHeightM: figureSchema,
  }),
})
export type TrailerRecord = z.infer<typeof trailerSchema>

export const trailer = defineKind<TrailerRecord>({
  kind: 'trailer',
  idPrefix: 'trailer',
  schema: trailerSchema,
  name: { en: 'trailer', es: 'remolque' },
  gear: 'lift',
  placing: 'item',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'trailer', place: at.place, locked: false, note: null, gearId: null, isLoaded: null, figures: { lengthM: typical(14.6), widthM: typical(2.6), loadHeightM: unknownFigure() } }),
  fields: [
    { path: 'figures.lengthM.value', label: { en: 'length', es: 'largo' }, input: { as: 'quantity', kind: 'length', min: 0.2, max: 60, nullable: true }, first: true },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.1, max: 6, nullable: true } },
    { path: 'figures.loadHeightM.value', label: { en: 'height of the load', es: 'altura de la carga' }, input: { as: 'quantity', kind: 'length', min: 0.3, max: 6, nullable: true } },
    { path: 'isLoaded', label: { en: 'pipe on it', es: 'con tubo encima' }, input: { as: 'yesNo', nullable: true } },
  ],
  footprint: trailerFootprint,
  planSymbol: trailerPlan,
})
