import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { featureBase, longText, phaseSchema, phases, ringSchema, zoneClassSchema } from '../parts.ts'
import { zonePlan } from '../symbols/zone.ts'

/** A zone drawn by hand. Derived zones are never stored. */
export const zoneSchema = z.strictObject({
  ...featureBase,
  kind: z.literal('zone'),
  points: ringSchema,
  zoneClass: zoneClassSchema,
  phases: z.array(phaseSchema).max(8),
  sentence: longText,
})
export type ZoneRecord = z.infer<typeof zoneSchema>

export const zone = defineKind<ZoneRecord>({
  kind: 'zone',
  idPrefix: 'zone',
  schema: zoneSchema,
  name: { en: 'zone by hand', es: 'zona a mano' },
  gear: 'people',
  placing: 'polygon',
  labelLetter: 'Z',
  create: (id, at) => ({
    id, kind: 'zone', name: '', locked: false, note: null, points: (at.points ?? []).map(({ xM, yM }) => ({ xM, yM })), zoneClass: 'RED', phases: [...phases], sentence: '',
  }),
  fields: [
    { path: 'name', label: { en: 'name', es: 'nombre' }, input: { as: 'text' }, first: true },
    { path: 'zoneClass', label: { en: 'class', es: 'clase' }, input: { as: 'choice', choices: [{ value: 'RED', label: { en: 'RED: nobody', es: 'ROJA: nadie' } }, { value: 'AMBER', label: { en: 'AMBER: named role', es: 'ÁMBAR: persona nombrada' } }, { value: 'BLUE', label: { en: 'BLUE: public out', es: 'AZUL: público fuera' } }] }, first: true },
    { path: 'phases', label: { en: 'live in', es: 'activa en' }, input: { as: 'phases' } },
    { path: 'sentence', label: { en: 'what to do', es: 'qué hacer' }, input: { as: 'text' } },
  ],
  footprint: () => [],
  planSymbol: zonePlan,
})
