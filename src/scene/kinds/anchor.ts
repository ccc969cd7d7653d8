import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, typical, unknownFigure } from '../parts.ts'
import { anchorFootprint, anchorPlan } from '../symbols/anchor.ts'

/** Tether and its anchor: what holds the string back on a grade. */
export const anchorSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('anchor'),
  figures: z.strictObject({
    ratedHoldN: figureSchema,
    tetherLengthM: figureSchema,
  }),
})
export type AnchorRecord = z.infer<typeof anchorSchema>

export const anchor = defineKind<AnchorRecord>({
  kind: 'anchor',
  idPrefix: 'anchor',
  schema: anchorSchema,
  name: { en: 'tether and anchor', es: 'retención y ancla' },
  gear: 'lift',
  placing: 'item',
  labelLetter: 'H',
  create: (id, at) => ({
    id, kind: 'anchor', place: at.place, locked: false, note: null, gearId: null,
    figures: { ratedHoldN: unknownFigure(), tetherLengthM: typical(6.0) },
  }),
  fields: [
    { path: 'figures.tetherLengthM.value', label: { en: 'tether length', es: 'largo de retención' }, input: { as: 'quantity', kind: 'length', min: 0, max: 300, nullable: true }, first: true },
    { path: 'figures.ratedHoldN.value', label: { en: 'holds (tested or rated)', es: 'aguante (probado o nominal)' }, input: { as: 'quantity', kind: 'force', min: 1, max: 1e7, nullable: true } },
  ],
  footprint: anchorFootprint,
  planSymbol: anchorPlan,
})
