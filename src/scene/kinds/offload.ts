import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, typical } from '../parts.ts'
import { offloadFootprint, offloadPlan } from '../symbols/offload.ts'

/** Where the truck is unloaded: trailer standing place. */
export const offloadSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('offload'),
  figures: z.strictObject({
    lengthM: figureSchema,
    widthM: figureSchema,
    loadHeightM: figureSchema,
  }),
})
export type OffloadRecord = z.infer<typeof offloadSchema>

export const offload = defineKind<OffloadRecord>({
  kind: 'offload',
  idPrefix: 'offload',
  schema: offloadSchema,
  name: { en: 'offload place', es: 'lugar de descarga' },
  gear: 'lift',
  placing: 'item',
  labelLetter: 'T',
  create: (id, at) => ({
    id, kind: 'offload', place: at.place, locked: false, note: null, gearId: null,
    figures: { lengthM: typical(21.3), widthM: typical(2.6), loadHeightM: typical(3.6) },
  }),
  fields: [
    { path: 'figures.lengthM.value', label: { en: 'truck and trailer length', es: 'largo del camión y remolque' }, input: { as: 'quantity', kind: 'length', min: 2, max: 60, nullable: true }, first: true },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 1, max: 6, nullable: true } },
    { path: 'figures.loadHeightM.value', label: { en: 'height of the load', es: 'altura de la carga' }, input: { as: 'quantity', kind: 'length', min: 0.5, max: 6, nullable: true } },
  ],
  footprint: offloadFootprint,
  planSymbol: offloadPlan,
})
