import { z } from 'zod'
import { defineKind } from '../kindDefinition.ts'
import { itemBase, longText } from '../parts.ts'
import { noteFootprint, notePlan } from '../symbols/note.ts'

/** A note pinned to a place on the plan. */
export const noteSchema = z.strictObject({
  ...itemBase,
  kind: z.literal('note'),
  text: longText,
})
export type NoteRecord = z.infer<typeof noteSchema>

export const note = defineKind<NoteRecord>({
  kind: 'note',
  idPrefix: 'note',
  schema: noteSchema,
  name: { en: 'note', es: 'nota' },
  gear: 'site',
  placing: 'item',
  labelLetter: 'N',
  create: (id, at) => ({
    id, kind: 'note', place: at.place, locked: false, note: null, gearId: null, text: '',
  }),
  fields: [
    { path: 'text', label: { en: 'words', es: 'texto' }, input: { as: 'text' }, first: true },
  ],
  footprint: noteFootprint,
  planSymbol: notePlan,
})
