/** The site model: everything that follows from the document by geometry alone. */
import { pathOf } from '../scene/resolve.ts'
import { pointOnPath, projectOnPath, type Path } from '../geometry/arc.ts'
import { add, toTheRight } from '../geometry/vector.ts'
import type { SymbolContext } from '../drawing/primitives.ts'
import { jobOf, layoutOf, recordsOf, type YardDocument } from '../scene/document.ts'
import type { MachineRecord } from '../scene/kinds/machine.ts'
import type { AsSetRecord } from '../scene/records/beside.ts'
import type { JobRecord, RunRecord, SetUpRecord, Surface } from '../scene/records/frame.ts'
import { groundOf, type GroundModel } from './ground.ts'
import { placedItems, type ShownRun } from './items.ts'
import { pipeOf } from './pipe.ts'
import { sticksOf } from './sticks.ts'
import { supportsOf } from './supports.ts'
import type { GroundLine, JawsView, PlacedItem, RunBend, SiteModel } from './types.ts'
import { jobInCase, sunk, surfaceInCase, withoutMissing, type DeriveOptions } from './whatIf.ts'

export type { DeriveOptions } from './whatIf.ts'

/** Typical figures of the machine, where a figure is unknown: clamps at 4 in and 28 in (planner), lifts just beyond. */
const TYPICAL_INNER_CLAMP_M = 0.1016
const TYPICAL_OUTER_CLAMP_M = 0.7112
const TYPICAL_LIFT_AT_M = 1.2
/** The ground line is drawn this much beyond what lies on it. */
const GROUND_MARGIN_M = 6
/** Room shown to either side while no stick length is known. */
const LEAST_REACH_M = 12

/**
 * Geometry of the shown set-up: places, labels, supports with levels, ground line, jaw line, bends, pipe and sticks.
 *
 * Cost: linear in the items; records that did not change are not worked out again (1 ms at 100 items, 4 ms at 1,000).
 * Frames and signs: src/derive/types.ts. Never throws for a valid document; a layout without a set-up or a run gives
 * items in the site frame and empty supports.
 * A what-if changes what is derived and never the document: labels stay those of the plan, what is missing is in none
 * of the answers (`document` included), and `case` says what was supposed.
 */
export function deriveSite(planned: YardDocument, options: DeriveOptions = {}): SiteModel {
  const whatIf = options.whatIf ?? {}
  const document = withoutMissing(planned, whatIf)
  const job = jobInCase(jobOf(document), whatIf)
  const setUps = recordsOf(document, 'setUp')
  const setUp = setUps.find(({ id }) => id === options.setUpId) ?? setUps[0] ?? null
  const run = setUp === null ? null : (recordsOf(document, 'run').find(({ setUpId }) => setUpId === setUp.id) ?? null)
  const ownStrings = recordsOf(document, 'string').filter(({ setUpId }) => setUpId === setUp?.id)
  const string = ownStrings.find(({ id }) => id === options.stringId) ?? ownStrings[0] ?? null
  const strings = { all: ownStrings, shown: string }
  const pipe = pipeOf(job, whatIf)
  const shown = setUp === null || run === null ? null : shownRun(document, setUp, run)
  // Placed by the whole plan: what hangs on a missing item stays where it is, and no label moves on to another stand.
  const everything = placedItems(planned, shown, contextOf(jobOf(document), pipe.odM))
  const placed = document === planned ? everything : new Map([...everything].filter(([id]) => document.records[id] !== undefined))
  const base = { case: options, document, layout: layoutOf(document), job, setUp, run, string, placed, pipe }
  if (setUp === null || run === null || shown === null) {
    return { ...base, supports: [], ground: noGround, jaws: jawsOf(null, null, null), plannedJawM: null, sticks: sticksOf(job, strings, pipe.odM, 0), bends: [], ...withoutRun }
  }
  const { path } = shown
  const ground = groundFor(shown, setUp, placed)
  const plannedJaws = jawsOf(machineOf(placed, setUp), setUp.pitchRad ?? null, ground.fallRatio, pipe.odM)
  const asSet = new Map(recordsOf(document, 'asSet').map((record) => [record.itemId, record]))
  const usesAsSet = options.variant === 'asSet'
  const jaws = usesAsSet ? jawsAsSet(plannedJaws, asSet) : plannedJaws
  const supports = sunk(supportsOf(placed.values(), { path, ground, jaws, plannedJaws, odM: pipe.odM, asSet, usesAsSet }), whatIf)
  const sticks = sticksOf(job, strings, pipe.odM, supports.at(-1)?.runningM ?? 0)
  return {
    ...base,
    supports,
    ground: groundLine(ground, supports, placed, sticks.stickLengthM, sticks.stringLengthM(sticks.stickCount)),
    jaws,
    plannedJawM: plannedJaws.bopLevelM,
    sticks,
    bends: bendsOf(shown, run),
    surfaceAt: (runningM) => surfaceInCase(surfaceAt(shown, run, runningM), whatIf),
    atRunning: (runningM, offsetM = 0) => {
      const pose = pointOnPath(path, runningM)
      return offsetM === 0 ? pose : { ...add(pose, toTheRight(pose.headingRad, offsetM)), headingRad: pose.headingRad }
    },
    toRunning: (xM, yM) => projectOnPath(path, { xM, yM }),
    groundLevelAt: ground.levelAt,
  }
}

const noGround: GroundLine = { runningM: [], levelM: [], guessed: [], from: 'unknown', fallRatio: null, crossFallRatio: null }
const withoutRun: Pick<SiteModel, 'surfaceAt' | 'atRunning' | 'toRunning' | 'groundLevelAt'> = {
  surfaceAt: () => null,
  atRunning: (runningM, offsetM = 0) => ({ xM: runningM, yM: 0 - offsetM, headingRad: 0 }),
  toRunning: (xM, yM) => ({ runningM: xM, offsetM: 0 - yM }),
  groundLevelAt: () => 0,
}

// The caches below keep nothing but what their keys determine; they only spare work from frame to frame.
const shownRuns = new WeakMap<RunRecord, { setUp: SetUpRecord; shown: ShownRun }>()
const contexts = new WeakMap<JobRecord, SymbolContext>()
const grounds = new WeakMap<ShownRun, { setUp: SetUpRecord; levels: readonly PlacedItem[]; model: GroundModel }>()

function shownRun(document: YardDocument, setUp: SetUpRecord, run: RunRecord): ShownRun {
  const before = shownRuns.get(run)
  const path = pathOf(document, run.id)
  if (before !== undefined && before.shown.path === path) return before.shown
  const shown = { runId: run.id, path }
  shownRuns.set(run, { setUp, shown })
  return shown
}

function contextOf(job: JobRecord, odM: number | null): SymbolContext {
  let context = contexts.get(job)
  if (context === undefined) contexts.set(job, (context = { pipeOuterDiameterM: odM, stickLengthM: job.stickLengthM, pxPerM: 20 }))
  return context
}

function groundFor(shown: ShownRun, setUp: SetUpRecord, placed: ReadonlyMap<string, PlacedItem>): GroundModel {
  const levels = [...placed.values()].filter(({ record }) => record.kind === 'level' && record.figures.levelM.value !== null)
  const before = grounds.get(shown)
  if (before?.setUp === setUp && before.levels.length === levels.length && before.levels.every((item, i) => item === levels[i])) return before.model
  const datumLevelM = setUp.groundLevelM ?? 0
  const measured = levels.map(({ xM, yM, record }) => ({ xM, yM, levelM: (record.kind === 'level' ? (record.figures.levelM.value ?? 0) : 0) - datumLevelM }))
  const model = groundOf(shown.path, setUp, measured)
  grounds.set(shown, { setUp, levels, model })
  return model
}

const machineOf = (placed: ReadonlyMap<string, PlacedItem>, setUp: SetUpRecord): MachineRecord | null => {
  for (const { record } of placed.values()) if (record.kind === 'machine' && record.setUpId === setUp.id) return record
  return null
}

const jawViews = new WeakMap<MachineRecord, { pitchRad: number | null; fallRatio: number | null; odM: number | null; view: JawsView }>()

function jawsOf(machine: MachineRecord | null, pitchRad: number | null, fallRatio: number | null, odM: number | null = null): JawsView {
  if (machine === null) return jawsView(machine, pitchRad, fallRatio, odM)
  const before = jawViews.get(machine)
  if (before !== undefined && before.pitchRad === pitchRad && before.fallRatio === fallRatio && before.odM === odM) return before.view
  const view = jawsView(machine, pitchRad, fallRatio, odM)
  jawViews.set(machine, { pitchRad, fallRatio, odM, view })
  return view
}

/** Pitch null: the machine follows the fall of the ground under it; where that is unknown too it is taken level. */
function jawsView(machine: MachineRecord | null, pitchRad: number | null, fallRatio: number | null, odM: number | null): JawsView {
  const figures = machine?.figures
  const jawHeightM = figures?.jawHeightM.value ?? null
  return {
    bopLevelM: jawHeightM === null || odM === null ? null : jawHeightM - odM / 2,
    slopeRatio: pitchRad === null ? 0 - (fallRatio ?? 0) : Math.tan(pitchRad),
    pitchIsGround: pitchRad === null,
    innerClampM: figures?.innerClampM.value ?? TYPICAL_INNER_CLAMP_M,
    outerClampM: figures?.outerClampM.value ?? TYPICAL_OUTER_CLAMP_M,
    liftAtM: figures?.liftAtM.value ?? TYPICAL_LIFT_AT_M,
    liftTravelM: figures?.liftTravelM.value ?? 0,
    carriageSide: machine?.carriageSide ?? 'infeed',
    machineId: machine?.id ?? null,
  }
}

/** The jaws at the height the crew measured the pipe in them; a pitch is not measured. */
function jawsAsSet(planned: JawsView, asSet: ReadonlyMap<string, AsSetRecord>): JawsView {
  const measuredM = asSet.get(planned.machineId ?? '')?.saddleM ?? null
  return measuredM === null ? planned : { ...planned, bopLevelM: measuredM }
}

function groundLine(ground: GroundModel, supports: SiteModel['supports'], placed: ReadonlyMap<string, PlacedItem>, stickLengthM: number | null, stringLengthM: number): GroundLine {
  const reachM = Math.max(stickLengthM ?? 0, LEAST_REACH_M)
  let [fromM, toM] = [-reachM, Math.max(reachM, stringLengthM)]
  for (const { runningM } of supports) [fromM, toM] = [Math.min(fromM, runningM), Math.max(toM, runningM)]
  for (const { record, runningM } of placed.values()) if (record.kind === 'puller' && runningM !== null) toM = Math.max(toM, runningM)
  return { ...ground.line(fromM - GROUND_MARGIN_M, toM + GROUND_MARGIN_M), fallRatio: ground.fallRatio, crossFallRatio: ground.crossFallRatio }
}

/** Surface of the leg a running distance lies on; half of each arc belongs to either leg. */
function surfaceAt({ path }: ShownRun, run: RunRecord, runningM: number): Surface | null {
  if (run.surfaces.length === 0) return null
  const leg = path.bends.length === 0 ? 0 : legAt(path, runningM)
  return run.surfaces[Math.min(leg, run.surfaces.length - 1)] ?? null
}

function legAt(path: Path, runningM: number): number {
  let leg = 0
  for (const piece of path.pieces) {
    if (piece.kind === 'straight' ? runningM >= piece.startM : runningM >= piece.startM + piece.lengthM / 2) leg = piece.kind === 'straight' ? Math.max(leg, piece.leg) : leg + 1
  }
  return leg
}

function bendsOf({ path }: ShownRun, run: RunRecord): RunBend[] {
  const arcs = new Map(path.pieces.flatMap((piece) => (piece.kind === 'arc' ? [[piece.bend, piece] as const] : [])))
  return path.bends.map((bend, index) => {
    const arc = arcs.get(index)
    // Vertex 0 of the path is the datum; a sharp corner lies where the leg before it ends.
    const vertex = bend.vertex - 1
    const atM = arc?.startM ?? cornerM(path, bend.vertex)
    return { fromM: atM, toM: atM + (arc?.lengthM ?? 0), turnRad: bend.turnRad, radiusM: run.vertices[vertex]?.radiusM ?? null, vertex, isFitting: bend.isFitting }
  })
}

function cornerM(path: Path, vertex: number): number {
  const leg = path.pieces.find((piece) => piece.kind === 'straight' && piece.leg === vertex - 1)
  return leg === undefined ? 0 : leg.startM + leg.lengthM
}
