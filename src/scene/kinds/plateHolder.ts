import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, typical } from '../parts.ts'
import { plateHolderFootprint, plateHolderPlan } from '../symbols/plateHolder.ts'

/** Where the hot plate stands when it is not between the pipe ends. */
export const plateHolderSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('plateHolder'),
  /** Stands on dry grass or other tinder. */
  onGrass: z.boolean().nullable(),
  figures: z.strictObject({
    lengthM: figureSchema,
    widthM: figureSchema,
  }),
})
export type PlateHolderRecord = z.infer<typeof plateHolderSchema>

export const plateHolder = defineKind<PlateHolderRecord>({
  kind: 'plateHolder',
  idPrefix: 'plateHolder',
  schema: plateHolderSchema,
  name: { en: 'hot plate holder', es: 'soporte de la placa' },
  gear: 'line',
  placing: 'item',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'plateHolder', place: at.place, locked: false, note: null, gearId: null, onGrass: null, figures: { lengthM: typical(0.9), widthM: typical(0.5) } }),
  fields: [
    { path: 'figures.lengthM.value', label: { en: 'length', es: 'largo' }, input: { as: 'quantity', kind: 'length', min: 0.2, max: 3, nullable: true }, first: true },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.1, max: 3, nullable: true } },
    { path: 'onGrass', label: { en: 'on dry grass', es: 'sobre pasto seco' }, input: { as: 'yesNo', nullable: true } },
  ],
  footprint: plateHolderFootprint,
  planSymbol: plateHolderPlan,
})
