import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, typical } from '../parts.ts'
import { fittingFootprint, fittingPlan } from '../symbols/fitting.ts'

/** A fitting or flange in the string, at the place where it lies in the end: a bend there has to be far wider. */
export const fittingSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('fitting'),
  fittingKind: z.enum(['flange', 'tee', 'coupling', 'other']),
  /** Part of the string while it is pulled, so that it passes every bend on its way; null: nobody has said. */
  isPulledAlong: z.boolean().nullable(),
  figures: z.strictObject({
    lengthM: figureSchema,
  }),
})
export type FittingRecord = z.infer<typeof fittingSchema>

export const fitting = defineKind<FittingRecord>({
  kind: 'fitting',
  idPrefix: 'fitting',
  schema: fittingSchema,
  name: { en: 'fitting or flange', es: 'accesorio o brida' },
  gear: 'line',
  placing: 'item',
  labelLetter: 'F',
  ridesOnRun: true,
  create: (id, at) => ({ id, kind: 'fitting', place: at.place, locked: false, note: null, gearId: null, fittingKind: 'flange', isPulledAlong: null, figures: { lengthM: typical(0.6) } }),
  fields: [
    { path: 'fittingKind', label: { en: 'what it is', es: 'qué es' }, input: { as: 'choice', choices: [{ value: 'flange', label: { en: 'flange', es: 'brida' } }, { value: 'tee', label: { en: 'tee or branch', es: 'te o derivación' } }, { value: 'coupling', label: { en: 'coupling', es: 'cople' } }, { value: 'other', label: { en: 'other fitting', es: 'otro accesorio' } }] }, first: true },
    { path: 'isPulledAlong', label: { en: 'in the string while it is pulled', es: 'va en la sarta al jalarla' }, input: { as: 'yesNo', nullable: true }, first: true },
    { path: 'figures.lengthM.value', label: { en: 'length', es: 'largo' }, input: { as: 'quantity', kind: 'length', min: 0.05, max: 10, nullable: true } },
  ],
  footprint: fittingFootprint,
  planSymbol: fittingPlan,
})
