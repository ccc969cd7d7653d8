import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, typical } from '../parts.ts'
import { shelterFootprint, shelterPlan } from '../symbols/shelter.ts'

/** Tent or wind screen over the machine. */
export const shelterSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('shelter'),
  figures: z.strictObject({
    lengthM: figureSchema,
    widthM: figureSchema,
    /** How far guy lines reach beyond the walls. */
    guyM: figureSchema,
  }),
})
export type ShelterRecord = z.infer<typeof shelterSchema>

export const shelter = defineKind<ShelterRecord>({
  kind: 'shelter',
  idPrefix: 'shelter',
  schema: shelterSchema,
  name: { en: 'shelter', es: 'carpa' },
  gear: 'line',
  placing: 'item',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'shelter', place: at.place, locked: false, note: null, gearId: null, figures: { lengthM: typical(4.5), widthM: typical(4.0), guyM: typical(1.4) } }),
  fields: [
    { path: 'figures.lengthM.value', label: { en: 'length', es: 'largo' }, input: { as: 'quantity', kind: 'length', min: 0.2, max: 30, nullable: true }, first: true },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.1, max: 30, nullable: true } },
    { path: 'figures.guyM.value', label: { en: 'guy lines reach', es: 'alcance de los vientos' }, input: { as: 'quantity', kind: 'length', min: 0, max: 10, nullable: true } },
  ],
  footprint: shelterFootprint,
  planSymbol: shelterPlan,
})
