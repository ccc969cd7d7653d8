import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, typical, unknownFigure } from '../parts.ts'
import { stackFootprint, stackPlan } from '../symbols/stack.ts'

/** Sticks stored on the ground in rows. Its place is the middle of the stack, its heading that of the sticks. */
export const stackSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('stack'),
  /** Chocked or staked on both sides. */
  chocked: z.boolean().nullable(),
  figures: z.strictObject({
    /** Length of the sticks. */
    lengthM: figureSchema,
    widthM: figureSchema,
    /** Rows on top of each other. */
    rowCount: figureSchema,
  }),
})
export type StackRecord = z.infer<typeof stackSchema>

export const stack = defineKind<StackRecord>({
  kind: 'stack',
  idPrefix: 'stack',
  schema: stackSchema,
  name: { en: 'pipe stack', es: 'pila de tubos' },
  gear: 'line',
  placing: 'item',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'stack', place: at.place, locked: false, note: null, gearId: null, chocked: null, figures: { lengthM: typical(12.192), widthM: typical(2.4), rowCount: unknownFigure() } }),
  fields: [
    { path: 'figures.lengthM.value', label: { en: 'length', es: 'largo' }, input: { as: 'quantity', kind: 'length', min: 0.2, max: 60, nullable: true }, first: true },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.1, max: 20, nullable: true } },
    { path: 'figures.rowCount.value', label: { en: 'rows', es: 'hileras' }, input: { as: 'quantity', kind: 'count', min: 1, max: 30, nullable: true }, first: true },
    { path: 'chocked', label: { en: 'chocked on both sides', es: 'acuñada de ambos lados' }, input: { as: 'yesNo', nullable: true } },
  ],
  footprint: stackFootprint,
  planSymbol: stackPlan,
})
