/**
 * The contract of the run-through: plain JSON, so that it survives the way from the worker (docs/decisions/0008-stages.md).
 * Distances along the run from the datum (exit +, infeed −), levels above the datum nail, forces in N.
 */
import type { Phase } from '../../scene/parts.ts'
import type { Surface } from '../../scene/records/frame.ts'
import type { JawState } from '../bodies.ts'
import type { MissingInput } from '../types.ts'

/** Steps inside a stage, in the order they are done; they share one place on the strip. */
export type StageStep = 'clamp' | 'face' | 'heat' | 'join' | 'cool' | 'open' | 'lift' | 'pull' | 'walk'

/** One place on the job's time line. Derived from sticks and joints, never stored. */
export interface JobStage {
  /** Spells its meaning: `setUp`, `load:3`, `pull:12`, `tieIn`. */
  id: string
  /** Place in the list, 0 first. */
  index: number
  phase: Phase
  /** Joint made in it; null for the phases before the first and after the last joint. */
  joint: number | null
  /** Sticks in the string at its end. A stick still loose in the infeed does not count. */
  sticks: number
  /** Nose at its start and end; null before stick 1 lies on the line. */
  noseM: { from: number; to: number } | null
  steps: readonly StageStep[]
}

/** A body of pipe as it lies at a step, and what holds it besides the supports under it. */
export interface StageBody {
  name: 'string' | 'stick'
  startM: number
  endM: number
  infeedJaws: JawState
  exitJaws: JawState
  lifts: boolean
  /** When in the stage. */
  at: 'whole' | 'start' | 'opened' | 'lifted' | 'end'
}

/**
 * ridesOn: the support takes the nose in by itself. ridesUp: lower than the lead-in, above the roller's centre.
 * held: slung or carried over it. lifted: the planned landing aid has to bring it up. hits: nothing brings it up.
 */
export type NoseOutcome = 'ridesOn' | 'ridesUp' | 'held' | 'lifted' | 'hits'

export interface StageArrival {
  /** Support by key, and its label. */
  key: string
  label: string
  runningM: number
  /** Top of the support, and the tip half an inch short of it. */
  topLevelM: number
  tipLevelM: number
  /** Tip below the top; negative: passes over and lands late. */
  droopM: number
  leadInM: number
  outcome: NoseOutcome
  /** Lift of the tip from where it hangs to where it has to be; 0 where it needs none. */
  liftM: number
  /** Force at the tip for that; for a held nose the load at the sling. Null: it could not be solved. */
  liftN: number | null
  /** The loader's plate at its reach; null: no plate known. */
  loaderN: number | null
  /** The nose lies on the ground in front of the support. */
  isOnGround: boolean
}

/** How far the free end reaches out and hangs, the worst of the stage. */
export interface FreeEnd {
  tipM: number
  /** Beyond the last thing that carries it. */
  overhangM: number
  /** Below the last thing that carries it. */
  dropM: number
}

/** The pull at its hardest place in the stage, part by part; the parts add up to `pullN`. */
export interface PullParts {
  /** Drag on rollers, racks, lifts. */
  rollersN: number
  ground: readonly { surface: Surface | null; dragN: number }[]
  /** Weight up (+) or down (−) the slope. */
  gradeN: number
  /** What the belt friction of bends adds to the pull behind them. */
  bendsN: number
  /** A rope cannot push: what is left out where the sum would turn negative. */
  slackN: number
}

export interface PullAt {
  noseM: number
  /** High friction, moving. */
  pullN: number
  parts: PullParts
  /** Stiffness of the pipe at the guides of the bends, on top of `pullN`. */
  stiffnessN: number
  /** What breakaway adds at the start of a pull; it raises friction, not weight on the slope. */
  breakawayN: number
  /** What the rope's lead out of line adds; null: the rope leads nowhere near the way of the nose, or there is no puller. */
  ropeLeadN: number | null
  ropeLeadRad: number | null
  /** All of it: what has to be there to start. */
  needN: number
}

export interface RunAway {
  /** Force with which it leaves by itself, low friction; 0 or less: it stays. */
  exitN: number
  infeedN: number
  /** Full weight down the slope, w·L·sin α: design force of a tether. */
  tetherExitN: number
  tetherInfeedN: number
  /** Falls to the exit positive. */
  gradeRatio: number
  isPushingItself: boolean
}

export interface StagePull extends PullAt {
  lengthM: number
  weightN: number
  /** First and last place of the stage, for the curve. */
  atStartN: number
  atEndN: number
  runAway: RunAway
  allowableN: number | null
  /** Rating or grip, the smaller of what is known; null where neither is. */
  usableTowN: number | null
  usableTowBy: 'rating' | 'grip' | null
  /** False while one of the two is unknown: it may be less. */
  usableTowIsWhole: boolean
  ropeN: number | null
  /** What gives first if the puller pulls all it can: null where not everything is known. */
  weakLink: 'pipe' | 'rope' | 'puller' | null
  /** needN over the smallest of what is known; null where nothing is. */
  utilisationRatio: number | null
  /** Bends the string lies in, with the force on each of their guides. */
  guides: readonly { vertex: number; atM: number; guideLoadN: number }[]
}

/** What the gauge shows while the carriage moves, before any fusion force: drag of the body in the moving jaws only. */
export interface CarriageDrag {
  side: 'infeed' | 'exit'
  /** High friction, moving and at the start. */
  movingN: number
  startN: number
  /** Low friction; below 0 the slope closes the carriage by itself. */
  lowN: number
  /** movingN over piston area; null: piston area unknown. */
  pressurePa: number | null
  fusionForceN: number
  /** Fusion force and drag as gauge pressure. */
  fusionPressurePa: number | null
}

export interface StageJaws {
  innerInfeedN: number
  outerInfeedN: number
  innerExitN: number
  outerExitN: number
  /** C, both sides. */
  effortRatio: number
  faceGapM: number
  offsetM: number
}

export interface StageOpening {
  /** Opened: how far the pipe stands clear of both lower halves of a side, 0 where it rests. */
  springsByM: { infeed: number; exit: number }
  /** Push down a clamp had to give. */
  springN: { infeed: number; exit: number }
  /** Least height over a lower half on the raised lifts; null: not solved. */
  liftedClearM: number | null
  /** Ends toward which the string leaves by itself: something has to hold it before the jaws open. */
  holdFirst: readonly ('exit' | 'infeed')[]
}

export interface StageResult {
  stage: JobStage
  /** unsettled: a solve of it did not come out; its figures are left out, not met. */
  status: 'ok' | 'missing' | 'unsettled'
  bodies: readonly StageBody[]
  jaws: StageJaws | null
  opening: StageOpening | null
  /** Positions in which a fed stick tips, and what its front end meets low. */
  feed: { tipsAtM: number | null; meets: readonly { place: string; runningM: number; droopM: number; leadInM: number }[] } | null
  arrivals: readonly StageArrival[]
  freeEnd: FreeEnd | null
  /** Drop of the tail when it leaves the last support of the infeed. */
  tailDropM: number | null
  pull: StagePull | null
  drag: CarriageDrag | null
  /** Largest load of each support solved in this stage. */
  loads: readonly { key: string; loadN: number }[]
}

/** Hold-back toward one end. */
export interface HoldBack {
  /** First stage in which the string leaves by itself; null: in none. */
  fromStageId: string | null
  worstStageId: string | null
  runAwayN: number
  /** Tether for the full weight down the slope, anchor for that times the limit's factor. */
  tetherN: number
  anchorN: number
}

export interface RunThrough {
  /** Inputs without which no body is solved; empty where all is known. */
  missing: readonly MissingInput[]
  stages: readonly StageResult[]
  /** Largest load of each support over all stages. */
  loads: readonly { key: string; loadN: number; stageId: string }[]
  hardestPullId: string | null
  hold: { exit: HoldBack; infeed: HoldBack }
  counts: { stages: number; solves: number; reused: number }
}
