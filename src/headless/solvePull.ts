/** Raw case 'pull': JSON in SI units with short field names, as docs/headless.md gives them. */
import { minimumBendRadiusM } from '../engine/pipe/bendRadius.ts'
import { ringAreaM2 } from '../engine/pipe/pipeProperties.ts'
import { pullPathLengthM, solvePull } from '../engine/pull/solvePull.ts'
import type { PullProblem, PullResult, PullVertex } from '../engine/pull/types.ts'
import { valueOrNull } from '../engine/outcome.ts'
import { gravityMPerS2 } from '../units/factors.ts'
import { InputRefused, listField, nameField, numberField, objectField, oneOf } from './fields.ts'

const positive = numberField({ above: 0 })
const notNegative = numberField({ atLeast: 0 })
const anyNumber = numberField()

/** A case has at most this many path points and head stations each. */
const MOST_ENTRIES = 10_000

const readCase = objectField(
  {
    pipe: objectField({ OD: positive, rho: positive }, { DR: numberField({ above: 2 }), t: positive, q_extra: anyNumber }),
    string_length: positive,
    path: listField(
      objectField({ x: anyNumber, y: anyNumber }, { z: anyNumber, radius: notNegative, mu_surface: notNegative, mu_guide: notNegative }),
      { atLeast: 2, atMost: MOST_ENTRIES },
    ),
    legs: listField(objectField({ mu: notNegative }, {}), { atLeast: 1, atMost: MOST_ENTRIES }),
  },
  {
    id: nameField,
    units: oneOf('SI'),
    head_stations: listField(anyNumber, { atLeast: 0, atMost: MOST_ENTRIES }),
    tail_load: anyNumber,
    atl: objectField({ fy: positive, ft: positive, T: positive }, {}),
  },
)

type PullCase = ReturnType<typeof readCase>

/**
 * Solves one raw case. Output: the result object of the contract with `status: 'ok'`. `safe` says only that the largest pull is within ATL; bends and run-aways speak for
 * themselves. Without `atl` it is null, and so is `utilisation`. Throws InputRefused naming the field for bad input.
 */
export function solvePullCase(json: unknown): unknown {
  const given = readCase(json, '')
  const { OD, DR, wallM, q } = pipeOf(given)
  const { atl } = given
  const ATL = atl ? atl.fy * atl.ft * atl.T * ringAreaM2(OD, wallM) : null
  const r_min = valueOrNull(minimumBendRadiusM({ odM: OD, dr: DR, fittingInBend: false }))
  if (given.legs.length !== given.path.length - 1) {
    throw new InputRefused(`legs has ${given.legs.length} entries, a path of ${given.path.length} points has ${given.path.length - 1}`)
  }
  const vertices = verticesOf(given.path)
  requireHeadsOnPath(given.head_stations ?? [], pullPathLengthM(vertices))
  const result = solvePull({
    lineLoadNPerM: q,
    stringLengthM: given.string_length,
    vertices,
    legs: given.legs.map(({ mu }) => ({ frictionRatio: mu })),
    ...(given.head_stations ? { headStationsM: given.head_stations } : {}),
    tailLoadN: given.tail_load ?? 0,
    minimumRadiusM: r_min,
    allowableLoadN: ATL,
  })
  return { ...(given.id === undefined ? {} : { id: given.id }), status: 'ok', ...contractResult(result, { ATL, r_min }) }
}

function pipeOf({ pipe }: PullCase): { OD: number; DR: number; wallM: number; q: number } {
  const { OD, rho, q_extra = 0 } = pipe
  if ((pipe.DR === undefined) === (pipe.t === undefined)) throw new InputRefused('pipe needs either DR or t')
  const wallM = pipe.t ?? OD / (pipe.DR as number)
  if (wallM >= OD / 2) throw new InputRefused(`pipe.t is ${wallM}, must be below half of OD`)
  // A wall typed to the micrometre must not push a DR of 11 into the next row of the bend table.
  const DR = pipe.DR ?? Math.round((OD / wallM) * 1e3) / 1e3
  const q = ringAreaM2(OD, wallM) * rho * gravityMPerS2 + q_extra
  if (q <= 0) throw new InputRefused(`pipe.q_extra is ${q_extra}, leaves no weight`)
  return { OD, DR, wallM, q }
}

function verticesOf(path: PullCase['path']): PullVertex[] {
  const levels = path.filter(({ z }) => z !== undefined).length
  // Levels on no vertex at all mean a level path; on some of them, a slip of the pen.
  if (levels !== 0 && levels !== path.length) throw new InputRefused(`path[${path.findIndex(({ z }) => z === undefined)}].z is missing`)
  return path.map((point, i) => {
    const isTurning = i > 0 && i < path.length - 1 && isTurningAt(path, i)
    for (const field of ['radius', 'mu_surface', 'mu_guide'] as const) {
      if (isTurning && point[field] === undefined) throw new InputRefused(`path[${i}].${field} is missing, the path turns here`)
    }
    const { x, y, z = 0, radius = 0, mu_surface = 0, mu_guide = 0 } = point
    return { xM: x, yM: y, levelM: z, radiusM: radius, surfaceFrictionRatio: mu_surface, guideFrictionRatio: mu_guide }
  })
}

/** Least turn, rad, that needs a radius: less is a rounding of typed coordinates. */
const TURN_RAD = 1e-9

function isTurningAt(path: PullCase['path'], i: number): boolean {
  const at = path[i] as { x: number; y: number }
  const isApart = (k: number): boolean => path[k]?.x !== at.x || path[k]?.y !== at.y
  let [from, to] = [i - 1, i + 1]
  while (from >= 0 && !isApart(from)) from -= 1
  while (to < path.length && !isApart(to)) to += 1
  const before = path[from]
  const after = path[to]
  if (!before || !after) return false
  const [ax, ay, bx, by] = [at.x - before.x, at.y - before.y, after.x - at.x, after.y - at.y]
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) >= TURN_RAD
}

/** A head may stand this far beyond the end by rounding. */
const PATH_END_M = 1e-6

function requireHeadsOnPath(heads: readonly number[], lengthM: number): void {
  const beyond = heads.findIndex((headM) => headM > lengthM + PATH_END_M)
  if (beyond >= 0) throw new InputRefused(`head_stations[${beyond}] is ${heads[beyond]}, beyond the path's end at ${lengthM}`)
}

function contractResult(result: PullResult, known: { ATL: number | null; r_min: number | null }): object {
  const { heads, largest, bends } = result
  return {
    path_length: result.pathLengthM,
    weight: result.weightN,
    F: heads.map(({ forceN }) => forceN),
    runaway: heads.map(({ isRunAway }) => isRunAway),
    unclamped: heads.map(({ sumN }) => sumN),
    most_negative: heads.map(({ lowestSumN }) => lowestSumN),
    F_max: largest.forceN,
    F_max_head: largest.headM,
    bends: bends.map(({ vertex, radiusM, minimumRadiusM, isWideEnough }) => ({ vertex, radius: radiusM, r_min: minimumRadiusM, ok: isWideEnough })),
    r_min: known.r_min,
    ATL: known.ATL,
    utilisation: result.utilisationRatio,
    safe: result.isWithinAllowable,
    problems: [...result.problems.map(problemText), ...heads.flatMap(({ headM, isRunAway, isPushingItself }) => headProblems(headM, isRunAway, isPushingItself))],
  }
}

function headProblems(headM: number, isRunAway: boolean, isPushingItself: boolean): string[] {
  if (isRunAway) return [`run-away with the head at ${headM}`]
  return isPushingItself ? [`pushes itself part of the way with the head at ${headM}`] : []
}

const BOUNDS_ONLY = 'the path cannot be built so; the figures only bound the pull'

function problemText(problem: PullProblem): string {
  switch (problem.kind) {
    case 'bendsOverlap':
      return `leg ${problem.leg}: its bends need ${problem.neededM} m, it is ${problem.lengthM} m long; ${BOUNDS_ONLY}`
    case 'doublesBack':
      return `vertex ${problem.vertex}: the path doubles back; ${BOUNDS_ONLY}`
    case 'sharpCorner':
      return `vertex ${problem.vertex}: a corner without radius`
    case 'bendTooTight':
      return `vertex ${problem.vertex}: radius ${problem.radiusM} is below r_min ${problem.minimumRadiusM}`
    case 'verticesCoincide':
      return `vertex ${problem.vertex} lies on the one before`
    case 'verticalStep':
      return `leg ${problem.leg}: a vertical step of ${problem.riseM} m, no straight is left to rise along; ${BOUNDS_ONLY}`
    case 'pathWithoutLength':
      return 'the path has no length'
  }
}
