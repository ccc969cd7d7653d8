/** What a zone is, and what one line of the catalogue must say. */
import type { Localized } from '../../messages/localized.ts'
import type { CrewRecord } from '../../scene/kinds/crew.ts'
import type { Phase, ZoneClass } from '../../scene/parts.ts'
import type { Vec } from '../../geometry/vector.ts'
import type { MissingInput, SiteModel, Stage } from '../types.ts'

export type CrewRole = CrewRecord['role']

export interface ZoneSource {
  class: 'published' | 'mechanics' | 'houseRule'
  cite: string
}

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
  /** Roles that may be inside while it is live. */
  mayEnter: readonly CrewRole[]
  /** `gear`: keeps machines and loads out (overhead lines); people are not judged by it. */
  keepsOut: 'people' | 'gear'
  source: ZoneSource
  /** Inputs not given: drawn dashed at the largest default with a question mark, one CHECK, no STOP or FIX from it. */
  missing: readonly MissingInput[]
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
  mayEnter?: readonly CrewRole[]
  missing?: readonly MissingInput[]
  /** Replaces the class of the catalogue where the hazard itself says so (pipe on a rack without stops). */
  zoneClass?: ZoneClass
}

/** A new zone is one file with such a definition and one line in the catalogue. */
export interface ZoneDefinition {
  id: string
  name: Localized
  sentence: Localized
  /** Class by phase; phases left out: not live. */
  classes: Partial<Record<Phase, ZoneClass>>
  mayEnter: readonly CrewRole[]
  keepsOut?: 'gear'
  source: ZoneSource
  size: Localized
  /** Of the stage only where the nose is (`noseAt`) may enter: shapes are kept by that. */
  shapes: (site: SiteModel, stage: Stage) => readonly ZoneShape[]
}
