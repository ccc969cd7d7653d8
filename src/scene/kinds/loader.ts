import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, typical, unknownFigure } from '../parts.ts'
import { loaderFootprint, loaderPlan } from '../symbols/loader.ts'

/** A loader or fork vehicle that sets sticks on the rack; drawn where it works. */
export const loaderSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('loader'),
  figures: z.strictObject({
    lengthM: figureSchema,
    widthM: figureSchema,
    plateLoadN: figureSchema,
    reachM: figureSchema,
    topHeightM: figureSchema,
  }),
})
export type LoaderRecord = z.infer<typeof loaderSchema>

export const loader = defineKind<LoaderRecord>({
  kind: 'loader',
  idPrefix: 'loader',
  schema: loaderSchema,
  name: { en: 'loader', es: 'cargador' },
  gear: 'lift',
  placing: 'item',
  labelLetter: 'L',
  create: (id, at) => ({
    id, kind: 'loader', place: at.place, locked: false, note: null, gearId: null,
    figures: { lengthM: typical(3.6), widthM: typical(1.9), plateLoadN: unknownFigure(), reachM: typical(1.2), topHeightM: unknownFigure() },
  }),
  fields: [
    { path: 'figures.plateLoadN.value', label: { en: 'rated load at that reach (plate)', es: 'carga a ese alcance (placa)' }, input: { as: 'quantity', kind: 'force', min: 1, max: 1e7, nullable: true }, first: true },
    { path: 'figures.reachM.value', label: { en: 'reach to the stick', es: 'alcance al tubo' }, input: { as: 'quantity', kind: 'length', min: 0, max: 20, nullable: true } },
    { path: 'figures.topHeightM.value', label: { en: 'highest point of boom and load', es: 'punto más alto de pluma y carga' }, input: { as: 'quantity', kind: 'length', min: 0, max: 40, nullable: true } },
    { path: 'figures.lengthM.value', label: { en: 'length', es: 'largo' }, input: { as: 'quantity', kind: 'length', min: 0.5, max: 20, nullable: true } },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.5, max: 8, nullable: true } },
  ],
  footprint: loaderFootprint,
  planSymbol: loaderPlan,
})
