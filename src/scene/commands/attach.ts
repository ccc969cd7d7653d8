import { z } from 'zod'
import { rotate, subtract, wrapAngleRad } from '../../geometry/vector.ts'
import { recordsOf, type YardDocument } from '../document.ts'
import { isFeature, isItem, resolvePlace, runIdOf } from '../resolve.ts'
import { rounded } from '../rounding.ts'
import { idsArg, oneId } from './args.ts'
import { defineCommand, refuse } from './command.ts'
import { freedPlace, placeOnRun, withPlace, type Item } from './placing.ts'
import { stepOf, whatText } from './wording.ts'

/** Attaches items where they are: to a run (the first of the document unless named) or to another item, so that they move with it. */
export const attach = defineCommand({
  name: 'attach',
  args: z.strictObject({ ids: idsArg, runId: oneId.optional(), itemId: oneId.optional() }),
  run: (document, { ids, runId, itemId }) => {
    if (itemId !== undefined && !isItem(document.records[itemId])) return refuse('attach', 'itemId', `names ${itemId}, which is not an item here`, `nombra ${itemId}, que no es un elemento aquí`)
    if (runId !== undefined && document.records[runId]?.kind !== 'run') return refuse('attach', 'runId', `names ${runId}, which is not a pull path here`, `nombra ${runId}, que no es un recorrido aquí`)
    return { put: chosenItems(document, ids).flatMap((item) => attached(document, item, runId, itemId)), remove: [] }
  },
  label: (document, { ids }) => stepOf({ en: 'attach', es: 'fijar' }, whatText(document, ids)),
})

const chosenItems = (document: YardDocument, ids: readonly string[]): Item[] =>
  [...new Set(ids)].flatMap((id) => {
    const item = document.records[id]
    return isItem(item) && !item.locked ? [item] : []
  })

function attached(document: YardDocument, item: Item, runId: string | undefined, itemId: string | undefined): Item[] {
  const at = resolvePlace(document, item)
  if (itemId === undefined) {
    const run = runId ?? runIdOf(document, item.place)
    return run === null || (item.place.at === 'onRun' && item.place.runId === run) ? [] : [withPlace(item, placeOnRun(document, at, run))]
  }
  if (hangsOn(document, itemId, item.id)) return refuse('attach', 'itemId', `names ${itemId}, which itself hangs on ${item.id}`, `nombra ${itemId}, que depende a su vez de ${item.id}`)
  const carrier = document.records[itemId]
  if (!isItem(carrier)) return []
  const to = resolvePlace(document, carrier)
  const local = rotate(subtract(at, to), -to.headingRad)
  return [withPlace(item, { at: 'onItem', itemId, dxM: rounded(local.xM), dyM: rounded(local.yM), turnRad: rounded(wrapAngleRad(at.headingRad - to.headingRad)) })]
}

/** Whether item `id` is `carrierId` or is attached to it through others. */
function hangsOn(document: YardDocument, id: string, carrierId: string): boolean {
  if (id === carrierId) return true
  const item = document.records[id]
  return isItem(item) && item.place.at === 'onItem' && hangsOn(document, item.place.itemId, carrierId)
}

/** Lets go of run or item; position and heading stay as they are. */
export const detach = defineCommand({
  name: 'detach',
  args: z.strictObject({ ids: idsArg }),
  run: (document, { ids }) => ({
    put: chosenItems(document, ids).flatMap((item) => (item.place.at === 'free' ? [] : [withPlace(item, freedPlace(document, item))])),
    remove: [],
  }),
  label: (document, { ids }) => stepOf({ en: 'detach', es: 'soltar' }, whatText(document, ids)),
})

/** Locks against moving and deleting, or unlocks. Figures of a locked item can still be edited. */
export const lock = defineCommand({
  name: 'lock',
  args: z.strictObject({ ids: idsArg, locked: z.boolean() }),
  run: (document, { ids, locked }) => ({
    put: [...new Set(ids)].flatMap((id) => {
      const record = document.records[id]
      return (isItem(record) || isFeature(record)) && record.locked !== locked ? [{ ...record, locked }] : []
    }),
    remove: [],
  }),
  label: (document, { ids, locked }) => stepOf(locked ? { en: 'lock', es: 'bloquear' } : { en: 'unlock', es: 'desbloquear' }, whatText(document, ids)),
})

/** Ids of the unlocked items of which something was measured or ticked after setting, in document order: they stand in the ground. */
export const stakedIds = (document: YardDocument): readonly string[] =>
  recordsOf(document, 'asSet').map(({ itemId }) => itemId).filter((id) => {
    const item = document.records[id]
    return isItem(item) && !item.locked
  })

/** Locks all that is staked (`stakedIds`), so that a finger on the plan no longer moves what already stands in the ground. */
export const lockStaked = defineCommand({
  name: 'lockStaked',
  args: z.strictObject({}),
  run: (document, _args, env) => lock.run(document, { ids: stakedIds(document), locked: true }, env),
  label: () => ({ text: { en: 'lock what is staked', es: 'bloquear lo estacado' } }),
})
