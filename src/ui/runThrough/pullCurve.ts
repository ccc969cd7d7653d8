/** The pull over the stages as lines to draw: running distance of the nose across, N up. Pure. */
import type { StageResult } from '../../derive/stages/types.ts'
import type { UnitSystem } from '../../units/format.ts'
import { poundForceN } from '../../units/factors.ts'

export type LimitName = 'pipe' | 'puller' | 'rope'

export interface PullPiece {
  id: string
  index: number
  joint: number
  fromM: number
  toM: number
  /** Moving pull along the way: start, hardest place, end. */
  moving: readonly { atM: number; valueN: number }[]
  /** The start at its hardest place: from the moving pull up to all it takes. */
  start: { atM: number; fromN: number; needN: number }
  /** Force with which it leaves by itself, the larger of both ends; 0: it stays. */
  runAwayN: number
  limits: Readonly<Record<LimitName, number | null>>
  /** Smallest known limit it passes; null where it passes none. */
  overN: number | null
}

/** A run-away below this is rounding. */
const NO_FORCE_N = 1

/** Pulls that have come, in order. */
export function pullPieces(results: readonly (StageResult | undefined)[]): PullPiece[] {
  return results.flatMap((result) => {
    if (result === undefined || result.pull === null || result.stage.noseM === null) return []
    const { pull, stage } = result
    const { from, to } = result.stage.noseM
    const limits = { pipe: pull.allowableN, puller: pull.usableTowN, rope: pull.ropeN }
    const known = Object.values(limits).filter((one) => one !== null)
    const leastN = known.length === 0 ? Infinity : Math.min(...known)
    const inside = pull.noseM > from + 1e-6 && pull.noseM < to - 1e-6 ? [{ atM: pull.noseM, valueN: pull.pullN }] : []
    const awayN = Math.max(pull.runAway.exitN, pull.runAway.infeedN)
    return [{
      id: stage.id, index: stage.index, joint: stage.joint ?? 0, fromM: from, toM: to,
      moving: [{ atM: from, valueN: pull.atStartN }, ...inside, { atM: to, valueN: pull.atEndN }],
      start: { atM: pull.noseM, fromN: pull.pullN, needN: pull.needN },
      runAwayN: awayN > NO_FORCE_N ? awayN : 0,
      limits, overN: pull.needN > leastN ? leastN : null,
    }]
  })
}

/** A limit this many times the hardest pull would press the curve flat: it is named, not drawn. */
const MOST_TIMES = 5

export interface PullScale {
  topN: number
  stepN: number
  /** Limits that are drawn. */
  shown: readonly LimitName[]
  /** Limits beyond the top, with their least value. */
  above: readonly { name: LimitName; valueN: number }[]
}

const limitNames: readonly LimitName[] = ['pipe', 'puller', 'rope']

/** Scale on which the hardest pull, the run-away and every limit within reach can be read; whole steps of the reader's unit. */
export function pullScale(pieces: readonly PullPiece[], system: UnitSystem, heightPx: number): PullScale {
  const mostN = Math.max(1, ...pieces.map(({ start, runAwayN }) => Math.max(start.needN, runAwayN)))
  const leastOf = (name: LimitName): number | null => {
    const known = pieces.flatMap(({ limits }) => limits[name] ?? [])
    return known.length === 0 ? null : Math.min(...known)
  }
  const known = limitNames.flatMap((name) => {
    const valueN = leastOf(name)
    return valueN === null ? [] : [{ name, valueN }]
  })
  const near = known.filter(({ valueN }) => valueN <= MOST_TIMES * mostN)
  const reachN = Math.max(mostN, ...near.map(({ valueN }) => valueN)) * 1.12
  const unitN = system === 'metric' ? 1 : poundForceN
  const steps = Math.max(2, Math.floor(heightPx / 32))
  const stepN = niceStep(reachN / unitN / steps) * unitN
  return { topN: reachN, stepN, shown: near.map(({ name }) => name), above: known.filter((one) => !near.includes(one)) }
}

/** The next of 1, 2, 2.5, 5, 10 times a power of ten. */
export function niceStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(least, 1e-9)))
  return (([1, 2, 2.5, 5].find((times) => times * power >= least * (1 - 1e-9)) ?? 10)) * power
}
