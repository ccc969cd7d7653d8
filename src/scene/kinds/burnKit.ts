import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { itemBase } from '../parts.ts'
import { burnKitFootprint, burnKitPlan } from '../symbols/burnKit.ts'

/** Burn and first aid kit with water. */
export const burnKitSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('burnKit'),
})
export type BurnKitRecord = z.infer<typeof burnKitSchema>

export const burnKit = defineKind<BurnKitRecord>({
  kind: 'burnKit',
  idPrefix: 'burnKit',
  schema: burnKitSchema,
  name: { en: 'burn and first aid kit', es: 'botiquín de quemaduras' },
  gear: 'people',
  placing: 'item',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'burnKit', place: at.place, locked: false, note: null, gearId: null }),
  fields: [],
  footprint: burnKitFootprint,
  planSymbol: burnKitPlan,
})
