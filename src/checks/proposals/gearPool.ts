/** Stands and rollers to choose from: the crew's list, else what stands on the plan, else typical gear. */
import type { SiteModel } from '../../derive/types.ts'
import { gearOf, withGear, type GearItem } from '../../scene/gear.ts'
import { kindOf, type PlacedRecord } from '../../scene/kinds/index.ts'
import type { RollerRecord } from '../../scene/kinds/roller.ts'
import type { StandRecord } from '../../scene/kinds/stand.ts'
import type { Sort } from './types.ts'

type Kind = Sort['kind']
type Record_ = StandRecord | RollerRecord

const anywhere = { place: { at: 'free', xM: 0, yM: 0, headingRad: 0 }, setUpId: 'setUp:any', runId: 'run:any' } as const
/** A stand whose plate nobody has read goes as low and as high as a typical one. */
const TYPICAL_LOWEST_M = 0.4572
const TYPICAL_HIGHEST_M = 1.0668
const TYPICAL_BASE_M = 0.6

const typicalOf = (kind: Kind): Record_ => kindOf(kind)!.create(`${kind}:any`, anywhere) as Record_

function sortOf(record: Record_, from: Sort['from'], gear: GearItem | null, count: number): Sort {
  const { figures } = record
  const rollerM = record.kind === 'roller' && record.height.rule === 'aboveGround' ? record.height.saddleM : 0.1524
  const { height, landingAid } = typicalOf(record.kind)
  return {
    kind: record.kind, gear, from, count,
    // A ground roller has no range: it stands as high as it is.
    lowestSaddleM: record.kind === 'stand' ? (record.figures.lowestSaddleM.value ?? TYPICAL_LOWEST_M) : rollerM,
    highestSaddleM: record.kind === 'stand' ? (record.figures.highestSaddleM.value ?? TYPICAL_HIGHEST_M) : rollerM,
    ratedLoadN: figures.ratedLoadN.value,
    leadInM: figures.leadInM.value,
    rollerRadiusM: figures.rollerRadiusM.value,
    baseLengthM: figures.baseLengthM.value ?? TYPICAL_BASE_M,
    baseWidthM: figures.baseWidthM.value ?? TYPICAL_BASE_M,
    patch: { ...(record.kind === 'stand' ? { roller: record.roller } : {}), height: record.kind === 'roller' ? record.height : height, landingAid, gearId: gear?.id ?? record.gearId, figures },
  }
}

/**
 * Sorts of one kind with how many of each may be placed. Entries of the list that are used by locked items count against it.
 * A list that names none of the kind says nothing about it: the plan's own first item, else typical gear, uncounted.
 */
export function sortsOf(site: SiteModel, kind: Kind, owned: readonly GearItem[] | null): Sort[] {
  const listed = (owned ?? []).filter((entry) => entry.kind === kind)
  if (listed.length > 0) {
    const lockedBy = (entry: GearItem): number => [...site.placed.values()].filter(({ record }) => record.kind === kind && record.locked && gearOf(record, owned ?? [])?.id === entry.id).length
    return listed.map((entry) => sortOf(withGear(typicalOf(kind) as PlacedRecord, entry) as Record_, 'owned', entry, entry.count === null ? Infinity : Math.max(0, entry.count - lockedBy(entry))))
  }
  const first = site.supports.map(({ itemId }) => site.placed.get(itemId)?.record).find((record): record is Record_ => record?.kind === kind)
  return [first === undefined ? sortOf(typicalOf(kind), 'typical', null, Infinity) : sortOf(first, first.figures.ratedLoadN.value === null ? 'typical' : 'plan', null, Infinity)]
}

/** What is left of the sorts while a plan is drawn up. */
export interface Pool {
  /** Takes one that reaches the saddle height, the one that reaches least beyond it; null where none is left. */
  take: (kind: Kind, saddleM: number) => Sort | null
  /** The one `take` would give. */
  peek: (kind: Kind, saddleM: number) => Sort | null
  /** Whether any of the kind reaches the height, taken or not. */
  reaches: (kind: Kind, saddleM: number) => boolean
  lowestM: number
  highestM: number
  rollerM: number
}

/** Nobody sets a height finer than this. */
const SLACK_M = 0.0005
const covers = (sort: Sort, saddleM: number): boolean => saddleM >= sort.lowestSaddleM - SLACK_M && saddleM <= sort.highestSaddleM + SLACK_M

export function poolOf(stands: readonly Sort[], rollers: readonly Sort[]): Pool {
  const used = new Map<Sort, number>()
  const of = (kind: Kind): readonly Sort[] => (kind === 'stand' ? stands : rollers)
  const usable = stands.filter(({ count }) => count > 0)
  const lowRollers = rollers.filter(({ count }) => count > 0)
  const peek: Pool['peek'] = (kind, saddleM) => {
    const fitting = of(kind).filter((sort) => (kind === 'roller' || covers(sort, saddleM)) && (used.get(sort) ?? 0) < sort.count)
    return fitting.toSorted((a, b) => a.highestSaddleM - b.highestSaddleM || b.count - a.count)[0] ?? null
  }
  return {
    peek,
    take: (kind, saddleM) => {
      const best = peek(kind, saddleM)
      if (best !== null) used.set(best, (used.get(best) ?? 0) + 1)
      return best
    },
    reaches: (kind, saddleM) => of(kind).some((sort) => sort.count > 0 && covers(sort, saddleM)),
    lowestM: Math.min(...usable.map(({ lowestSaddleM }) => lowestSaddleM)),
    highestM: Math.max(...usable.map(({ highestSaddleM }) => highestSaddleM)),
    rollerM: lowRollers[0]?.lowestSaddleM ?? rollers[0]?.lowestSaddleM ?? 0.1524,
  }
}
