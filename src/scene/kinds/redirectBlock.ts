import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, unknownFigure } from '../parts.ts'
import { redirectBlockFootprint, redirectBlockPlan } from '../symbols/redirectBlock.ts'

/** A block that turns the pull rope: the rope runs from the nose to it and on to the puller. */
export const redirectBlockSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('redirectBlock'),
  figures: z.strictObject({
    /** Plate of the block. */
    ratedLoadN: figureSchema,
    /** What its anchor holds; the block takes up to twice the pull. */
    anchorHoldN: figureSchema,
  }),
})
export type RedirectBlockRecord = z.infer<typeof redirectBlockSchema>

export const redirectBlock = defineKind<RedirectBlockRecord>({
  kind: 'redirectBlock',
  idPrefix: 'redirectBlock',
  schema: redirectBlockSchema,
  name: { en: 'redirect block', es: 'polea de desvío' },
  gear: 'lift',
  placing: 'item',
  labelLetter: 'B',
  create: (id, at) => ({ id, kind: 'redirectBlock', place: at.place, locked: false, note: null, gearId: null, figures: { ratedLoadN: unknownFigure(), anchorHoldN: unknownFigure() } }),
  fields: [
    { path: 'figures.ratedLoadN.value', label: { en: 'rated load (plate)', es: 'carga nominal (placa)' }, input: { as: 'quantity', kind: 'force', min: 1, max: 10000000.0, nullable: true }, first: true },
    { path: 'figures.anchorHoldN.value', label: { en: 'anchor holds', es: 'el ancla aguanta' }, input: { as: 'quantity', kind: 'force', min: 1, max: 10000000.0, nullable: true }, first: true },
  ],
  footprint: redirectBlockFootprint,
  planSymbol: redirectBlockPlan,
})
