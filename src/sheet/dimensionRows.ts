/** Rows of the running-dimension table: what stands along the line, in the order of the tape. */
import type { PlacedItem, SupportView } from '../derive/types.ts'
import type { KindDefinition } from '../scene/kindDefinition.ts'
import type { Localized } from '../messages/localized.ts'
import { kindOf, type PlacedRecord } from '../scene/kinds/index.ts'
import type { ImageContent, Reader } from './content.ts'

export interface DimensionRow {
  label: string
  item: string
  distance: string
  offset: string
  saddle: string
  carries: string
}

export const MOST_ROWS = 24

interface Candidate {
  runningM: number
  /** Lower numbers stay when there are more than fit: what the pipe lies on and the jaws, what pulls it, people, vehicles and their places. */
  rank: number
  row: () => DimensionRow
}

/** Rank of a kind in a table along the line; null: not in it. */
export const rankOf = (kind: KindDefinition<PlacedRecord> | undefined): number | null => {
  if (kind?.gear === 'line') return 0
  if (kind?.gear === 'lift') return kind.ridesOnRun === true ? 1 : 3
  return kind?.gear === 'people' ? 2 : null
}

const supportRow = (support: SupportView, { site, profile }: ImageContent, reader: Reader): DimensionRow => ({
  label: support.label,
  item: reader.local(kindOf(support.kind)?.name ?? { en: '', es: '' }),
  distance: reader.runningBoth(support.runningM),
  offset: reader.offsetBoth(support.offsetM),
  saddle: reader.both({ kind: 'height', value: support.saddleM }, { style: 'tape' }),
  carries: carriesWords(support, site.sticks.stickLengthM === null ? null : profile, reader),
})

/** '?' wherever the load is not known; a solve that did not settle gives no figure. */
const carriesWords = (support: SupportView, profile: ImageContent['profile'] | null, reader: Reader): string => {
  if (profile === null || profile.status !== 'ok' || support.levelM === null) return '?'
  const load = profile.loads.get(support.key)
  if (load === undefined) return reader.say('noPipe')
  return load.floats ? reader.say('floats') : reader.both({ kind: 'force', value: load.reactionN })
}

const itemRow = (item: PlacedItem, { site }: ImageContent, reader: Reader): DimensionRow => {
  const isMachine = item.id === site.jaws.machineId
  const { bopLevelM } = site.jaws
  return {
    label: item.label,
    item: isMachine ? reader.say('jaws') : reader.local(itemNameOf(item)),
    distance: reader.runningBoth(item.runningM),
    offset: reader.offsetBoth(item.offsetM),
    saddle: isMachine ? reader.both({ kind: 'height', value: bopLevelM === null ? null : bopLevelM - site.groundLevelAt(0) }, { style: 'tape' }) : reader.say('none'),
    carries: reader.say('none'),
  }
}

/** The choice a kind is told by (the task of a crew spot), else the name of the kind. */
export const itemNameOf = (item: PlacedItem): Localized => {
  const kind = kindOf(item.kind)
  const first = kind?.fields.find(({ first: isFirst, input }) => isFirst === true && input.as === 'choice')
  const chosen = first?.input.as === 'choice' ? first.input.choices.find(({ value }) => value === (item.record as Record<string, unknown>)[first.path]) : undefined
  return chosen?.label ?? kind?.name ?? { en: '', es: '' }
}

/**
 * Supports, jaws, gear for lifting and pulling, and crew spots that have a running distance, from the infeed end to the exit
 * end. At most MOST_ROWS; what is left out is counted: vehicles and people first, then what is farthest from the datum.
 */
export const dimensionRows = (content: ImageContent, reader: Reader): { rows: readonly DimensionRow[]; leftOut: number } => {
  const { site } = content
  const supportIds = new Set(site.supports.map(({ itemId }) => itemId))
  const candidates: Candidate[] = [
    ...site.supports.map((support): Candidate => ({ runningM: support.runningM, rank: 0, row: () => supportRow(support, content, reader) })),
    ...[...site.placed.values()].flatMap((item): Candidate[] => {
      const rank = rankOf(kindOf(item.kind))
      if (rank === null || item.runningM === null || supportIds.has(item.id) || !('place' in item.record)) return []
      return [{ runningM: item.runningM, rank, row: () => itemRow(item, content, reader) }]
    }),
  ]
  const kept = candidates.toSorted((a, b) => a.rank - b.rank || Math.abs(a.runningM) - Math.abs(b.runningM)).slice(0, MOST_ROWS)
  return { rows: kept.toSorted((a, b) => a.runningM - b.runningM).map(({ row }) => row()), leftOut: candidates.length - kept.length }
}
