import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { itemBase } from '../parts.ts'
import { ventFootprint, ventPlan } from '../symbols/vent.ts'

/** A gas vent or open well, on a landfill or elsewhere. */
export const ventSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('vent'),
  /** The meter read clear today. */
  isClear: z.boolean().nullable(),
})
export type VentRecord = z.infer<typeof ventSchema>

export const vent = defineKind<VentRecord>({
  kind: 'vent',
  idPrefix: 'vent',
  schema: ventSchema,
  name: { en: 'gas vent', es: 'venteo de gas' },
  gear: 'site',
  placing: 'item',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'vent', place: at.place, locked: false, note: null, gearId: null, isClear: null }),
  fields: [
    { path: 'isClear', label: { en: 'meter read clear today', es: 'el medidor dio limpio hoy' }, input: { as: 'yesNo', nullable: true } },
  ],
  footprint: ventFootprint,
  planSymbol: ventPlan,
})
