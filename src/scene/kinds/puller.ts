import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, typical, unknownFigure } from '../parts.ts'
import { pullerFootprint, pullerPlan, pullerSection } from '../symbols/puller.ts'

/** What pulls the string: a tractor, a loader or a winch, with its rope. Its place is the rope end of the vehicle. */
export const pullerSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('puller'),
  /** Shape and behaviour: a winch stands still, the others drive. */
  pullerKind: z.enum(['tractor', 'loader', 'winch']),
  guardedCab: z.boolean().nullable(),
  figures: z.strictObject({
    lengthM: figureSchema,
    widthM: figureSchema,
    ropeLengthM: figureSchema,
    towRatingN: figureSchema,
    massKg: figureSchema,
    ropeRatingN: figureSchema,
    topHeightM: figureSchema,
  }),
})
export type PullerRecord = z.infer<typeof pullerSchema>

export const puller = defineKind<PullerRecord>({
  kind: 'puller',
  idPrefix: 'puller',
  schema: pullerSchema,
  name: { en: 'puller', es: 'tractor de tiro' },
  gear: 'lift',
  placing: 'item',
  labelLetter: 'P',
  ridesOnRun: true,
  create: (id, at) => ({
    id, kind: 'puller', place: at.place, locked: false, note: null, gearId: null, pullerKind: 'tractor', guardedCab: null,
    figures: { lengthM: typical(3.6), widthM: typical(2.0), ropeLengthM: typical(9.144), towRatingN: unknownFigure(), massKg: unknownFigure(), ropeRatingN: unknownFigure(), topHeightM: unknownFigure() },
  }),
  fields: [
    { path: 'pullerKind', label: { en: 'pulls with', es: 'tira con' }, input: { as: 'choice', choices: [{ value: 'tractor', label: { en: 'tractor', es: 'tractor' } }, { value: 'loader', label: { en: 'loader', es: 'cargador' } }, { value: 'winch', label: { en: 'winch', es: 'malacate' } }] } },
    { path: 'figures.ropeLengthM.value', label: { en: 'rope length', es: 'largo de cuerda' }, input: { as: 'quantity', kind: 'length', min: 0, max: 200, nullable: true }, first: true },
    { path: 'figures.towRatingN.value', label: { en: 'tow rating (plate)', es: 'tiro nominal (placa)' }, input: { as: 'quantity', kind: 'force', min: 1, max: 1e7, nullable: true } },
    { path: 'figures.ropeRatingN.value', label: { en: 'rope or sling rating (tag)', es: 'carga de cuerda o eslinga (etiqueta)' }, input: { as: 'quantity', kind: 'force', min: 1, max: 1e7, nullable: true } },
    { path: 'figures.massKg.value', label: { en: 'mass', es: 'masa' }, input: { as: 'quantity', kind: 'mass', min: 10, max: 100000, nullable: true } },
    { path: 'figures.topHeightM.value', label: { en: 'highest point', es: 'punto más alto' }, input: { as: 'quantity', kind: 'length', min: 0, max: 40, nullable: true } },
    { path: 'guardedCab', label: { en: 'guarded cab', es: 'cabina con protección' }, input: { as: 'yesNo', nullable: true } },
    { path: 'figures.lengthM.value', label: { en: 'length', es: 'largo' }, input: { as: 'quantity', kind: 'length', min: 0.3, max: 20, nullable: true } },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.3, max: 8, nullable: true } },
  ],
  footprint: pullerFootprint,
  planSymbol: pullerPlan,
  sectionSymbol: pullerSection,
})
