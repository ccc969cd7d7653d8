/**
 * Plain inputs and results of the contact beam (docs/formulas/contact-beam.md).
 *
 * Signs: x along the pipe, levels up, all of one datum line (the underside of the pipe), bending moment positive
 * sagging, EI·w″ = M + EI·k₀, M″ = −q, support forces positive up on the pipe. SI throughout.
 */

/** The uniform pipe body. `outerDiameterM` and `secondMomentM4` are carried for callers that want stress; the solver does not use them. */
export interface BeamSection {
  /** EI, > 0. */
  bendingStiffnessNm2: number
  /** Weight per length q, down positive, > 0. */
  lineLoadNPerM: number
  outerDiameterM?: number
  secondMomentM4?: number
}

/** A point the pipe may rest on. One-sided unless `twoWay` (a closed clamp, which may also pull). */
export interface PointSupport {
  xM: number
  levelM: number
  twoWay?: boolean
  id?: string
}

/** Level and slope both fixed; splits the body into two independent parts. */
export interface SlopeClamp {
  xM: number
  levelM: number
  slopeRatio: number
}

/** Rigid ground, piecewise linear, one-sided, extended flat at both ends. `xM` strictly increasing, same length as `levelM`, one point or more. */
export interface GroundProfile {
  xM: readonly number[]
  levelM: readonly number[]
}

/** Initial curvature of the stick: k₀ = curvaturePerM·cos(angleRad); angle 0 has the ends up, π the ends down, π/2 lies on its side. */
export interface BowShape {
  curvaturePerM: number
  angleRad: number
}

/** Which contacts carried in a solution; a start for the next, similar case. Never a condition: a wrong pattern costs passes, not accuracy. */
export interface ContactPattern {
  /** One entry per support, in the order of the input. */
  carrying: readonly boolean[]
  /** Ground contacts from left to right. A point has startM = endM. */
  ground: readonly { kind: 'point' | 'interval'; startM: number; endM: number }[]
}

export interface ContactBeamInput {
  /** Length of the body, > 0. */
  lengthM: number
  /** x of the tail end, default 0; the body occupies startM … startM + lengthM. */
  startM?: number
  section: BeamSection
  /** Any order. Each must lie on the body. */
  supports: readonly PointSupport[]
  clamps?: readonly SlopeClamp[]
  ground?: GroundProfile | null
  bow?: BowShape | null
  warmStart?: ContactPattern | null
  /** Supports nearer to each other than this count as one, the higher rules, the force is shared equally. Default 1e-6. */
  mergeToleranceM?: number
}

export type ContactBeamStatus = 'ok' | 'unstable' | 'notConverged' | 'rejected'

export interface SupportResult {
  /** ≥ 0 for a one-sided support; a two-way one may be negative. */
  reactionN: number
  /** Pipe above support, ≥ 0; 0 where it carries. */
  gapM: number
  /** Nothing carried and the pipe clear of it. */
  lifted: boolean
  /** Carries under 1 % of the mean load, or clears by under 0.5 mm: nobody sets a stand that well. */
  marginal: boolean
  id?: string
}

export interface ClampResult {
  xM: number
  /** Force of the clamp on the pipe, up positive. */
  forceN: number
  momentLeftNm: number
  momentRightNm: number
}

export interface GroundContact {
  startM: number
  endM: number
  kind: 'point' | 'interval'
  forceN: number
}

/** Largest depth below the chord between neighbouring carrying supports or clamps; 0 where the span hogs (then atM is its middle). */
export interface SpanSag {
  fromM: number
  toM: number
  sagM: number
  atM: number
}

/** The bent pipe at one place. At a clamp the moment and shear are those just right of it (just left at the far end of the body). */
export interface BeamPoint {
  levelM: number
  slopeRatio: number
  momentNm: number
  shearN: number
}

/** Where status is `rejected` or `unstable` the lists are empty, the numbers NaN and `at` gives NaN. */
export interface ContactBeamResult {
  status: ContactBeamStatus
  /** Why, for every status but `ok`. Plain English, names the field. */
  reason?: string
  /** Largest violation left, in metres of penetration, where not converged. */
  residual?: number
  /** Linear solves spent. */
  passes: number
  /** In the order of the input. */
  supports: SupportResult[]
  /** In the order of the input. */
  clamps: ClampResult[]
  /** From left to right. */
  groundContacts: GroundContact[]
  groundTotalN: number
  sags: SpanSag[]
  ends: { levelM: [number, number]; slopeRatio: [number, number] }
  /** Largest |M| with its sign. */
  maxMoment: { momentNm: number; atM: number }
  maxSlopeRatio: number
  /** True where a slope passes 0.1: the small-slope beam then errs by more than half a per cent. */
  outOfSmallSlope: boolean
  /** Exact (piecewise quartic). x is held to the body. */
  at(xM: number): BeamPoint
  /** For drawing: every multiple of stepM along the body, and every contact point and end. */
  curve(stepM: number): { xM: Float64Array; levelM: Float64Array }
  pattern: ContactPattern
}
