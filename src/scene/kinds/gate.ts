import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { figureSchema, itemBase, typical } from '../parts.ts'
import { gateFootprint, gatePlan } from '../symbols/gate.ts'

/** A gate in a fence or barrier: way in for trucks or way out for people. */
export const gateSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('gate'),
  /** Open or opened at once while work goes on. */
  keptOpen: z.boolean().nullable(),
  figures: z.strictObject({
    widthM: figureSchema,
  }),
})
export type GateRecord = z.infer<typeof gateSchema>

export const gate = defineKind<GateRecord>({
  kind: 'gate',
  idPrefix: 'gate',
  schema: gateSchema,
  name: { en: 'gate', es: 'portón' },
  gear: 'site',
  placing: 'item',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'gate', place: at.place, locked: false, note: null, gearId: null, keptOpen: null, figures: { widthM: typical(4.9) } }),
  fields: [
    { path: 'figures.widthM.value', label: { en: 'width', es: 'ancho' }, input: { as: 'quantity', kind: 'length', min: 0.1, max: 30, nullable: true } },
    { path: 'keptOpen', label: { en: 'can be opened at once', es: 'se abre de inmediato' }, input: { as: 'yesNo', nullable: true } },
  ],
  footprint: gateFootprint,
  planSymbol: gatePlan,
})
