/** What the panel 'turn the bow' shows, in one plain answer of the worker (docs/formulas/bow.md). */
import { limitParam } from '../engine/limits.ts'
import { bodies, solveBody, type BodyCase } from './bodies.ts'
import { createBowSolver, sweepBow, type BowAt, type BowSolver, type BowSweep } from './bow.ts'
import type { LimitLookup } from './mechanics.ts'
import { jawLineLevelM } from './supports.ts'
import type { MissingInput, SiteModel } from './types.ts'

/** The stick in the infeed as the picture shows it: level over the jaw line at running distances, with its weight and by itself in the jaws. */
export interface BowShapes {
  runningM: readonly number[]
  loadedM: readonly number[]
  freeM: readonly number[]
  supports: readonly { label: string; runningM: number; levelM: number }[]
}

export interface BowAnswer {
  missing: readonly MissingInput[]
  /** Null while something is missing, or where a body comes to no rest at some turn. */
  sweep: BowSweep | null
  at: BowAt | null
  shapes: BowShapes | null
  /** Bounds of the face gap, m; null where a limit has none. */
  checkM: number | null
  fixM: number | null
}

const SHAPE_POINTS = 41

export function bowAnswer(site: SiteModel, limits: LimitLookup, turnRad: number): BowAnswer {
  const solver = createBowSolver(site, limits)
  const gap = limits.limit('face-gap')
  const yardstickM = limitParam(gap, 'yardstickOfWall') * (site.pipe.properties?.minimumWallM ?? 0)
  const bound = (share: number | null): number | null => (share === null || yardstickM === 0 ? null : share * yardstickM)
  return { missing: solver.missing, sweep: sweepBow(solver), at: solver.at(turnRad), shapes: bowShapes(site, solver, turnRad), checkM: bound(gap.check), fixM: bound(gap.fix) }
}

/** Null where the stick cannot be solved. */
export function bowShapes(site: SiteModel, solver: BowSolver, turnRad: number): BowShapes | null {
  if (solver.missing.length > 0) return null
  const { curvaturePerM } = solver
  const stick: BodyCase = { ...bodies.infeedStick(site, 'closed'), bow: { curvaturePerM, angleRad: turnRad } }
  const solution = solveBody(site, stick)
  if (solution === null || solution.result.status !== 'ok') return null
  const overJawLine = (runningM: number, levelM: number): number => levelM - (jawLineLevelM(site.jaws, runningM) ?? 0)
  const { innerClampM, outerClampM } = site.jaws
  const runningM = Array.from({ length: SHAPE_POINTS }, (_, i) => stick.startM + (i * (stick.endM - stick.startM)) / (SHAPE_POINTS - 1))
  return {
    runningM,
    loadedM: runningM.map((x) => overJawLine(x, solution.result.at(x).levelM)),
    freeM: runningM.map((x) => (curvaturePerM * Math.cos(turnRad) * (x + innerClampM) * (x + outerClampM)) / 2),
    supports: solution.supports.map(({ view }) => ({ label: view.label, runningM: view.runningM, levelM: overJawLine(view.runningM, view.levelM!) })),
  }
}
