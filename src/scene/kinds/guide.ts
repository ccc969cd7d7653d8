import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, unknownFigure } from '../parts.ts'
import { guideFootprint, guidePlan } from '../symbols/guide.ts'

/** Stakes, or upright rollers, that hold the pipe sideways where it is bent. One item holds to both sides. */
export const guideSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('guide'),
  figures: z.strictObject({
    /** What it holds sideways, tested or rated. */
    ratedHoldN: figureSchema,
  }),
})
export type GuideRecord = z.infer<typeof guideSchema>

export const guide = defineKind<GuideRecord>({
  kind: 'guide',
  idPrefix: 'guide',
  schema: guideSchema,
  name: { en: 'stakes or guides at a bend', es: 'estacas o guías de curva' },
  gear: 'line',
  placing: 'item',
  labelLetter: 'K',
  ridesOnRun: true,
  create: (id, at) => ({ id, kind: 'guide', place: at.place, locked: false, note: null, gearId: null, figures: { ratedHoldN: unknownFigure() } }),
  fields: [
    { path: 'figures.ratedHoldN.value', label: { en: 'holds sideways (tested or rated)', es: 'aguante lateral (probado o nominal)' }, input: { as: 'quantity', kind: 'force', min: 1, max: 1e7, nullable: true }, first: true },
  ],
  footprint: guideFootprint,
  planSymbol: guidePlan,
})
