import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { featureBase, ringSchema } from '../parts.ts'
import { radioDeadPlan } from '../symbols/radioDead.ts'

/** A patch where radios do not reach. */
export const radioDeadSchema = z.strictObject({
  ...featureBase,
  kind: z.literal('radioDead'),
  points: ringSchema,
})
export type RadioDeadRecord = z.infer<typeof radioDeadSchema>

export const radioDead = defineKind<RadioDeadRecord>({
  kind: 'radioDead',
  idPrefix: 'radioDead',
  schema: radioDeadSchema,
  name: { en: 'radio-dead patch', es: 'zona sin radio' },
  gear: 'people',
  placing: 'polygon',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'radioDead', name: '', locked: false, note: null, points: (at.points ?? []).map(({ xM, yM }) => ({ xM, yM })) }),
  fields: [
    { path: 'name', label: { en: 'name', es: 'nombre' }, input: { as: 'text' }, first: true },
  ],
  footprint: () => [],
  planSymbol: radioDeadPlan,
})
