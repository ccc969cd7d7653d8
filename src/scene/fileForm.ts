import { kinds } from './kinds/index.ts'

export const FILE_FORMAT = 'stringyard'

/**
 * The lists of a file in their order, and which kinds of record each holds. A list of one kind leaves the kind out of its
 * records; layout and job stand alone, without id and kind.
 */
export interface Section {
  name: string
  kinds: readonly string[]
}

const drawnApart = ['crew', 'zone']
const items = kinds.filter(({ placing, kind }) => placing === 'item' && !drawnApart.includes(kind)).map(({ kind }) => kind as string)
const features = kinds.filter(({ placing, kind }) => placing !== 'item' && !drawnApart.includes(kind)).map(({ kind }) => kind as string)

export const sections: readonly Section[] = [
  { name: 'setUps', kinds: ['setUp'] },
  { name: 'runs', kinds: ['run'] },
  { name: 'strings', kinds: ['string'] },
  { name: 'items', kinds: items },
  { name: 'features', kinds: features },
  { name: 'zones', kinds: ['zone'] },
  { name: 'zoneChanges', kinds: ['zoneChange'] },
  { name: 'crew', kinds: ['crew'] },
  { name: 'limits', kinds: ['limitChange'] },
  { name: 'asSet', kinds: ['asSet'] },
  { name: 'releases', kinds: ['release'] },
  { name: 'assets', kinds: ['asset'] },
]

export type FileForm = { format: string; fileVersion: number } & Record<string, unknown>

type AnyRecord = { readonly id: string; readonly kind: string }

const without = (record: object, keys: readonly string[]): Record<string, unknown> => Object.fromEntries(Object.entries(record).filter(([key]) => !keys.includes(key)))

/**
 * Records put into the lists of a file, unchecked. With the lists and version they were written under this brings
 * stored work of an older version into the form that migrations and the reader know.
 */
export function formOfRecords(records: Readonly<Record<string, AnyRecord>>, fileVersion: number, lists: readonly Section[] = sections): FileForm {
  const filled = new Map<string, unknown[]>(lists.map(({ name }) => [name, []]))
  const frame: Record<string, unknown> = {}
  for (const record of Object.values(records)) {
    if (record.kind === 'layout' || record.kind === 'job') frame[record.kind] = without(record, ['id', 'kind'])
    const list = lists.find((one) => one.kinds.includes(record.kind))
    if (list !== undefined) filled.get(list.name)?.push(list.kinds.length === 1 ? without(record, ['kind']) : record)
  }
  return { format: FILE_FORMAT, fileVersion, layout: frame['layout'], job: frame['job'], ...Object.fromEntries(filled) }
}
