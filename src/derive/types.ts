import type { JobRecord, LayoutRecord, RunRecord, SetUpRecord, StringRecord, Surface } from '../scene/records/frame.ts'
import type { PlacedRecord } from '../scene/kinds/index.ts'
import type { Phase } from '../scene/parts.ts'
import type { YardDocument } from '../scene/document.ts'
import type { ContactBeamResult } from '../engine/beam/types.ts'
import type { PipeProperties } from '../engine/pipe/pipeProperties.ts'
import type { StickPlan } from '../engine/pipe/stickPlan.ts'
import type { LoadQuestion } from '../engine/pipe/tables.ts'
import type { DeriveOptions } from './whatIf.ts'

/**
 * Frames. *site*: x right, y up, m. *run*: running (exit +, infeed −) and offset (R +). *section*: running and level;
 * level = height above the ground at the set-up's datum nail. BOP = bottom of pipe.
 */
export interface PlacedItem {
  id: string
  kind: PlacedRecord['kind']
  record: PlacedRecord
  /** Derived label: E1, I2, G4, R, P … in order along the run; '' for kinds without. */
  label: string
  xM: number
  yM: number
  headingRad: number
  /** On the shown run: where its origin projects. Null when the layout has no set-up. */
  runningM: number | null
  offsetM: number | null
  /** Turn against the direction of the run there. */
  turnRad: number
  /** Outline in the site frame, flat points; features: their own points. */
  outlineM: readonly number[]
  /** True when it is attached to the run (moves with it). */
  isAttached: boolean
}

/** One thing the pipe can lie on. A rack gives two (near beam R1, far beam R2); `key` is unique, `itemId` the record. */
export interface SupportView {
  key: string
  itemId: string
  label: string
  kind: 'rack' | 'stand' | 'roller'
  roller: 'flat' | 'V' | 'cradle'
  side: 'infeed' | 'exit'
  runningM: number
  offsetM: number
  turnRad: number
  /** Level of the BOP when the pipe rests on it; null: height unknown. */
  levelM: number | null
  groundLevelM: number
  /** levelM − groundLevelM. */
  saddleM: number | null
  /** The saddle as planned and as the crew measured it, whichever case is derived; null: unknown, not measured. */
  plannedSaddleM: number | null
  measuredSaddleM: number | null
  /** Saddle on the jaw line there, for 'raise to the jaw line'. */
  jawLineSaddleM: number | null
  lowestSaddleM: number | null
  highestSaddleM: number | null
  ratedLoadN: number | null
  /** Plate, or the smaller of 3 in and OD/4; null only when the pipe is unknown too. */
  leadInM: number | null
  leadInIsTypical: boolean
  rollerRadiusM: number | null
  landingAid: 'none' | 'liftByHand' | 'liftByLoader' | 'ramp'
  /** Ground there is guessed: over 25 ft from the nearest level. */
  groundGuessed: boolean
  locked: boolean
}

/** An input nobody has given, named for the reader and reachable. */
export interface MissingInput {
  /** Id of the record that lacks it and the path inside it. */
  recordId: string
  path: string
  label: { en: string; es: string }
}

export interface GroundLine {
  /** Along the shown run, strictly increasing; levels above the datum nail. */
  runningM: readonly number[]
  levelM: readonly number[]
  /** Stretches where the ground is guessed (drawn dashed). */
  guessed: readonly { fromM: number; toM: number }[]
  /** How it was found. */
  from: 'levels' | 'evenSlope' | 'unknown'
  /** Fall along the axis at the datum, drop per length down-string, positive = falls to the exit. */
  fallRatio: number | null
  crossFallRatio: number | null
}

export interface JawsView {
  /** BOP level in the closed jaws at the joint plane; null: jaw height or pipe unknown. */
  bopLevelM: number | null
  /** Slope of the jaw line: rise per length down-string (negative when it falls to the exit). */
  slopeRatio: number
  pitchIsGround: boolean
  innerClampM: number
  outerClampM: number
  liftAtM: number
  liftTravelM: number
  carriageSide: 'infeed' | 'exit'
  machineId: string | null
}

/** Everything that follows from the document by geometry alone, for the shown set-up. Rebuilt on every change. */
export interface SiteModel {
  /** The case derived: variant and what-if. */
  case: DeriveOptions
  /** The layout in this case: without what a what-if takes away. */
  document: YardDocument
  layout: LayoutRecord
  job: JobRecord
  setUp: SetUpRecord | null
  run: RunRecord | null
  /** The string shown; null: one string, derived from the job. */
  string: StringRecord | null
  placed: ReadonlyMap<string, PlacedItem>
  /** Supports sorted by running distance. */
  supports: readonly SupportView[]
  ground: GroundLine
  jaws: JawsView
  /** BOP level in the closed jaws as planned, whichever case is derived. */
  plannedJawM: number | null
  /** Surface under the run at a running distance; null unknown. */
  surfaceAt: (runningM: number) => Surface | null
  /** Site position and direction at a running distance of the shown run (extends straight beyond both ends). */
  atRunning: (runningM: number, offsetM?: number) => { xM: number; yM: number; headingRad: number }
  /** Running distance and offset of a site point on the shown run. */
  toRunning: (xM: number, yM: number) => { runningM: number; offsetM: number }
  groundLevelAt: (runningM: number, offsetM?: number) => number
  /** Bends of the run beyond the exit: running distances of start and end, turn (ccw +), radius. */
  bends: readonly RunBend[]
  /** The job's pipe; null properties where size, DR or class are not known. */
  pipe: JobPipe
  /** Sticks and joints of the shown string. */
  sticks: JobSticks
}

/** A bend of the run: running distances of start and end, turn (ccw +), radius asked for (null: nobody has said). */
export interface RunBend {
  fromM: number
  toM: number
  turnRad: number
  radiusM: number | null
  /** Index into the run's vertices. */
  vertex: number
  /** False where the asked arc finds no room on its legs; it is then drawn with the largest that does. */
  isFitting: boolean
}

export interface JobPipe {
  properties: PipeProperties | null
  odM: number | null
  /** Wall temperature the stiffness is worked with. */
  wallTemperatureC: number
  /** Nobody gave a wall temperature: the 23 °C (73 °F) of the tables stands in, and a finding says so. */
  temperatureAssumed: boolean
  missing: readonly MissingInput[]
  /** Modulus for a question at the wall temperature, Pa; null where pipe or table has none. */
  modulusPa: (question: LoadQuestion) => number | null
  /** Stiffness EI for a question, N·m²; null where pipe or table has none. */
  stiffnessNm2: (question: LoadQuestion) => number | null
}

export interface JobSticks {
  stickLengthM: number | null
  jointLossM: number | null
  /** From the house table, not measured on a trial joint. */
  jointLossIsTypical: boolean
  /** Of the whole job, all strings together. Null while an input is missing. */
  plan: StickPlan | null
  missing: readonly MissingInput[]
  /** Sticks of each string of the set-up by id, in document order; null where not known. Empty without string records. */
  counts: ReadonlyMap<string, number | null>
  /** Sticks of the shown string, which the checks work with: the plan's, or as many as the supports reach for where the needed length is unknown. */
  stickCount: number
  /** True where `stickCount` is that guess. */
  countAssumed: boolean
  /** Length of a string of n sticks, from the datum. 0 where the stick length is unknown. */
  stringLengthM: (sticks: number) => number
}

/** A stage shown: phase and joint number (joint k: string of k sticks fused already when phase is `load`/`fuse`, see planner). */
export interface Stage {
  phase: Phase
  joint: number
  /** In `pull`: running distance of the nose; left out, the pull is shown at its end. */
  tipM?: number
}

/** The bent pipe of one stage as the section draws it. */
export interface SectionProfile {
  stage: Stage
  status: 'ok' | 'missing' | 'unstable' | 'notConverged'
  missing: readonly MissingInput[]
  bodies: readonly {
    name: 'string' | 'stick'
    startM: number
    endM: number
    /** BOP curve, running distance and level. */
    runningM: Float64Array
    levelM: Float64Array
    result: ContactBeamResult
  }[]
  /** By support key. */
  loads: ReadonlyMap<string, { reactionN: number; gapM: number; floats: boolean }>
  jaws: { infeed: readonly { runningM: number; forceN: number }[]; exit: readonly { runningM: number; forceN: number }[] } | null
  sags: readonly { fromM: number; toM: number; sagM: number; atM: number; levelM: number }[]
  tipM: number | null
  tailM: number | null
}
