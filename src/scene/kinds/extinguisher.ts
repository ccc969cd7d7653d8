import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { itemBase } from '../parts.ts'
import { extinguisherFootprint, extinguisherPlan } from '../symbols/extinguisher.ts'

/** A fire extinguisher with its rating. */
export const extinguisherSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('extinguisher'),
  /** Class B rating on its plate. */
  rating: z.enum(['10B', '20B', 'other']).nullable(),
})
export type ExtinguisherRecord = z.infer<typeof extinguisherSchema>

export const extinguisher = defineKind<ExtinguisherRecord>({
  kind: 'extinguisher',
  idPrefix: 'extinguisher',
  schema: extinguisherSchema,
  name: { en: 'fire extinguisher', es: 'extintor' },
  gear: 'people',
  placing: 'item',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'extinguisher', place: at.place, locked: false, note: null, gearId: null, rating: null }),
  fields: [
    { path: 'rating', label: { en: 'rating', es: 'capacidad' }, input: { as: 'choice', choices: [{ value: null, label: { en: 'not said', es: 'sin decir' } }, { value: '10B', label: { en: '10-B', es: '10-B' } }, { value: '20B', label: { en: '20-B or more', es: '20-B o más' } }, { value: 'other', label: { en: 'less than 10-B', es: 'menos de 10-B' } }] } },
  ],
  footprint: extinguisherFootprint,
  planSymbol: extinguisherPlan,
})
