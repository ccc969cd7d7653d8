/** What pulls the string and with how much: rating, grip, rope, and how its rope leads (docs/formulas/stages.md). */
import type { PullerRecord } from '../../scene/kinds/puller.ts'
import type { Surface } from '../../scene/records/frame.ts'
import { gravityMPerS2 } from '../../units/factors.ts'
import type { LimitLookup } from '../mechanics.ts'
import type { PlacedItem, SiteModel } from '../types.ts'

const FIRM: ReadonlySet<Surface> = new Set(['gravel', 'asphalt', 'concrete', 'mat', 'grass'])
/** A rope more than this out of line pulls the nose aside and not ahead. */
const MOST_LEAD_RAD = Math.PI / 3

export interface PullerView {
  item: PlacedItem & { record: PullerRecord }
  ratedN: number | null
  ropeN: number | null
}

/** The first puller of the plan; null where there is none. */
export function pullerOf(site: SiteModel): PullerView | null {
  for (const item of site.placed.values()) {
    if (item.record.kind !== 'puller') continue
    const { figures } = item.record
    return { item: { ...item, record: item.record }, ratedN: figures.towRatingN.value, ropeN: figures.ropeRatingN.value }
  }
  return null
}

export interface UsableTow {
  usableN: number
  by: 'rating' | 'grip'
  /** False while the other of the two is unknown: it may still be less. */
  isWhole: boolean
  /** Limit that gives the grip on this ground. */
  gripLimitId: 'grip-firm' | 'grip-soft'
}

/**
 * What the puller can use with the nose at a place: the smaller of rating and grip (share of its weight by surface), as far
 * as they are known. A winch needs no grip. Null where neither is known.
 */
export function usableTow(site: SiteModel, { item: { record }, ratedN }: PullerView, limits: LimitLookup, noseM: number): UsableTow | null {
  const surface = site.surfaceAt(noseM)
  const gripLimitId = surface !== null && FIRM.has(surface) ? 'grip-firm' : 'grip-soft'
  const massKg = record.figures.massKg.value
  const isWinch = record.pullerKind === 'winch'
  const gripN = isWinch || massKg === null ? null : (limits.limit(gripLimitId).fix ?? 0) * massKg * gravityMPerS2
  const isByGrip = gripN !== null && (ratedN === null || gripN < ratedN)
  const usableN = isByGrip ? gripN : ratedN
  return usableN === null ? null : { usableN, by: isByGrip ? 'grip' : 'rating', isWhole: ratedN !== null && (isWinch || massKg !== null), gripLimitId }
}

/**
 * Angle between the nose's way and its rope in plan. What drives goes ahead of the nose by the length of its rope, along the
 * run; a winch stays where it stands. Null where it does not lead: no rope length, at or behind the nose, too far aside.
 */
export function ropeLeadRad(site: SiteModel, { item }: PullerView, noseM: number): number | null {
  const nose = site.atRunning(noseM)
  const ropeM = item.record.figures.ropeLengthM.value
  if (item.record.pullerKind !== 'winch' && ropeM === null) return null
  const to = item.record.pullerKind === 'winch' ? item : site.atRunning(noseM + (ropeM ?? 0))
  const [dxM, dyM] = [to.xM - nose.xM, to.yM - nose.yM]
  if (Math.hypot(dxM, dyM) < 1e-6) return null
  const leadRad = Math.abs(Math.atan2(Math.cos(nose.headingRad) * dyM - Math.sin(nose.headingRad) * dxM, Math.cos(nose.headingRad) * dxM + Math.sin(nose.headingRad) * dyM))
  return leadRad > MOST_LEAD_RAD ? null : leadRad
}
