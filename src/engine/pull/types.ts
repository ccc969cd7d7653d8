/** A corner of the pull path. Ends round nothing: their bend values are not read. */
export interface PullVertex {
  readonly xM: number
  readonly yM: number
  /** Level of the pipe here; legs run evenly between the levels of their ends, arcs are level. */
  readonly levelM: number
  /** Radius of the tangent arc in plan; 0 is a sharp corner. */
  readonly radiusM: number
  /** Drag under the pipe along the arc, as a share of its weight. */
  readonly surfaceFrictionRatio: number
  /** Drag against the guides of the bend, as a share of the force on them. */
  readonly guideFrictionRatio: number
}

export interface PullInput {
  /** Weight of the string by length, with what it carries. */
  readonly lineLoadNPerM: number
  readonly stringLengthM: number
  readonly vertices: readonly PullVertex[]
  /** One for each leg: drag as a share of the weight normal to the leg. */
  readonly legs: readonly { readonly frictionRatio: number }[]
  /** Where the head stands, running along the path. Left out: the path's end. */
  readonly headStationsM?: readonly number[]
  /** Pull on the tail, against travel. */
  readonly tailLoadN?: number
  /** Least radius of the pipe at rest; null where no published value covers it. */
  readonly minimumRadiusM: number | null
  /** Allowable tensile load; null where it is not known. */
  readonly allowableLoadN: number | null
  /** Adds the drag of bending the pipe into and out of each bend, shown apart. */
  readonly stiffness?: { readonly flexuralRigidityNm2: number; readonly guideSpacingM: number }
}

/** The pull with the head at one station. */
export interface HeadForce {
  readonly headM: number
  /** Pull at the head, ≥ 0: where the sum would turn negative it is held at 0 and starts again from there. */
  readonly forceN: number
  /** The plain sum over the whole string, which may be negative. */
  readonly sumN: number
  /** Lowest value the plain sum takes anywhere from tail to head, at most 0. */
  readonly lowestSumN: number
  /** The whole string moves by itself: `sumN` < 0. */
  readonly isRunAway: boolean
  /** Part of the string pushes the part ahead of it, though the whole does not run away. */
  readonly isPushingItself: boolean
}

export interface LargestForce {
  readonly forceN: number
  /** Head position, the first where several are equal. */
  readonly headM: number
}

export interface PullBend {
  readonly vertex: number
  readonly turnRad: number
  readonly radiusM: number
  readonly minimumRadiusM: number | null
  /** null where the least radius is not known. */
  readonly isWideEnough: boolean | null
  /** With `stiffness`: force on each of the four guides, EI/(R·a). */
  readonly guideLoadN: number | null
  /** With `stiffness`: drag of those guides, 4·µ·EI/(R·a), half at the start of the bend and half at its end. */
  readonly stiffnessDragN: number | null
}

export type PullProblem =
  | { readonly kind: 'bendsOverlap'; readonly leg: number; readonly neededM: number; readonly lengthM: number }
  | { readonly kind: 'doublesBack'; readonly vertex: number }
  | { readonly kind: 'sharpCorner'; readonly vertex: number; readonly turnRad: number }
  | { readonly kind: 'bendTooTight'; readonly vertex: number; readonly radiusM: number; readonly minimumRadiusM: number }
  | { readonly kind: 'verticesCoincide'; readonly vertex: number }
  | { readonly kind: 'verticalStep'; readonly leg: number; readonly riseM: number }
  | { readonly kind: 'pathWithoutLength' }

export interface PullResult {
  readonly pathLengthM: number
  readonly weightN: number
  /** In the order of `headStationsM`. */
  readonly heads: readonly HeadForce[]
  /** Over every position of the head from the path's start to its end. */
  readonly largest: LargestForce
  readonly bends: readonly PullBend[]
  /** `largest` over the allowable load; null where that is not known. */
  readonly utilisationRatio: number | null
  readonly isWithinAllowable: boolean | null
  /** With `stiffness`: the same forces with the drag of bending added. */
  readonly withStiffness: { readonly heads: readonly HeadForce[]; readonly largest: LargestForce } | null
  /**
   * Pull of the string down its slope without any drag, w·L·sinα, largest over all head positions: what a tether must
   * hold. `forwardN` where it falls towards its head, `backwardN` towards its tail.
   */
  readonly fullTether: { readonly forwardN: number; readonly backwardN: number }
  /** What stands against the path itself. Overlapping bends leave figures that only bound the pull. */
  readonly problems: readonly PullProblem[]
}
