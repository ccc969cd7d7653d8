/** What a zone is, and what one line of the catalogue must say. */
import type { Localized } from '../../messages/localized.ts'
import type { CrewRecord } from '../../scene/kinds/crew.ts'
import type { Phase, ZoneClass } from '../../scene/parts.ts'
import type { Vec } from '../../geometry/vector.ts'
import type { MissingInput, SiteModel, Stage } from '../types.ts'
import type { MayEnter } from './mayEnter.ts'

export type CrewRole = CrewRecord['role']

export interface ZoneSource {
  class: 'published' | 'mechanics' | 'houseRule'
  cite: string
}

/**
 * Who is judged by a zone: `people` on foot, `gear` (machines and loads alone: overhead lines, kept-clear lanes), or
 * `public` (everybody else; the crew works there).
 */
export type KeepsOut = 'people' | 'gear' | 'public'

/** A zone at a stage, ready to draw and to check. Rings are in the site frame, metres, counter-clockwise or clockwise. */
export interface Zone {
  /** `Z-09@puller:1a2b`; hand-drawn: `hand@zone:…`. Zone changes refer to it. */
  key: string
  /** Catalogue number, or 'hand'. */
  id: string
  name: Localized
  /** What to do, one sentence; said in the toolbox talk. */
  sentence: Localized
  zoneClass: ZoneClass
  /** Phases in which it lives at all. */
  phases: readonly Phase[]
  rings: readonly (readonly Vec[])[]
  /** Records it comes from. */
  itemIds: readonly string[]
  /** Tasks that may be inside while it is live: those of `entering`. */
  mayEnter: readonly CrewRole[]
  /** The same with the condition of each. */
  entering: readonly MayEnter[]
  keepsOut: KeepsOut
  source: ZoneSource
  /** Inputs not given: drawn dashed at the largest default with a question mark, one CHECK, no STOP or FIX from it. */
  missing: readonly MissingInput[]
  /** Check that asks for the missing inputs itself; null: the zones' own. */
  askedBy: string | null
  /** Why it was changed by hand; null where it was not. */
  changedBecause: string | null
  /** Which measure of it is a house rule, in words, for findings. */
  size: Localized
}

/** A shape as a definition gives it, before changes by hand. */
export interface ZoneShape {
  /** Record that names this one among several of the same number. */
  ownerId: string
  rings: readonly (readonly Vec[])[]
  itemIds: readonly string[]
  /** Beside those the definition lets in. */
  mayEnter?: readonly MayEnter[]
  missing?: readonly MissingInput[]
  /** Replaces what the catalogue says for this shape alone: a trench edge keeps people at 2 ft and machines farther off. */
  keepsOut?: KeepsOut
  /** Replaces the class of the catalogue where the hazard itself says so (pipe on a rack without stops). */
  zoneClass?: ZoneClass
  /** Replaces the sentence where it names a figure of this place. */
  sentence?: Localized
  size?: Localized
}

/** A new zone is one file with such a definition and one line in the catalogue. */
export interface ZoneDefinition {
  id: string
  name: Localized
  sentence: Localized
  /** Class by phase; phases left out: not live. */
  classes: Partial<Record<Phase, ZoneClass>>
  mayEnter: readonly MayEnter[]
  keepsOut?: KeepsOut
  source: ZoneSource
  size: Localized
  /** Check that names the missing inputs of this zone itself. */
  askedBy?: string
  /** What of a stage its shapes follow: where the nose is (`noseAt`), or that and the phase. Left out: nothing; shapes are kept by it. */
  follows?: 'nose' | 'noseAndPhase'
  shapes: (site: SiteModel, stage: Stage) => readonly ZoneShape[]
}
