/** Raw case 'beam': JSON in SI units with short field names, as docs/headless.md gives them. */
import { solveContactBeam } from '../engine/beam/solveContactBeam.ts'
import type { ContactBeamInput, ContactBeamResult } from '../engine/beam/types.ts'
import { ringAreaM2 } from '../engine/pipe/pipeProperties.ts'
import { gravityMPerS2 } from '../units/factors.ts'
import type { Reader } from './fields.ts'
import { InputRefused, listField, numberField, objectField, oneOf, textField } from './fields.ts'

const positive = numberField({ above: 0 })
const anyNumber = numberField()

/** A case has at most this many supports, ground points and stations each. */
const MOST_ENTRIES = 20_000

/** A null says the same as leaving the field out. */
function orNull<T>(reader: Reader<T>): Reader<T | null> {
  return (value, path) => (value === null ? null : reader(value, path))
}

const readCase = objectField(
  {
    pipe: objectField({}, { OD: positive, DR: numberField({ above: 2 }), t: positive, E: positive, rho: positive, q_extra: anyNumber, EI: positive, q: positive }),
    length: positive,
  },
  {
    id: textField,
    units: oneOf('SI'),
    clamps: orNull(listField(objectField({ x: anyNumber, w: anyNumber }, { slope: anyNumber }), { atLeast: 0, atMost: 2 })),
    supports: orNull(listField(objectField({ x: anyNumber, h: anyNumber }, {}), { atLeast: 0, atMost: MOST_ENTRIES })),
    ground: orNull(
      objectField(
        { x: listField(anyNumber, { atLeast: 1, atMost: MOST_ENTRIES }), h: listField(anyNumber, { atLeast: 1, atMost: MOST_ENTRIES }) },
        {},
      ),
    ),
    curvature: orNull(objectField({ kappa: anyNumber }, { angle_deg: anyNumber })),
    stations: orNull(listField(anyNumber, { atLeast: 0, atMost: MOST_ENTRIES })),
  },
)

type BeamCase = ReturnType<typeof readCase>

interface PipeFigures {
  stiffnessNm2: number
  lineLoadNPerM: number
  /** OD / (2 I), null where the wall is not given. */
  stressPerMoment: number | null
}

/** EI and q either directly or from the given wall (no mean-wall allowance). */
function pipeFigures({ pipe }: BeamCase): PipeFigures {
  const { OD, DR, t, E, rho, q_extra, EI, q } = pipe
  const isDirect = EI !== undefined || q !== undefined
  if (isDirect) {
    if (EI === undefined || q === undefined) throw new InputRefused('pipe needs both EI and q')
    for (const [name, value] of Object.entries({ E, rho, q_extra })) {
      if (value !== undefined) throw new InputRefused(`pipe.${name} stands beside EI and q, which already say it`)
    }
  }
  if (DR !== undefined && t !== undefined) throw new InputRefused('pipe needs either DR or t')
  const wallM = t ?? (OD !== undefined && DR !== undefined ? OD / DR : undefined)
  if (OD !== undefined && wallM !== undefined && wallM >= OD / 2) throw new InputRefused(`pipe.t is ${wallM}, must be below half of OD`)
  const secondMomentM4 = OD !== undefined && wallM !== undefined ? (Math.PI / 64) * (OD ** 4 - (OD - 2 * wallM) ** 4) : null
  const stressPerMoment = OD !== undefined && secondMomentM4 !== null ? OD / 2 / secondMomentM4 : null
  if (isDirect) return { stiffnessNm2: EI as number, lineLoadNPerM: q as number, stressPerMoment }
  if (OD === undefined) throw new InputRefused('pipe.OD is missing')
  if (wallM === undefined || secondMomentM4 === null) throw new InputRefused('pipe needs either DR or t')
  if (E === undefined) throw new InputRefused('pipe.E is missing')
  if (rho === undefined) throw new InputRefused('pipe.rho is missing')
  const lineLoadNPerM = ringAreaM2(OD, wallM) * rho * gravityMPerS2 + (q_extra ?? 0)
  if (lineLoadNPerM <= 0) throw new InputRefused(`pipe.q_extra is ${q_extra}, leaves no weight`)
  return { stiffnessNm2: E * secondMomentM4, lineLoadNPerM, stressPerMoment }
}

function inputOf(given: BeamCase, pipe: PipeFigures): ContactBeamInput {
  const { length, clamps, supports, ground, curvature } = given
  return {
    lengthM: length,
    section: { bendingStiffnessNm2: pipe.stiffnessNm2, lineLoadNPerM: pipe.lineLoadNPerM },
    supports: (supports ?? []).map(({ x, h }) => ({ xM: x, levelM: h })),
    clamps: (clamps ?? []).map(({ x, w, slope }) => ({ xM: x, levelM: w, slopeRatio: slope ?? 0 })),
    ground: ground ? { xM: ground.x, levelM: ground.h } : null,
    bow: curvature ? { curvaturePerM: curvature.kappa, angleRad: ((curvature.angle_deg ?? 0) * Math.PI) / 180 } : null,
  }
}

/** The words of the contract for the fields the engine names. */
function reasonInContractWords(reason: string): string {
  return reason
    .replace(/\bsupports\[(\d+)\]\.xM/g, 'supports[$1].x')
    .replace(/\bclamps\[(\d+)\]\.xM/g, 'clamps[$1].x')
    .replace(/\bground\.xM/g, 'ground.x')
    .replace(/\bground\.levelM/g, 'ground.h')
    .replace(/\blengthM\b/g, 'length')
}

function contractResult(result: ContactBeamResult, stations: readonly number[], pipe: PipeFigures): object {
  const { supports, clamps, groundContacts, sags, ends, maxMoment } = result
  return {
    reactions: supports.map(({ reactionN }) => reactionN),
    gaps: supports.map(({ gapM }) => gapM),
    lifted: supports.map(({ lifted }) => lifted),
    marginal: supports.map(({ marginal }) => marginal),
    clamps: clamps.map(({ xM, forceN, momentLeftNm, momentRightNm }) => ({ x: xM, force: forceN, M_left: momentLeftNm, M_right: momentRightNm })),
    ground_contacts: groundContacts.map(({ startM, endM, kind, forceN }) => ({ a: startM, b: endM, kind, force: forceN })),
    ground_total: result.groundTotalN,
    sags: sags.map(({ fromM, toM, sagM, atM }) => ({ xa: fromM, xb: toM, sag: sagM, x: atM })),
    stations: stations.map((x) => {
      const { levelM, slopeRatio, momentNm } = result.at(x)
      return { x, w: levelM, slope: slopeRatio, M: momentNm }
    }),
    end_slopes: ends.slopeRatio,
    end_w: ends.levelM,
    M_absmax: Math.abs(maxMoment.momentNm),
    M_absmax_x: maxMoment.atM,
    M_at_max: maxMoment.momentNm,
    stress_absmax: pipe.stressPerMoment === null ? null : Math.abs(maxMoment.momentNm) * pipe.stressPerMoment,
    slope_absmax: result.maxSlopeRatio,
    out_of_small_slope: result.outOfSmallSlope,
    passes: result.passes,
  }
}

/** A station may stand this far off the end by rounding. */
const STATION_SLACK_M = 1e-9

function solveGiven(given: BeamCase): object {
  const pipe = pipeFigures(given)
  const stations = given.stations ?? []
  const off = stations.findIndex((x) => x < -STATION_SLACK_M || x > given.length + STATION_SLACK_M)
  if (off >= 0) throw new InputRefused(`stations[${off}] is ${stations[off]}, off the pipe, which lies from 0 to ${given.length}`)
  const result = solveContactBeam(inputOf(given, pipe))
  const { status, reason, residual } = result
  const head = {
    status,
    ...(reason === undefined ? {} : { reason: reasonInContractWords(reason) }),
    ...(residual === undefined ? {} : { residual }),
  }
  return status === 'rejected' || status === 'unstable' ? head : { ...head, ...contractResult(result, stations, pipe) }
}

/**
 * Solves one raw case. Output: the result object of the contract; bad input gives `status: 'rejected'` with a `reason`
 * naming the field, never an exception. `stress_absmax` is null where the wall is not given; at a clamp a station shows
 * the moment just right of it (just left at the far end). A clamp without `slope` is level, a bow without `angle_deg` has its ends up.
 */
export function solveBeamCase(json: unknown): unknown {
  const id = typeof json === 'object' && json !== null && 'id' in json && typeof json.id === 'string' ? { id: json.id } : {}
  try {
    return { ...id, ...solveGiven(readCase(json, '')) }
  } catch (error) {
    if (error instanceof InputRefused) return { ...id, status: 'rejected', reason: error.message }
    throw error
  }
}
