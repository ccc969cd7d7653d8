import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, typical } from '../parts.ts'
import { fuelFootprint, fuelPlan } from '../symbols/fuel.ts'

/** Fuel kept on the site. */
export const fuelSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('fuel'),
  /** 5 US gal (19 L) is where 29 CFR 1926.150 asks for an extinguisher. */
  amount: z.enum(['upTo5Gal', 'over5Gal']).nullable(),
  /** Stands in a tray that holds what leaks. */
  isBunded: z.boolean().nullable(),
  figures: z.strictObject({
    lengthM: figureSchema,
    widthM: figureSchema,
  }),
})
export type FuelRecord = z.infer<typeof fuelSchema>

export const fuel = defineKind<FuelRecord>({
  kind: 'fuel',
  idPrefix: 'fuel',
  schema: fuelSchema,
  name: { en: 'fuel store', es: 'depósito de combustible' },
  gear: 'site',
  placing: 'item',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'fuel', place: at.place, locked: false, note: null, gearId: null, amount: null, isBunded: null, figures: { lengthM: typical(1.2), widthM: typical(0.9) } }),
  fields: [
    { path: 'figures.lengthM.value', label: { en: 'length', es: 'largo' }, input: { as: 'quantity', kind: 'length', min: 0.2, max: 10, nullable: true }, first: true },
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.1, max: 10, nullable: true } },
    { path: 'amount', label: { en: 'amount', es: 'cantidad' }, input: { as: 'choice', choices: [{ value: null, label: { en: 'not said', es: 'sin decir' } }, { value: 'upTo5Gal', label: { en: '5 gal (19 L) or less', es: '5 gal (19 L) o menos' } }, { value: 'over5Gal', label: { en: 'over 5 gal (19 L)', es: 'más de 5 gal (19 L)' } }] } },
    { path: 'isBunded', label: { en: 'in a tray', es: 'en charola' }, input: { as: 'yesNo', nullable: true } },
  ],
  footprint: fuelFootprint,
  planSymbol: fuelPlan,
})
