import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { featureBase, pointsSchema } from '../parts.ts'
import { barrierPlan } from '../symbols/barrier.ts'

/** A line of barriers or cones that keeps people out. */
export const barrierSchema = z.strictObject({
  ...featureBase,
  kind: z.literal('barrier'),
  points: pointsSchema,
  /** Heavy enough to stop a rolling stick (a block wall, a bund): a cone is not. */
  stopsPipe: z.boolean().nullable(),
})
export type BarrierRecord = z.infer<typeof barrierSchema>

export const barrier = defineKind<BarrierRecord>({
  kind: 'barrier',
  idPrefix: 'barrier',
  schema: barrierSchema,
  name: { en: 'barrier', es: 'barrera' },
  gear: 'people',
  placing: 'polyline',
  labelLetter: '',
  create: (id, at) => ({ id, kind: 'barrier', name: '', locked: false, note: null, points: (at.points ?? []).map(({ xM, yM }) => ({ xM, yM })), stopsPipe: null }),
  fields: [
    { path: 'name', label: { en: 'name', es: 'nombre' }, input: { as: 'text' }, first: true },
    { path: 'stopsPipe', label: { en: 'stops a rolling pipe', es: 'detiene un tubo que rueda' }, input: { as: 'yesNo', nullable: true } },
  ],
  footprint: () => [],
  planSymbol: barrierPlan,
})
