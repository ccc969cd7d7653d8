import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, shortText, unknownFigure } from '../parts.ts'
import { levelFootprint, levelPlan } from '../symbols/level.ts'

/** A ground level (spot height), measured from the ground at the set-up datum unless the level book says otherwise. */
export const levelSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('level'),
  source: shortText,
  figures: z.strictObject({
    levelM: figureSchema,
  }),
})
export type LevelRecord = z.infer<typeof levelSchema>

export const level = defineKind<LevelRecord>({
  kind: 'level',
  idPrefix: 'level',
  schema: levelSchema,
  name: { en: 'ground level', es: 'nivel del suelo' },
  gear: 'site',
  placing: 'item',
  labelLetter: '',
  create: (id, at) => ({
    id, kind: 'level', place: at.place, locked: false, note: null, gearId: null, source: '',
    figures: { levelM: unknownFigure() },
  }),
  fields: [
    { path: 'figures.levelM.value', label: { en: 'level of the ground there', es: 'nivel del suelo ahí' }, input: { as: 'quantity', kind: 'height', min: -100, max: 100, nullable: true }, first: true },
    { path: 'source', label: { en: 'measured with', es: 'medido con' }, input: { as: 'text' } },
  ],
  footprint: levelFootprint,
  planSymbol: levelPlan,
})
