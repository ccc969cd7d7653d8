import type { Localized } from '../messages/localized.ts'
import type { TextValue } from '../messages/render.ts'
import type { Quantity } from '../units/quantity.ts'
import type { MissingInput, SiteModel } from '../derive/types.ts'
import type { Phase } from '../scene/parts.ts'
import type { RunQuantities } from './quantities.ts'
import type { Source } from './source.ts'

export type { Source, SourceClass } from './source.ts'

export type Level = 'STOP' | 'FIX' | 'CHECK' | 'NOTE' | 'met'
export const levelOrder: readonly Level[] = ['STOP', 'FIX', 'CHECK', 'NOTE', 'met']

/** A sentence with its values; rendered in the reader's language and units at the edge. */
export interface Sentence {
  text: Localized
  values?: Record<string, TextValue>
}

/** A one-click remedy: a named command with plain arguments; accepted as one undoable edit, and only on the revision it was made from. */
export interface Remedy {
  command: string
  args: unknown
  label: Sentence
}

/** Plain JSON: survives a message to and from the worker. */
export interface Finding {
  checkId: string
  /** Stable across revisions while it is about the same thing: `${checkId}@…`. */
  key: string
  level: Level
  /** Missing input: level is CHECK and `missing` names the fields; counted apart. */
  isUnknown: boolean
  missing: readonly MissingInput[]
  itemIds: readonly string[]
  /** Place on the tape and, where known, level in the section; or a place in the site frame. */
  where: { at: 'run'; runningM: number; levelM: number | null; offsetM: number } | { at: 'site'; xM: number; yM: number } | null
  what: Sentence
  measured: Quantity | null
  limit: Quantity | null
  /** limit − measured in the sense that negative fails; null where there is none. */
  margin: Quantity | null
  source: Source
  phases: readonly Phase[]
  /** Joints in whose stages it holds, 0 for stick 1 being fed through; left out: all of its phases. */
  joints?: readonly number[]
  move: Sentence | null
  remedy: Remedy | null
  /** A panel in which the matter can be looked into, by its name in the shell; left out: none. */
  opens?: { panel: string; label: Sentence }
}

export interface CheckDefinition {
  /** Stable, kebab-case; also docs/checks/<id>.md. */
  id: string
  title: Localized
  /** Quick checks run in every drag frame; the others settle after the last move. */
  cost: 'quick' | 'slow'
  run: (site: SiteModel, tools: CheckTools) => readonly Finding[]
}

/** What checks share: limits with the document's changes applied, and solves made once a document. */
export interface CheckTools {
  limits: import('./limits.ts').Limits
  mechanics: import('../derive/mechanics.ts').Mechanics
  /** The crew's own gear; null where there is no list. */
  owned: readonly import('../scene/gear.ts').GearItem[] | null
}

export interface CheckRun {
  findings: readonly Finding[]
  /** Counts by level; `toConfirm` = findings of missing input. */
  counts: Record<Level, number> & { toConfirm: number }
  /** Figures of the supports; left out where only the quick checks ran. */
  quantities?: RunQuantities
}
