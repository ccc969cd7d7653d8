/** What a proposal asks for and what it answers; plain JSON both, so that it survives a message to and from a worker. */
import type { Quantity } from '../../units/quantity.ts'
import type { MissingInput } from '../../derive/types.ts'
import type { YardDocument } from '../../scene/document.ts'
import type { GearItem } from '../../scene/gear.ts'
import type { Localized } from '../../messages/localized.ts'
import type { Level, Sentence } from '../finding.ts'

export type ProposalKind = 'stands' | 'rollers'

export interface ProposalRequest {
  kind: ProposalKind
  document: YardDocument
  /** The crew's own gear; null: no list, typical gear stands in and the proposal says so. */
  owned: readonly GearItem[] | null
}

/** A sort of support to choose from. */
export interface Sort {
  kind: 'stand' | 'roller'
  /** Entry of the crew's list; null: taken from the plan, or typical. */
  gear: GearItem | null
  from: 'owned' | 'plan' | 'typical'
  /** How many may be placed; Infinity where nobody has counted. */
  count: number
  lowestSaddleM: number
  highestSaddleM: number
  ratedLoadN: number | null
  leadInM: number | null
  rollerRadiusM: number | null
  /** Length of its base along the line. */
  baseLengthM: number
  baseWidthM: number
  /** Fields of a new record of this sort beyond place and height. */
  patch: Record<string, unknown>
}

/** Why a support stands where it does. */
export type Why = 'level' | 'softStart' | 'layDown' | 'bridge' | 'row' | 'infeed'

/** One support of a plan under trial. */
export interface PlannedSupport {
  kind: 'stand' | 'roller'
  runningM: number
  height: { rule: 'onAxis' } | { rule: 'belowAxis'; dropM: number } | { rule: 'aboveGround'; saddleM: number }
  sort: Sort
  why: Why
  /** Droop of the free nose short of it, and what it takes in; null where no free nose arrives. */
  droopM: number | null
  leadInM: number | null
}

export interface SupportCounts {
  stands: number
  rollers: number
}

/** A finding as the panel lists it. */
export interface FindingLine {
  key: string
  checkId: string
  level: Level
  what: Sentence
}

export interface SupportReason {
  kind: 'stand' | 'roller'
  /** Stretch it holds for; one support has both the same. */
  fromM: number
  toM: number
  count: number
  text: Sentence
}

/** A limit that no arrangement of the gear meets. */
export interface Unmet {
  title: Localized
  what: Sentence
  /** Shortfall: how far the best arrangement stays from the limit; null where it has no size. */
  by: Quantity | null
  /** What gear would do it. */
  gear: Sentence
}

export interface ProposalCommand {
  command: string
  args: unknown
  label: Localized
}

interface Common {
  kind: ProposalKind
  /** Beam solves and whole check runs spent. */
  solveCount: number
  runCount: number
}

export type ProposalResult =
  | (Common & { status: 'found'; command: ProposalCommand; reasons: readonly SupportReason[]; said: readonly Sentence[]; present: SupportCounts; proposed: SupportCounts; clears: readonly FindingLine[]; toConfirm: readonly FindingLine[] })
  /** What stands there meets all of it with no more supports than a proposal would take. */
  | (Common & { status: 'nothing'; present: SupportCounts; proposed: SupportCounts | null })
  | (Common & { status: 'impossible'; unmet: readonly Unmet[] })
  | (Common & { status: 'missing'; missing: readonly MissingInput[] })

/** Share of the work done, 0 … 1; called between solves. */
export type OnProgress = (share: number) => void
