import type { z } from 'zod'
import type { Localized } from '../messages/localized.ts'
import type { QuantityKind } from '../units/quantity.ts'
import type { Primitive, SymbolContext } from '../drawing/primitives.ts'

/** Which drawer of the gear edge a kind lies in; null: not placed by hand from there. */
export type GearGroup = 'line' | 'lift' | 'site' | 'people'

/**
 * How a kind is drawn on to the plan by hand:
 * `item` has a place (tap or drag), `polygon` and `polyline` are tapped point by point, `none` is not placed.
 */
export type PlacingGesture = 'item' | 'polygon' | 'polyline' | 'point' | 'none'

/** A field shown in the tag of a selected item and editable there. Path is dotted inside the record, e.g. `figures.ratedLoadN.value`. */
export interface FieldDefinition {
  path: string
  label: Localized
  /** `length` fields read and write feet-and-inches; `choice` needs `choices`; `text` and `yesNo` as named; `phases` is a set of phases. */
  input: { as: 'quantity'; kind: QuantityKind; min?: number; max?: number; nullable?: boolean } | { as: 'choice'; choices: readonly { value: string | null; label: Localized }[] } | { as: 'text' } | { as: 'yesNo'; nullable?: boolean } | { as: 'phases' }
  /** Shown in the first three lines of the tag; others come under 'more'. */
  first?: boolean
}

/**
 * Everything the app knows about one kind of record; a new kind is one file and one line in kinds/index.ts.
 * Shared code asks these properties and never branches on `kind`.
 */
export interface KindDefinition<R extends { id: string; kind: string } = { id: string; kind: string }> {
  kind: R['kind']
  idPrefix: string
  schema: z.ZodType<R>
  name: Localized
  gear: GearGroup | null
  placing: PlacingGesture
  /** Letter of derived labels (E1 and I1 for supports by side: see `supportsPipe`). */
  labelLetter: string
  /** True when it takes part in the contact beam as something the pipe lies on. */
  supportsPipe?: boolean
  /** True when it stays across the axis when placed near it (stands, rollers, rack, machine). */
  ridesOnRun?: boolean
  /** New record with typical figures. Ids come from the edge. */
  create: (id: string, at: CreateAt) => R
  fields: readonly FieldDefinition[]
  /** Outline in the item's local frame (flat points, m), for clearance, selection and bounds; empty for features, which carry their own. */
  footprint: (record: R, context: SymbolContext) => readonly number[]
  planSymbol: (record: R, context: SymbolContext) => readonly Primitive[]
  /** Side view at its place: x along the run, y up from the ground, metres; `saddleM` is BOP above ground there or null. */
  sectionSymbol?: (record: R, context: SymbolContext & { saddleM: number | null }) => readonly Primitive[]
}

export interface CreateAt {
  place: import('./parts.ts').Place
  /** For features: points in the site frame. */
  points?: readonly { xM: number; yM: number }[]
  setUpId: string
  runId: string
}

/** Keeps the record type inside the definition and hands out the general one. */
export const defineKind = <R extends { id: string; kind: string }>(definition: KindDefinition<R>): KindDefinition<R> => definition
