/** A stick on its way from the rack into the jaws: does it tip, and does its front end meet lift and jaw (docs/formulas/feed.md). */
import { bodies, type BodySolver } from './bodies.ts'
import { jawLineLevelM, typicalLeadInM } from './supports.ts'
import type { SiteModel } from './types.ts'

const JUST_SHORT_M = 0.002

/**
 * Running distance of the front end of the loaded stick: its middle over the middle of the rack, the front end never
 * past the joint plane. Without a rack the stick is set straight into the infeed jaws (0).
 */
export function feedStartM(site: SiteModel): number {
  const beams = site.supports.filter(({ kind, side }) => kind === 'rack' && side === 'infeed')
  const stickM = site.sticks.stickLengthM ?? 0
  if (beams.length === 0) return 0
  const middleM = beams.reduce((sum, { runningM }) => sum + runningM, 0) / beams.length
  return Math.min(0, middleM + stickM / 2)
}

/** What a stick can rest on while it is fed. */
interface FeedPlace {
  runningM: number
  name: 'support' | 'lift' | 'outerJaw' | 'innerJaw'
  label: string
  levelM: number | null
}

export interface FeedTip {
  /** Front end of the stick where it tips. */
  frontM: number
  /** Places under it there. */
  under: number
  /** Weight beyond the outermost place: towards the jaws (+) or back (−). */
  overByM: number
}

export interface FrontEnd {
  place: FeedPlace['name']
  runningM: number
  /** Front end below the place it comes to. */
  droopM: number
  leadInM: number
}

export interface FeedSolve {
  startM: number
  tips: FeedTip | null
  frontEnds: readonly FrontEnd[]
}

function placesOf(site: SiteModel): FeedPlace[] {
  const { jaws } = site
  const at = (runningM: number, name: FeedPlace['name'], raisedM = 0): FeedPlace => ({ runningM, name, label: '', levelM: (jawLineLevelM(jaws, runningM) ?? 0) + raisedM })
  const supports = site.supports
    .filter(({ runningM, levelM }) => runningM < 0 && levelM !== null)
    .map(({ runningM, label, levelM }): FeedPlace => ({ runningM, name: 'support', label, levelM }))
  return [...supports, at(-jaws.liftAtM, 'lift', jaws.liftTravelM), at(-jaws.outerClampM, 'outerJaw'), at(-jaws.innerClampM, 'innerJaw')].sort((a, b) => a.runningM - b.runningM)
}

/** Positions at which what lies under the stick changes: front just short of a place, tail just past one; and both ends of the way. */
function positionsOf(startM: number, stickM: number, places: readonly FeedPlace[]): number[] {
  const events = places.flatMap(({ runningM }) => [runningM - JUST_SHORT_M, runningM + stickM + JUST_SHORT_M])
  return [startM, ...events.filter((frontM) => frontM > startM && frontM < 0), 0].sort((a, b) => a - b)
}

/** Null where pipe or stick are unknown. The worst position is the one with the weight farthest out. */
export function solveFeed(site: SiteModel, solver: BodySolver): FeedSolve | null {
  const stickM = site.sticks.stickLengthM
  if (stickM === null || solver.missing.length > 0) return null
  const startM = feedStartM(site)
  const places = placesOf(site)
  let tips: FeedTip | null = null
  for (const frontM of positionsOf(startM, stickM, places)) {
    const under = places.filter(({ runningM }) => runningM <= frontM && runningM >= frontM - stickM)
    const middleM = frontM - stickM / 2
    const [first, last] = [under[0], under.at(-1)]
    const overByM = first === undefined || last === undefined ? Infinity : middleM > last.runningM ? middleM - last.runningM : middleM < first.runningM ? middleM - first.runningM : 0
    const isTipping = under.length < 2 || overByM !== 0
    if (isTipping && (tips === null || Math.abs(overByM) > Math.abs(tips.overByM))) tips = { frontM, under: under.length, overByM: Number.isFinite(overByM) ? overByM : 0 }
  }
  const leadInM = typicalLeadInM(site.pipe.odM) ?? 0
  const frontEnds = tips !== null ? [] : places
    .filter(({ runningM }) => runningM - JUST_SHORT_M > startM)
    .flatMap((place): FrontEnd[] => {
      const solution = solver.solve(bodies.feeding(site, place.runningM - JUST_SHORT_M))
      if (solution === null || solution.result.status !== 'ok' || place.levelM === null) return []
      return [{ place: place.name, runningM: place.runningM, droopM: place.levelM - solution.result.ends.levelM[1], leadInM }]
    })
  return { startM, tips, frontEnds }
}
