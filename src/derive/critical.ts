/**
 * Critical support: each support near the jaws taken away in turn, and each let down by a given amount; what the joint makes of
 * it (docs/formulas/jaws.md).
 */
import { brokenBound, limitParam, type Limit } from '../engine/limits.ts'
import { bodySolverOf, type BodyCase, type BodySolution } from './bodies.ts'
import { effortOf, type JawSide, type Side } from './jawSolve.ts'
import type { LimitLookup, Mechanics } from './mechanics.ts'
import type { MissingInput, SiteModel, SupportView } from './types.ts'

export type JointLevel = 'met' | 'CHECK' | 'FIX'
const levelRank: readonly JointLevel[] = ['met', 'CHECK', 'FIX']

/** What carries an effect to its level: effort at the jaws, gap between the faces, change of offset, or a pipe that tips over. */
export type CriticalBy = 'effort' | 'faceGap' | 'offset' | 'tips' | 'notSettled'

/** What one change does at the joint it does most to. Figures are null where the pipe comes to no rest. */
export interface CriticalEffect {
  joint: number
  level: JointLevel
  by: CriticalBy
  /** Forces of the jaws on the pipe of that side, up positive. */
  innerN: number | null
  outerN: number | null
  /** C of that side, and how much more (+) or less it is than as set. */
  effortRatio: number | null
  effortChange: number | null
  /** Gap of both faces, and how much wider (+) than as set. */
  faceGapM: number | null
  faceGapChangeM: number | null
  /** How far the end of that side moves at the joint, up positive. */
  offsetChangeM: number | null
}

/** Plain JSON: survives a message from the worker. */
export interface CriticalSupport {
  key: string
  itemId: string
  label: string
  side: Side
  runningM: number
  removed: CriticalEffect
  sunk: CriticalEffect
  /** The worse of both. */
  level: JointLevel
  /** Place in the ranking, from 1; null where the joint bears both. */
  rank: number | null
}

export interface CriticalRanking {
  sinkM: number
  /** Inputs without which no body can be solved. */
  missing: readonly MissingInput[]
  /** Level of the worst joint with every support as it is set. */
  base: JointLevel
  /** Ranked ones first, the worst ahead; then the others from the jaws outward. */
  supports: readonly CriticalSupport[]
  /** Supports farther out than the last one tried, and where that one stands. */
  beyondCount: number
  reachM: number
}

/** Changes of C below this count as none: 1 % of the bound of CHECK, halved. */
const QUIET_EFFORT = 0.005
/** Bearing supports in a row that change nothing, after which none farther out is tried: each span passes on about a quarter. */
const QUIET_IN_A_ROW = 3

/**
 * Ranking of the supports by what the joint makes of their loss.
 *
 * Model:  the bodies of the closed jaws (docs/formulas/jaws.md), solved without the support and with it `sinkM` (m, > 0) lower, at
 *         every judged joint that reaches it. The level reached is the worst of C (limit `jaw-effort`), the gap of both faces
 *         (`face-gap`) and the movement of the end at the joint against the offset allowance (`offset-change`).
 *         A support is ranked where the level gets worse, or C changes by the step of `set-out-tolerance`; the order is by level,
 *         then by the largest change as a share of its FIX bound.
 * Limits: from the jaws outward supports are tried until three in a row that carry the pipe change C by less than 0.005 both
 *         ways; what stands farther out is counted. A body that tips over counts as FIX, one that does not settle as CHECK.
 * Note:   the solver keeps these bodies too: run the checks of a site before, or `not-settled` hears of them.
 * Fails:  RangeError where sinkM is not a positive number.
 */
export function criticalSupports(site: SiteModel, limits: LimitLookup, mechanics: Mechanics, sinkM: number): CriticalRanking {
  if (!(sinkM > 0) || !Number.isFinite(sinkM)) throw new RangeError(`the amount of sinking must be above 0, not ${sinkM}`)
  const solver = bodySolverOf(site)
  const known = site.supports.filter(({ levelM }) => levelM !== null)
  const none: CriticalRanking = { sinkM, missing: solver.missing, base: 'met', supports: [], beyondCount: known.length, reachM: 0 }
  const solved = mechanics.solvedJoints()
  if (solver.missing.length > 0 || solved.length === 0) return none
  const judge = judgeOf(site, limits)
  const step = limitParam(limits.limit('set-out-tolerance'), 'effortChange')
  const baseLevels = new Map(solved.map((one) => [one.joint, worse(judge.level({ effortRatio: one.effortRatio, faceGapM: one.faceGapM, offsetChangeM: 0 }))]))

  const tried = (view: SupportView, side: Side, change: Pick<BodyCase, 'shift' | 'without'>): Tried[] => solved.flatMap((one) => {
    if (side === 'exit' && site.sticks.stringLengthM(one.joint) < view.runningM) return []
    const base = one[side]
    const effect = readEffect(site, one.joint, base, one[side === 'infeed' ? 'exit' : 'infeed'], solver.solve({ ...base.body, ...change }), judge)
    return [{ effect, worsens: rankOf(effect.level) > rankOf(baseLevels.get(one.joint) ?? 'met'), share: judge.share(effect) }]
  })
  const judged = (['infeed', 'exit'] as const).flatMap((side) => {
    const found: Judged[] = []
    let quiet = 0
    const outward = known.filter(({ runningM }) => (side === 'infeed') === runningM < 0).toSorted((a, b) => Math.abs(a.runningM) - Math.abs(b.runningM))
    for (const view of outward) {
      const [removed, sunk] = [tried(view, side, { without: view.key }), tried(view, side, { shift: { key: view.key, byM: -sinkM } })]
      const all = [...removed, ...sunk]
      if (all.length === 0) continue
      const bears = solved.some((one) => one[side].closed.supports.some((support) => support.view.key === view.key && support.reactionN > 0))
      const isQuiet = all.every(({ effect }) => Math.abs(effect.effortChange ?? Infinity) < QUIET_EFFORT)
      quiet = !isQuiet ? 0 : bears ? quiet + 1 : quiet
      const { key, itemId, label, runningM } = view
      const worst = worstOf(all)
      found.push({
        support: { key, itemId, label, side, runningM, removed: worstOf(removed).effect, sunk: worstOf(sunk).effect, level: worst.effect.level },
        worst, matters: all.some(({ effect, worsens }) => worsens || (effect.effortChange ?? Infinity) >= step),
      })
      if (quiet >= QUIET_IN_A_ROW) break
    }
    return found
  })
  const ranked = judged.filter(({ matters }) => matters).toSorted((a, b) => order(a.worst, b.worst))
  const others = judged.filter(({ matters }) => !matters).toSorted((a, b) => Math.abs(a.support.runningM) - Math.abs(b.support.runningM))
  return {
    ...none,
    base: worse([...baseLevels.values()].map((level) => ({ level, by: 'effort' as const }))),
    supports: [...ranked.map(({ support }, i) => ({ ...support, rank: i + 1 })), ...others.map(({ support }) => ({ ...support, rank: null }))],
    beyondCount: known.length - judged.length,
    reachM: Math.max(0, ...judged.map(({ support }) => Math.abs(support.runningM))),
  }
}

interface Tried {
  effect: CriticalEffect
  /** The level of the joint gets worse by it. */
  worsens: boolean
  share: number
}

interface Judged {
  support: Omit<CriticalSupport, 'rank'>
  worst: Tried
  matters: boolean
}

interface Verdict {
  level: JointLevel
  by: CriticalBy
}

const rankOf = (level: JointLevel): number => levelRank.indexOf(level)
/** Worse first. */
const order = (a: Tried, b: Tried): number => rankOf(b.effect.level) - rankOf(a.effect.level) || b.share - a.share
const worstOf = (all: readonly Tried[]): Tried => all.reduce((worst, one) => (order(one, worst) < 0 ? one : worst))

const worse = (verdicts: readonly Verdict[]): JointLevel => verdicts.reduce<JointLevel>((worst, { level }) => (rankOf(level) > rankOf(worst) ? level : worst), 'met')

interface Judge {
  /** Lever of the limit on C, m. */
  leverM: number
  level: (figures: Pick<CriticalEffect, 'effortRatio' | 'faceGapM' | 'offsetChangeM'>) => Verdict[]
  /** Largest change as a share of its FIX bound; without end where the pipe comes to no rest. */
  share: (effect: CriticalEffect) => number
}

function judgeOf(site: SiteModel, limits: LimitLookup): Judge {
  const wallM = site.pipe.properties?.minimumWallM ?? null
  const [effort, gap, offset] = (['jaw-effort', 'face-gap', 'offset-change'] as const).map((id) => limits.limit(id)) as [Limit, Limit, Limit]
  const gapUnitM = wallM === null ? null : limitParam(gap, 'yardstickOfWall') * wallM
  const offsetUnitM = wallM === null ? null : limitParam(offset, 'allowanceOfWall') * wallM
  const levelOf = (limit: Limit, value: number): JointLevel => ({ fix: 'FIX', check: 'CHECK', none: 'met' } as const)[brokenBound(limit, value) ?? 'none']
  const part = (limit: Limit, change: number | null, unit: number | null): number => {
    const bound = limit.fix ?? limit.check
    return change === null ? Infinity : unit === null || bound === null ? 0 : change / unit / bound
  }
  return {
    leverM: limitParam(effort, 'leverM'),
    level: ({ effortRatio, faceGapM, offsetChangeM }) => [
      ...(effortRatio === null ? [] : [{ by: 'effort' as const, level: levelOf(effort, effortRatio) }]),
      ...(faceGapM === null || gapUnitM === null ? [] : [{ by: 'faceGap' as const, level: levelOf(gap, faceGapM / gapUnitM) }]),
      ...(offsetChangeM === null || offsetUnitM === null ? [] : [{ by: 'offset' as const, level: levelOf(offset, Math.abs(offsetChangeM) / offsetUnitM) }]),
    ],
    share: ({ effortChange, faceGapChangeM, offsetChangeM }) => Math.max(
      part(effort, effortChange, 1), part(gap, faceGapChangeM, gapUnitM), part(offset, offsetChangeM === null ? null : Math.abs(offsetChangeM), offsetUnitM),
    ),
  }
}

const atNoRest = { innerN: null, outerN: null, effortRatio: null, effortChange: null, faceGapM: null, faceGapChangeM: null, offsetChangeM: null } as const

function readEffect(site: SiteModel, joint: number, base: JawSide, other: JawSide, solution: BodySolution | null, judge: Judge): CriticalEffect {
  if (solution === null || solution.result.status !== 'ok') {
    const isUnsettled = solution !== null && solution.result.status === 'notConverged'
    return { joint, level: isUnsettled ? 'CHECK' : 'FIX', by: isUnsettled ? 'notSettled' : 'tips', ...atNoRest }
  }
  const { result, jaws } = solution
  const force = (at: 'inner' | 'outer'): number => jaws.find((jaw) => jaw.at === at)?.forceN ?? 0
  const [innerN, outerN] = [force('inner'), force('outer')]
  const effortRatio = effortOf(site, solution, judge.leverM)
  const angleRatio = result.ends.slopeRatio[base.side === 'infeed' ? 1 : 0] - site.jaws.slopeRatio
  const gapM = Math.abs(angleRatio) * (site.pipe.odM ?? 0)
  const faceGapM = gapM + other.gapM
  const offsetChangeM = result.at(0).levelM - base.closed.result.at(0).levelM
  const worst = judge.level({ effortRatio, faceGapM, offsetChangeM }).reduce<Verdict>((most, one) => (rankOf(one.level) > rankOf(most.level) ? one : most), { level: 'met', by: 'effort' })
  return { joint, ...worst, innerN, outerN, effortRatio, effortChange: effortRatio - base.effortRatio, faceGapM, faceGapChangeM: gapM - base.gapM, offsetChangeM }
}
