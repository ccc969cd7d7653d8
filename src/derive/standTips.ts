/** What pushes a stand over, along the line and across it (docs/formulas/tipping.md). */
import { limitParam, type Limit } from '../engine/limits.ts'
import { nosePush, standingRatio } from '../engine/lateral/tipping.ts'
import { breakawayFactors, frictionOf } from '../engine/pipe/tables.ts'
import { forceAtHead } from '../engine/pull/forces.ts'
import type { StandRecord } from '../scene/kinds/stand.ts'
import { gravityMPerS2 } from '../units/factors.ts'
import type { LimitLookup, Mechanics } from './mechanics.ts'
import type { NoseArrival } from './noseArrivals.ts'
import { guideGeometryOf } from './sideForces.ts'
import { guideLoadAtN, stringOn, stringPullOf, waysOf } from './stringPull.ts'
import type { RunBend, SiteModel, SupportView } from './types.ts'

/** Drag of the pulled pipe, a nose riding up, a bend, a stand off the line while fusing, a turned roller while pulling. */
export type TipCause = 'drag' | 'nose' | 'bend' | 'offLine' | 'turned'

export interface StandPush {
  view: SupportView
  cause: TipCause
  pushN: number
  heightM: number
  /** Standing moment over tipping moment; null while the base is unknown. With the stand's own weight unknown it is counted as nothing: at least that much. */
  ratio: number | null
  /** Figures of the stand that would tell more. */
  missing: readonly ('massKg' | 'baseLengthM' | 'baseWidthM')[]
}

export interface NoseStrike {
  view: SupportView
  droopM: number
  /** Push that tips the stand with nothing on it yet; null while mass or base are unknown. */
  tipsAtN: number | null
}

/** Every push on every stand that is known, in the order of the stands. Ground rollers and racks are too low or too heavy to ask. */
export function standPushesOf(site: SiteModel, mechanics: Mechanics, limits: LimitLookup): readonly StandPush[] {
  const stands = standsOf(site)
  return stands.flatMap((view) => pushesOn(site, view, mechanics, limits))
}

/** Stands a free nose runs into: too low for their lead-in, under the roller's middle, and nobody lifts it. */
export function noseStrikesOf(site: SiteModel, mechanics: Mechanics): readonly NoseStrike[] {
  if (!comesFree(site)) return []
  return mechanics.arrivals().filter(strikes).map(({ view, droopM }) => {
    const { figures } = recordOf(site, view)
    const tips = figures.massKg.value === null || figures.baseLengthM.value === null || view.saddleM === null ? null : (figures.massKg.value * gravityMPerS2 * figures.baseLengthM.value) / 2 / Math.max(0.01, view.saddleM - droopM)
    return { view, droopM, tipsAtN: tips }
  })
}

const SLACK_M = 0.0005

const standsOf = (site: SiteModel): SupportView[] => site.supports.filter(({ kind, saddleM }) => kind === 'stand' && saddleM !== null && saddleM > 0)
const recordOf = (site: SiteModel, view: SupportView): StandRecord => site.placed.get(view.itemId)!.record as StandRecord
const comesFree = ({ job }: SiteModel): boolean => job.noseHold === 'free' || job.noseHold === 'sled'

function strikes({ view, droopM, leadInM }: NoseArrival): boolean {
  const ridesUp = view.rollerRadiusM !== null && droopM <= view.rollerRadiusM
  return view.kind === 'stand' && view.landingAid === 'none' && droopM > leadInM + SLACK_M && !ridesUp
}

function pushesOn(site: SiteModel, view: SupportView, mechanics: Mechanics, limits: LimitLookup): StandPush[] {
  const { figures } = recordOf(site, view)
  const judge = (cause: TipCause, axis: 'along' | 'across', pushN: number, loadN: number): StandPush => {
    const baseM = axis === 'along' ? figures.baseLengthM.value : figures.baseWidthM.value
    const standN = (figures.massKg.value ?? 0) * gravityMPerS2
    const ratio = baseM === null ? null : standingRatio({ pushN, heightM: view.saddleM!, loadN, standN, baseM })
    return { view, cause, pushN, heightM: view.saddleM!, ratio, missing: [...(figures.massKg.value === null ? ['massKg' as const] : []), ...(baseM === null ? [axis === 'along' ? ('baseLengthM' as const) : ('baseWidthM' as const)] : [])] }
  }
  const pushes: StandPush[] = []
  const loadN = mechanics.loads().get(view.key)?.loadN ?? 0
  if (loadN > 0 && view.side === 'exit') pushes.push(judge('drag', 'along', loadN * frictionOf('rollers').pullHigh * breakawayFactors.high, loadN))
  const nose = comesFree(site) ? nosePushOn(view, mechanics, limits.limit('tip-factor')) : null
  if (nose !== null) pushes.push(judge('nose', 'along', nose.pushN, nose.loadN))
  const offLine = mechanics.sideForces().flatMap(({ guides }) => guides.filter((guide) => guide.view.key === view.key && Math.abs(guide.forceN) > 0))
  pushes.push(...offLine.map((guide) => judge('offLine', 'across', Math.abs(guide.forceN), guide.loadN)).toSorted(bySafety).slice(0, 1))
  const turnRad = Math.min(Math.abs(view.turnRad), Math.PI - Math.abs(view.turnRad))
  if (loadN > 0 && turnRad > (limits.limit('line-up-turn').check ?? Infinity) + 1e-6) pushes.push(judge('turned', 'across', loadN * guideGeometryOf(limits.limit('guide-hold')).sideFrictionRatio, loadN))
  const bend = site.bends.find(({ fromM, toM }) => view.runningM >= fromM - SLACK_M && view.runningM <= toM + SLACK_M)
  const atBend = bend === undefined ? null : bendPushOn(site, view, bend)
  if (atBend !== null) pushes.push(judge('bend', 'across', atBend.pushN, atBend.loadN))
  return pushes
}

const bySafety = (a: StandPush, b: StandPush): number => (a.ratio ?? 0) - (b.ratio ?? 0)

function nosePushOn(view: SupportView, mechanics: Mechanics, limit: Limit): { pushN: number; loadN: number } | null {
  const arrival = mechanics.arrivals().find(({ key }) => key === view.key)
  if (arrival === undefined || view.landingAid !== 'none' || strikes(arrival) || arrival.droopM <= 0) return null
  const liftN = mechanics.liftN(arrival)
  return liftN === null ? null : nosePush({ droopM: arrival.droopM, liftN, rollerRadiusM: view.rollerRadiusM, steepestRad: limitParam(limit, 'steepestNoseRad') })
}

/** Pull behind the stand over the radius, for the pipe that is its share, and the couple that bends the pipe; null while the radius or the pull are unknown. */
function bendPushOn(site: SiteModel, view: SupportView, { radiusM }: RunBend): { pushN: number; loadN: number } | null {
  if (radiusM === null || stringPullOf(site).missing.length > 0 || view.runningM >= site.sticks.stringLengthM(site.sticks.stickCount)) return null
  const coupleN = guideLoadAtN(site, radiusM)
  if (coupleN === null) return null
  const ways = waysOf(site)
  const { body, headM } = stringOn(ways, ways.start, ways.startM, view.runningM)
  const shareM = shareOf(site, view)
  return { pushN: (forceAtHead(body, headM).forceN * shareM) / radiusM + coupleN, loadN: ways.lineLoadNPerM * shareM }
}

/** Half the way to the support before and half that to the one behind; a stick where there is none. */
function shareOf(site: SiteModel, view: SupportView): number {
  const stickM = site.sticks.stickLengthM ?? 0
  const before = site.supports.filter(({ runningM }) => runningM < view.runningM - 0.02).at(-1)?.runningM ?? view.runningM - stickM
  const behind = site.supports.find(({ runningM }) => runningM > view.runningM + 0.02)?.runningM ?? view.runningM + stickM
  return Math.min(stickM, (behind - before) / 2)
}
