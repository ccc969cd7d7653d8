import type { SiteModel } from '../../derive/types.ts'
import { kindOf, type PlacedRecord } from '../../scene/kinds/index.ts'
import type { Words } from '../context.tsx'

/** Fields that tell varieties of a kind apart on the plan. */
const telling = ['roller', 'role', 'zoneClass', 'pullerKind']

/** Kind of an item in words, with the choice that tells it from others: 'pipe stand, V roller', 'crew spot, operator'. */
export const kindWords = (record: PlacedRecord, words: Words): string => {
  const kind = kindOf(record.kind)
  if (kind === undefined) return record.kind
  const choice = kind.fields.find(({ path, input }) => input.as === 'choice' && telling.includes(path))
  const value = choice === undefined ? undefined : (record as unknown as Record<string, unknown>)[choice.path]
  const label = choice?.input.as === 'choice' ? choice.input.choices.find((candidate) => candidate.value === value)?.label : undefined
  return label === undefined || value === null ? words.local(kind.name) : `${words.local(kind.name)}, ${words.local(label)}`
}

/** Label of an item where it has one, else its own name, else its kind. */
export const itemLabel = (site: SiteModel, record: PlacedRecord, words: Words): string => {
  const label = site.placed.get(record.id)?.label ?? ''
  if (label !== '') return label
  return 'name' in record && record.name !== '' ? record.name : words.local(kindOf(record.kind)?.name ?? { en: record.kind, es: record.kind })
}

/** What a reader without the picture hears: 'E2, pipe stand, flat roller, exit 25 ft 0 in'. */
export const spokenName = (site: SiteModel, record: PlacedRecord, words: Words): string => {
  const placed = site.placed.get(record.id)
  const parts = [itemLabel(site, record, words), kindWords(record, words)]
  if (placed !== undefined && placed.runningM !== null && 'place' in record) {
    parts.push(words.running(placed.runningM))
    if (placed.offsetM !== null && Math.abs(placed.offsetM) > 0.006) parts.push(words.offset(placed.offsetM))
  }
  return [...new Set(parts)].join(', ')
}
