import { z } from 'zod'
import { layoutOf, type YardRecord } from '../document.ts'
import type { Edit } from '../edit.ts'
import { finite, placeSchema, type Place } from '../parts.ts'
import { rounded } from '../rounding.ts'
import { oneId, pointArg } from './args.ts'
import { defineCommand, refuse } from './command.ts'
import { belonging, definitionOf, made, mustExist, patchArg } from './place.ts'
import { kindName, stepOf } from './wording.ts'

const ownTypeOf = (kinds: readonly string[]): string | null => (new Set(kinds).size === 1 ? (kinds[0] ?? null) : null)

/**
 * Places many items and features read from a level book or from a plan of another program, as one step. `mapOrigin` is kept
 * in the layout where it comes from the file; null leaves the layout's own.
 */
export const bringIn = defineCommand({
  name: 'bringIn',
  args: z.strictObject({
    records: z.array(z.strictObject({ kind: z.string().max(40), place: placeSchema.optional(), points: z.array(pointArg).max(2000).optional(), patch: patchArg.optional() })).min(1).max(10_000),
    runId: oneId.optional(),
    mapOrigin: z.strictObject({ eastM: finite, northM: finite }).nullable(),
  }),
  run: (document, { records, runId, mapOrigin }, env): Edit => {
    const origin: Place = { at: 'free', xM: 0, yM: 0, headingRad: 0 }
    const put = records.map(({ kind, place, points, patch }, i): YardRecord => {
      const definition = definitionOf('bringIn', kind)
      const isItem = definition.placing === 'item'
      if (isItem && place === undefined) return refuse('bringIn', `records[${i}].place`, 'is missing', 'falta')
      if (!isItem && points === undefined) return refuse('bringIn', `records[${i}].points`, 'is missing', 'falta')
      if (place !== undefined) mustExist(document, place)
      const home = belonging(document, place, { runId })
      if (kind === 'machine') return refuse('bringIn', `records[${i}].kind`, 'a machine is placed by hand: it carries the datum', 'la máquina se coloca a mano: lleva el origen')
      const at = place?.at === 'free' ? { ...place, xM: rounded(place.xM), yM: rounded(place.yM) } : (place ?? origin)
      return made('bringIn', { definition, place: at, points: points?.map(({ xM, yM }) => ({ xM: rounded(xM), yM: rounded(yM) })), patch, setUpId: home?.setUpId ?? '', runId: home?.runId ?? '' }, env)
    })
    return { put: mapOrigin === null ? put : [...put, { ...layoutOf(document), mapOrigin }], remove: [] }
  },
  label: (_document, { records }) => {
    const kind = ownTypeOf(records.map((record) => record.kind))
    return stepOf({ en: `bring in ${records.length} ×`, es: `traer ${records.length} ×` }, kind === null ? { en: 'shape', es: 'figura' } : kindName(kind))
  },
})
