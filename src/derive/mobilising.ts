/** What to bring: counts from the plan with spares, sticks and truckloads. */
import { truckload, withSpares, type Truckload } from '../engine/haul/truckload.ts'
import { kindOf } from '../scene/kinds/index.ts'
import type { Localized } from '../messages/localized.ts'
import type { SiteModel } from './types.ts'

export interface MobilisingRow {
  kind: string
  name: Localized
  placed: number
  /** With spares. */
  bring: number
  /** Range of saddles asked of the pieces placed, m; null where no height is known or the kind has none. */
  saddleM: { lowM: number; highM: number } | null
}

export interface MobilisingList {
  rows: readonly MobilisingRow[]
  sticks: number
  sticksAssumed: boolean
  stickMassKg: number | null
  truck: Truckload | null
}

/**
 * Mobilising list of the shown set-up.
 *
 * Model:  every placed item of gear (not site, not people) counted by kind, spares by house rule
 *         (shared/tables/haul.json); sticks of the plan; truckloads by room and mass. Mass and trucks are null while
 *         the pipe or the stick length is unknown.
 */
export function mobilisingOf(site: SiteModel): MobilisingList {
  const counts = new Map<string, number>()
  for (const { kind } of site.placed.values()) {
    const definition = kindOf(kind)
    if (definition === undefined || (definition.gear !== 'line' && definition.gear !== 'lift')) continue
    counts.set(kind, (counts.get(kind) ?? 0) + 1)
  }
  const saddles = (kind: string): MobilisingRow['saddleM'] => {
    const known = site.supports.flatMap((support) => (support.kind === kind && support.saddleM !== null ? [support.saddleM] : []))
    return known.length === 0 ? null : { lowM: Math.min(...known), highM: Math.max(...known) }
  }
  const { properties } = site.pipe
  const { stickLengthM, stickCount } = site.sticks
  const stickMassKg = properties === null || stickLengthM === null ? null : properties.massKgPerM * stickLengthM
  return {
    rows: [...counts].map(([kind, placed]) => ({ kind, name: kindOf(kind)!.name, placed, bring: withSpares(kind, placed), saddleM: saddles(kind) })),
    sticks: stickCount,
    sticksAssumed: site.sticks.countAssumed,
    stickMassKg,
    truck: properties === null || stickMassKg === null ? null : truckload({ odM: properties.odM, stickMassKg, sticks: stickCount }),
  }
}
