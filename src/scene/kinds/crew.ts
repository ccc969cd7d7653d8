import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { itemBase, phaseSchema, phases } from '../parts.ts'
import { crewFootprint, crewPlan } from '../symbols/crew.ts'

/** A crew spot: where one person stands for a task, in the phases named. A role, never a person's name. */
export const crewSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('crew'),
  role: z.enum(['operator', 'infeedHand', 'exitHand', 'loaderOperator', 'spotter', 'noseSpotter', 'pullerOperator', 'marshal', 'driver', 'other']),
  phases: z.array(phaseSchema).max(8),
  /** First language of who stands there; null: not said. */
  language: z.enum(['en', 'es', 'other']).nullable(),
})
export type CrewRecord = z.infer<typeof crewSchema>

export const crewRoles: readonly { value: CrewRecord['role']; letter: string; label: { en: string; es: string } }[] = [
  { value: 'operator', letter: 'O', label: { en: 'operator', es: 'operador' } },
  { value: 'infeedHand', letter: 'I', label: { en: 'infeed hand', es: 'ayudante de entrada' } },
  { value: 'exitHand', letter: 'E', label: { en: 'exit hand', es: 'ayudante de salida' } },
  { value: 'loaderOperator', letter: 'L', label: { en: 'loader operator', es: 'operador del cargador' } },
  { value: 'spotter', letter: 'S', label: { en: 'spotter', es: 'señalero' } },
  { value: 'noseSpotter', letter: 'N', label: { en: 'nose spotter', es: 'vigía de la punta' } },
  { value: 'pullerOperator', letter: 'P', label: { en: 'puller operator', es: 'operador de tiro' } },
  { value: 'marshal', letter: 'M', label: { en: 'crossing marshal', es: 'controlador de paso' } },
  { value: 'driver', letter: 'D', label: { en: 'truck driver', es: 'chofer' } },
  { value: 'other', letter: '?', label: { en: 'other', es: 'otro' } },
]

export const crew = defineKind<CrewRecord>({
  kind: 'crew',
  idPrefix: 'crew',
  schema: crewSchema,
  name: { en: 'crew spot', es: 'puesto de cuadrilla' },
  gear: 'people',
  placing: 'item',
  labelLetter: 'C',
  create: (id, at) => ({
    id, kind: 'crew', place: at.place, locked: false, note: null, gearId: null, role: 'operator', phases: [...phases], language: null,
  }),
  fields: [
    { path: 'role', label: { en: 'task', es: 'tarea' }, input: { as: 'choice', choices: crewRoles }, first: true },
    { path: 'phases', label: { en: 'stands there in', es: 'está ahí en' }, input: { as: 'phases' } },
    { path: 'language', label: { en: 'first language', es: 'lengua materna' }, input: { as: 'choice', choices: [{ value: null, label: { en: 'not said', es: 'sin decir' } }, { value: 'en', label: { en: 'English', es: 'inglés' } }, { value: 'es', label: { en: 'Spanish', es: 'español' } }, { value: 'other', label: { en: 'another', es: 'otra' } }] } },
  ],
  footprint: crewFootprint,
  planSymbol: (record, context) => {
    const role = crewRoles.find(({ value }) => value === record.role)
    return crewPlan({ letter: role?.letter ?? '?', name: role?.label[context.reader?.language ?? 'en'] ?? '' }, context)
  },
})
