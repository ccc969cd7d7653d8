import { z } from 'zod'
import { runsOf, setUpsOf, type YardDocument, type YardRecord } from '../document.ts'
import type { Edit, Env } from '../edit.ts'
import type { KindDefinition } from '../kindDefinition.ts'
import { kindOf, type PlacedRecord } from '../kinds/index.ts'
import { placeSchema, type Place } from '../parts.ts'
import { resolvePlace } from '../resolve.ts'
import { oneId, pointArg, stepM } from './args.ts'
import { checked, defineCommand, refuse } from './command.ts'
import { laidOver } from './fields.ts'
import { newRun, newSetUp } from './frames.ts'
import { kindName, stepOf } from './wording.ts'

export const patchArg = z.record(z.string().max(60), z.unknown())

export const definitionOf = (command: string, kind: string): KindDefinition<PlacedRecord> => kindOf(kind) ?? refuse(command, 'kind', `${kind} is nothing that can be placed`, `${kind} no es algo que se pueda colocar`)

interface NewItem {
  definition: KindDefinition<PlacedRecord>
  place: Place
  points?: readonly { xM: number; yM: number }[] | undefined
  patch?: Record<string, unknown> | undefined
  setUpId: string
  runId: string
}

/** Which fields a patch may not touch: they name the record and where it lies. */
const ownFields = ['id', 'kind', 'place', 'points']

export function made(command: string, { definition, place, points, patch, setUpId, runId }: NewItem, env: Env): PlacedRecord {
  const own = ownFields.find((field) => patch !== undefined && Object.hasOwn(patch, field))
  if (own !== undefined) return refuse(command, `patch.${own}`, 'is not for a patch to set', 'no se puede fijar aquí')
  const record = definition.create(env.newId(definition.idPrefix), points === undefined ? { place, setUpId, runId } : { place, points, setUpId, runId })
  return checked(command, definition.schema, patch === undefined ? record : laidOver(record, patch))
}

/** Where a new item belongs: the named set-up and run, else the run it is placed on, else the first of the document. */
export function belonging(document: YardDocument, place: Place | undefined, given: { setUpId?: string | undefined; runId?: string | undefined }): { setUpId: string; runId: string } | null {
  const runId = given.runId ?? (place?.at === 'onRun' ? place.runId : runsOf(document)[0]?.id)
  const run = runId === undefined ? undefined : document.records[runId]
  const setUpId = given.setUpId ?? (run?.kind === 'run' ? run.setUpId : setUpsOf(document)[0]?.id)
  return run?.kind === 'run' && setUpId !== undefined ? { setUpId, runId: run.id } : null
}

/**
 * Places one item (by `place`) or draws one feature (by `points`, site frame), with typical figures; `patch` is laid
 * over the new record. A machine placed in a layout without a set-up brings set-up and run with it, datum under it.
 */
export const place = defineCommand({
  name: 'place',
  args: z.strictObject({ kind: z.string().max(40), place: placeSchema.optional(), points: z.array(pointArg).max(2000).optional(), patch: patchArg.optional(), setUpId: oneId.optional(), runId: oneId.optional() }),
  run: (document, args, env): Edit => {
    const definition = definitionOf('place', args.kind)
    const isItemKind = definition.placing === 'item'
    if (isItemKind && args.place === undefined) return refuse('place', 'place', 'is missing', 'falta')
    if (!isItemKind && args.points === undefined) return refuse('place', 'points', 'is missing', 'falta')
    const at: Place = args.place ?? { at: 'free', xM: 0, yM: 0, headingRad: 0 }
    if (isItemKind) mustExist(document, at)
    const home = belonging(document, args.place, args)
    if (home === null && definition.kind === 'machine') return machineWithSetUp(document, definition, at, args.patch, env)
    const record = made('place', { definition, place: at, points: args.points, patch: args.patch, setUpId: home?.setUpId ?? '', runId: home?.runId ?? '' }, env)
    return { put: [record], remove: [] }
  },
  label: (_document, { kind }) => stepOf({ en: 'place', es: 'colocar' }, kindName(kind)),
})

/** The run or the carrier that a place names is in the document. */
export function mustExist(document: YardDocument, at: Place): void {
  if (at.at === 'onRun' && document.records[at.runId]?.kind !== 'run') refuse('place', 'place.runId', `names ${at.runId}, which is not a pull path here`, `nombra ${at.runId}, que no es un recorrido aquí`)
  if (at.at === 'onItem') {
    const carrier = document.records[at.itemId]
    if (carrier === undefined || !('place' in carrier)) refuse('place', 'place.itemId', `names ${at.itemId}, which is not an item here`, `nombra ${at.itemId}, que no es un elemento aquí`)
  }
}

function machineWithSetUp(document: YardDocument, definition: KindDefinition<PlacedRecord>, at: Place, patch: Record<string, unknown> | undefined, env: Env): Edit {
  const { xM, yM, headingRad } = resolvePlace(document, at)
  const setUp = newSetUp(env, { datum: { xM, yM }, headingRad })
  const run = newRun(env, setUp.id)
  const onRun: Place = { at: 'onRun', runId: run.id, runningM: 0, offsetM: 0, turnRad: 0 }
  return { put: [setUp, run, made('place', { definition, place: onRun, patch, setUpId: setUp.id, runId: run.id }, env)], remove: [] }
}

/** Places `count` equal items along a run, the first at `fromRunningM`, each `spacingM` further (negative: towards the infeed). */
export const placeRow = defineCommand({
  name: 'placeRow',
  args: z.strictObject({ kind: z.string().max(40), fromRunningM: stepM, spacingM: stepM, count: z.number().int().min(1).max(500), offsetM: stepM.optional(), runId: oneId.optional(), patch: patchArg.optional() }),
  run: (document, { kind, fromRunningM, spacingM, count, offsetM, runId, patch }, env) => {
    const definition = definitionOf('placeRow', kind)
    if (definition.placing !== 'item') return refuse('placeRow', 'kind', `${kind} is drawn point by point, not in a row`, `${kind} se dibuja punto por punto, no en fila`)
    const home = belonging(document, undefined, { runId })
    if (home === null) return refuse('placeRow', 'runId', 'is missing: the layout has no set-up yet', 'falta: el plano aún no tiene montaje')
    const put: YardRecord[] = Array.from({ length: count }, (_, i) => {
      const at: Place = { at: 'onRun', runId: home.runId, runningM: fromRunningM + spacingM * i, offsetM: offsetM ?? 0, turnRad: 0 }
      return made('placeRow', { definition, place: at, patch, ...home }, env)
    })
    return { put, remove: [] }
  },
  label: (_document, { kind, count }) => stepOf({ en: `place ${count} ×`, es: `colocar ${count} ×` }, kindName(kind)),
})
