/** What the closed and the open jaws feel on either side of a joint (docs/formulas/jaws.md). */
import { bodies, type BodyCase, type BodySolution, type BodySolver } from './bodies.ts'
import { jawLineLevelM } from './supports.ts'
import type { SiteModel } from './types.ts'

export type Side = 'infeed' | 'exit'

/** A pipe this far above a lower half is clear of it; below, nobody could tell on site. */
const CLEAR_M = 0.0005

export interface JawSide {
  side: Side
  body: BodyCase
  closed: BodySolution
  open: BodySolution
  innerN: number
  outerN: number
  /** C: largest jaw force × clamp spacing ÷ (stick weight × lever). */
  effortRatio: number
  /** Slope of the pipe end at the joint against the jaw line, up down-string. */
  angleRatio: number
  /** |angle| × OD: what this face stands off square by. */
  gapM: number
  /** BOP at the joint above the jaw line. */
  offsetM: number
  /** With the jaws open the pipe lies clear of both lower halves of this side. */
  isClear: boolean
  /** Least height over a lower half with the jaws open. */
  clearByM: number
  /** Largest push down a clamp needs while closing; 0 where none has to. */
  holdDownN: number
}

export interface JointSolve {
  joint: number
  infeed: JawSide
  exit: JawSide
  /** The larger of both sides. */
  effortRatio: number
  /** Both faces added. */
  faceGapM: number
  /** BOP of the string above BOP of the stick at the joint. */
  offsetM: number
  /** The joined body with the jaws open: how far it stands above the lower halves of a side, 0 where it touches one. */
  springsByM: Record<Side, number>
  /** Largest push down a clamp of a side gives to hold the joined body. */
  springN: Record<Side, number>
}

/** Largest jaw force of a body × clamp spacing ÷ (stick weight × lever). */
export function effortOf(site: SiteModel, solution: BodySolution, leverM: number): number {
  const weightN = (site.pipe.properties?.lineLoadNPerM ?? 0) * (site.sticks.stickLengthM ?? 0)
  const largestN = Math.max(0, ...solution.jaws.map(({ forceN }) => Math.abs(forceN)))
  return (largestN * (site.jaws.outerClampM - site.jaws.innerClampM)) / (weightN * leverM)
}

export function solveSide(site: SiteModel, solver: BodySolver, side: Side, joint: number, leverM: number): JawSide | null {
  const bodyFor = (jaws: 'closed' | 'open'): BodyCase => (side === 'infeed' ? bodies.infeedStick(site, jaws) : bodies.exitString(site, joint, jaws))
  const body = bodyFor('closed')
  const closed = solver.solve(body)
  const open = solver.solve(bodyFor('open'))
  if (closed === null || open === null || closed.result.status !== 'ok') return null
  const force = (at: 'inner' | 'outer'): number => closed.jaws.find((jaw) => jaw.at === at)?.forceN ?? 0
  const [innerN, outerN] = [force('inner'), force('outer')]
  const atJoint = closed.result.at(0)
  const angleRatio = closed.result.ends.slopeRatio[side === 'infeed' ? 1 : 0] - site.jaws.slopeRatio
  const gaps = open.jaws.map(({ gapM }) => gapM)
  const clearByM = open.result.status === 'ok' && gaps.length > 0 ? Math.min(...gaps) : 0
  return {
    side, body, closed, open, innerN, outerN,
    effortRatio: effortOf(site, closed, leverM),
    angleRatio,
    gapM: Math.abs(angleRatio) * (site.pipe.odM ?? 0),
    offsetM: atJoint.levelM - (jawLineLevelM(site.jaws, 0) ?? 0),
    isClear: clearByM > CLEAR_M,
    clearByM,
    holdDownN: Math.max(0, -innerN, -outerN),
  }
}

export function solveJoint(site: SiteModel, solver: BodySolver, joint: number, leverM: number): JointSolve | null {
  const infeed = solveSide(site, solver, 'infeed', joint, leverM)
  const exit = solveSide(site, solver, 'exit', joint, leverM)
  if (infeed === null || exit === null) return null
  const joined = solver.solve(bodies.joined(site, joint, 'halves'))
  const held = solver.solve({ ...bodies.joined(site, joint, 'halves'), infeedJaws: 'closed', exitJaws: 'closed' })
  const springs = (side: Side): number => {
    const gaps = joined?.result.status === 'ok' ? joined.jaws.filter((jaw) => jaw.side === side).map(({ gapM }) => gapM) : []
    const leastM = gaps.length === 0 ? 0 : Math.min(...gaps)
    return leastM > CLEAR_M ? leastM : 0
  }
  const pushN = (side: Side): number => Math.max(0, ...(held?.jaws ?? []).filter((jaw) => jaw.side === side).map(({ forceN }) => 0 - forceN))
  return {
    joint, infeed, exit,
    effortRatio: Math.max(infeed.effortRatio, exit.effortRatio),
    faceGapM: infeed.gapM + exit.gapM,
    offsetM: exit.offsetM - infeed.offsetM,
    springsByM: { infeed: springs('infeed'), exit: springs('exit') },
    springN: { infeed: pushN('infeed'), exit: pushN('exit') },
  }
}
