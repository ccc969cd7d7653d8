import { z } from 'zod'
import type { Localized } from '../../messages/localized.ts'
import { recordsOf, type YardDocument, type YardRecord } from '../document.ts'
import { isFeature, isItem } from '../resolve.ts'
import { idsArg } from './args.ts'
import { defineCommand } from './command.ts'
import { freedPlace, withPlace } from './placing.ts'
import { stepOf, whatText } from './wording.ts'

/** What deleting does beyond the records named. */
export interface DeleteSays {
  /** Everything that goes: what was chosen and may go, then what goes with it. */
  goes: readonly string[]
  /** Of those, what was not chosen. */
  goesWith: readonly string[]
  /** Attached items that stay where they are, now free. */
  detached: readonly string[]
  /** Chosen but kept: locked, or part of every document. */
  kept: readonly string[]
  /** One sentence to confirm by, null where nothing more than the chosen goes. */
  text: Localized | null
}

/** Records of the document that are always there or only ever added to. */
const lasting = ['layout', 'job', 'release']

const mayGo = (record: YardRecord): boolean => !lasting.includes(record.kind) && !((isItem(record) || isFeature(record)) && record.locked)

/** Whether the record means nothing without the one that goes. */
function goesWith(record: YardRecord, gone: ReadonlySet<string>): boolean {
  if (record.kind === 'run' || record.kind === 'machine') return gone.has(record.setUpId)
  if (record.kind === 'string') return gone.has(record.setUpId) || gone.has(record.runId)
  if (record.kind === 'asSet') return gone.has(record.itemId)
  if (record.kind === 'zoneChange') return zoneItems(record.zoneKey).some((id) => gone.has(id))
  return false
}

/** Ids in the key of a derived zone, `Z-02@rack:a` or `Z-05@puller:a+anchor:b`. */
const zoneItems = (zoneKey: string): string[] => (zoneKey.split('@')[1] ?? '').split('+')

/**
 * What deleting the records takes with it: a set-up its runs, strings and machine; an item its as-set figures and the
 * changes of its zones. What is attached to something that goes stays where it is and is free afterwards.
 */
export function deleteSays(document: YardDocument, ids: readonly string[]): DeleteSays {
  const chosen = [...new Set(ids)].filter((id) => document.records[id] !== undefined)
  const asked = chosen.filter((id) => mayGo(document.records[id]!))
  const gone = new Set(asked)
  for (let before = -1; before !== gone.size; ) {
    before = gone.size
    for (const record of Object.values(document.records)) if (!gone.has(record.id) && goesWith(record, gone)) gone.add(record.id)
  }
  const detached = Object.values(document.records).filter((record) => !gone.has(record.id) && isItem(record) && carrierGone(record.place, gone)).map(({ id }) => id)
  const others = [...gone].filter((id) => !asked.includes(id))
  return { goes: [...gone], goesWith: others, detached, kept: chosen.filter((id) => !gone.has(id)), text: sentence(document, others, detached) }
}

const carrierGone = (place: { at: string; runId?: string; itemId?: string }, gone: ReadonlySet<string>): boolean => gone.has(place.runId ?? '') || gone.has(place.itemId ?? '')

function sentence(document: YardDocument, others: readonly string[], detached: readonly string[]): Localized | null {
  if (others.length === 0 && detached.length === 0) return null
  const named = (ids: readonly string[], language: 'en' | 'es'): string => {
    const names = new Map<string, number>()
    for (const id of ids) {
      const text = whatText(document, [id])[language]
      names.set(text, (names.get(text) ?? 0) + 1)
    }
    return [...names].map(([name, count]) => (count === 1 ? name : `${count} × ${name}`)).join(', ')
  }
  const en = [others.length > 0 ? `With it goes: ${named(others, 'en')}.` : '', detached.length > 0 ? `Stays where it is, no longer attached: ${named(detached, 'en')}.` : '']
  const es = [others.length > 0 ? `Con ello se borra: ${named(others, 'es')}.` : '', detached.length > 0 ? `Queda donde está, ya sin fijar: ${named(detached, 'es')}.` : '']
  return { en: en.filter(Boolean).join(' '), es: es.filter(Boolean).join(' ') }
}

/** Deletes what may go, with what `deleteSays` names; references to it become none. */
export const remove = defineCommand({
  name: 'remove',
  args: z.strictObject({ ids: idsArg }),
  run: (document, { ids }) => {
    const { goes, detached } = deleteSays(document, ids)
    const gone = new Set(goes)
    const put: YardRecord[] = detached.flatMap((id) => {
      const item = document.records[id]
      return isItem(item) ? [withPlace(item, freedPlace(document, item))] : []
    })
    for (const run of recordsOf(document, 'run')) if (!gone.has(run.id) && run.targetId !== null && gone.has(run.targetId)) put.push({ ...run, targetId: null })
    for (const string of recordsOf(document, 'string')) if (!gone.has(string.id) && string.joinedToId !== null && gone.has(string.joinedToId)) put.push({ ...string, joinedToId: null })
    return { put, remove: goes }
  },
  label: (document, { ids }) => stepOf({ en: 'delete', es: 'borrar' }, ids.length === 1 ? whatText(document, ids) : { en: `${ids.length} items`, es: `${ids.length} elementos` }),
})

