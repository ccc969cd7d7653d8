import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, typical } from '../parts.ts'
import { cuttingPlaceFootprint, cuttingPlacePlan } from '../symbols/cuttingPlace.ts'

/** Where pipe is cut. */
export const cuttingPlaceSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('cuttingPlace'),
  /** Both sides of the cut lie on supports, so that the kerf opens. */
  bothSidesHeld: z.boolean().nullable(),
  figures: z.strictObject({
    lengthM: figureSchema,
    widthM: figureSchema,
  }),
})
export type CuttingPlaceRecord = z.infer<typeof cuttingPlaceSchema>

export const cuttingPlace = defineKind<CuttingPlaceRecord>({
  kind: 'cuttingPlace',
  idPrefix: 'cuttingPlace',
  schema: cuttingPlaceSchema,
  name: { en: 'cutting place', es: 'lugar de corte' },
  gear: 'line',
  placing: 'item',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'cuttingPlace', place: at.place, locked: false, note: null, gearId: null, bothSidesHeld: null, figures: { lengthM: typical(2.4), widthM: typical(1.2) } }),
  fields: [
    { path: 'figures.lengthM.value', label: { en: 'length', es: 'largo' }, input: { as: 'quantity', kind: 'length', min: 0.2, max: 15, nullable: true }, first: true },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.1, max: 6, nullable: true } },
    { path: 'bothSidesHeld', label: { en: 'both sides of the cut held', es: 'ambos lados del corte apoyados' }, input: { as: 'yesNo', nullable: true } },
  ],
  footprint: cuttingPlaceFootprint,
  planSymbol: cuttingPlacePlan,
})
