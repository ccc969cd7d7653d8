import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, typical } from '../parts.ts'
import { generatorFootprint, generatorPlan } from '../symbols/generator.ts'

/** What makes power for the machine. */
export const generatorSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('generator'),
  /** Runs while joints are made. */
  isRunning: z.boolean().nullable(),
  figures: z.strictObject({
    lengthM: figureSchema,
    widthM: figureSchema,
  }),
})
export type GeneratorRecord = z.infer<typeof generatorSchema>

export const generator = defineKind<GeneratorRecord>({
  kind: 'generator',
  idPrefix: 'generator',
  schema: generatorSchema,
  name: { en: 'generator', es: 'generador' },
  gear: 'site',
  placing: 'item',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'generator', place: at.place, locked: false, note: null, gearId: null, isRunning: true, figures: { lengthM: typical(1.8), widthM: typical(1.0) } }),
  fields: [
    { path: 'figures.lengthM.value', label: { en: 'length', es: 'largo' }, input: { as: 'quantity', kind: 'length', min: 0.2, max: 8, nullable: true }, first: true },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.1, max: 4, nullable: true } },
    { path: 'isRunning', label: { en: 'runs while fusing', es: 'trabaja al fusionar' }, input: { as: 'yesNo', nullable: true } },
  ],
  footprint: generatorFootprint,
  planSymbol: generatorPlan,
})
