import { z } from 'zod'
import { subtract, type Vec } from '../../geometry/vector.ts'
import { runsOf, schemaOf, setUpsOf, type YardDocument } from '../document.ts'
import type { Edit, Env } from '../edit.ts'
import { kindOf, type PlacedRecord } from '../kinds/index.ts'
import { isFeature, isItem, middleOf, resolvePlace } from '../resolve.ts'
import { idsArg, stepM } from './args.ts'
import { checked, defineCommand, refuse } from './command.ts'
import { freeAt, freedPlace, shiftedPlace, withPlace, withPoints, type Item } from './placing.ts'
import { stepOf, whatText } from './wording.ts'

/**
 * The records of a selection as they go on the clipboard: placed ones only. What is attached to an item outside the
 * selection is made free; what lies on a run keeps that, and lies on the first run of another layout when pasted there.
 */
export function copyOf(document: YardDocument, ids: readonly string[]): PlacedRecord[] {
  const chosen = new Set(ids)
  return [...chosen].flatMap((id): PlacedRecord[] => {
    const record = document.records[id]
    if (isFeature(record)) return [record]
    if (!isItem(record)) return []
    const stays = record.place.at !== 'onItem' || chosen.has(record.place.itemId)
    return [stays ? record : withPlace(record, freedPlace(document, record))]
  })
}

/**
 * Copies with fresh ids. Attachments inside the group follow the copies. A copied machine is free: the nail of a set-up
 * lies under one machine.
 */
function copies(document: YardDocument, records: readonly PlacedRecord[], d: Vec, env: Env): PlacedRecord[] {
  const newIds = new Map(records.map(({ id, kind }) => [id, env.newId(kindOf(kind)?.idPrefix ?? kind)]))
  return records.map((record): PlacedRecord => {
    const id = newIds.get(record.id) ?? record.id
    if (isFeature(record)) return { ...withPoints(record, (p) => ({ xM: p.xM + d.xM, yM: p.yM + d.yM })), id, locked: false }
    if (!isItem(record)) return record
    const copy = { ...record, id, locked: false }
    if (record.place.at === 'onItem') {
      const itemId = newIds.get(record.place.itemId)
      if (itemId !== undefined) return withPlace(copy, { ...record.place, itemId })
    }
    const moved = shiftedPlace(document, record.place, d)
    return withPlace(copy, 'setUpId' in record ? freedOf(document, withPlace(copy, moved)) : moved)
  })
}

const freedOf = (document: YardDocument, item: Item): Item['place'] => {
  const at = resolvePlace(document, item.place)
  return freeAt(at, at.headingRad)
}

/** Copies of the chosen items and features beside themselves, displaced in the site. */
export const duplicate = defineCommand({
  name: 'duplicate',
  args: z.strictObject({ ids: idsArg, dxM: stepM, dyM: stepM }),
  run: (document, { ids, dxM, dyM }, env): Edit => ({ put: copies(document, copyOf(document, ids), { xM: dxM, yM: dyM }, env), remove: [] }),
  label: (document, { ids }) => stepOf({ en: 'duplicate', es: 'duplicar' }, whatText(document, ids)),
})

/** The record as it can stand in this document: runs, set-ups and carriers it names that are not here replaced by ours. */
function adopted(document: YardDocument, record: PlacedRecord, clip: ReadonlySet<string>): PlacedRecord {
  if (!isItem(record)) return record
  const ownSetUpId = 'setUpId' in record ? (document.records[record.setUpId]?.kind === 'setUp' ? record.setUpId : setUpsOf(document)[0]?.id) : null
  if (ownSetUpId === undefined) return refuse('paste', 'records', 'hold a machine, and this layout has no set-up yet', 'incluyen una máquina, y este plano aún no tiene montaje')
  const housed: Item = ownSetUpId === null ? record : ({ ...record, setUpId: ownSetUpId } as Item)
  const { place } = record
  if (place.at === 'onRun' && document.records[place.runId]?.kind !== 'run') {
    const run = runsOf(document)[0]
    // Without a run its distances become plain coordinates: along is x, right is −y.
    return withPlace(housed, run === undefined ? freeAt({ xM: place.runningM, yM: -place.offsetM }, place.turnRad) : { ...place, runId: run.id })
  }
  if (place.at === 'onItem' && !clip.has(place.itemId) && !isItem(document.records[place.itemId])) return withPlace(housed, freeAt({ xM: place.dxM, yM: place.dyM }, place.turnRad))
  return housed
}

/** Pastes records of the clipboard (`copyOf`, of this or another layout) with their common middle at a point of the site. */
export const paste = defineCommand({
  name: 'paste',
  args: z.strictObject({ records: z.array(z.looseObject({ id: z.string().max(80), kind: z.string().max(40) })).min(1).max(5000), xM: stepM, yM: stepM }),
  run: (document, { records, xM, yM }, env): Edit => {
    const read = records.map((record, i) => {
      if (kindOf(record.kind) === undefined) return refuse('paste', `records[${i}].kind`, `${record.kind} is nothing that can be placed`, `${record.kind} no es algo que se pueda colocar`)
      return checked('paste', schemaOf(record.kind), record, ['records', i]) as PlacedRecord
    })
    const clip = new Set(read.map(({ id }) => id))
    const here = read.map((record) => adopted(document, record, clip))
    const roots = here.flatMap((record) => {
      if (isFeature(record)) return [middleOf(record.points)]
      return isItem(record) && !(record.place.at === 'onItem' && clip.has(record.place.itemId)) ? [resolvePlace(document, record.place)] : []
    })
    if (roots.length === 0) return refuse('paste', 'records', 'hang on one another in a loop', 'dependen unos de otros en círculo')
    return { put: copies(document, here, subtract({ xM, yM }, middleOf(roots)), env), remove: [] }
  },
  label: (_document, { records }) => stepOf({ en: 'paste', es: 'pegar' }, { en: records.length === 1 ? 'an item' : `${records.length} items`, es: records.length === 1 ? 'un elemento' : `${records.length} elementos` }),
})
