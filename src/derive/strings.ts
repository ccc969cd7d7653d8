/** The strings a job is made in, where they are parked, and the joints made between them later (docs/formulas/strings.md). */
import { jobClock } from '../engine/clock/jobClock.ts'
import { jointTimes } from '../engine/clock/jointTimes.ts'
import { madeLengthM } from '../engine/pipe/stickPlan.ts'
import { breakawayFactors } from '../engine/pipe/tables.ts'
import { recordsOf } from '../scene/document.ts'
import type { StringRecord } from '../scene/records/frame.ts'
import { ASSUMED_START_MIN, clockOf } from './clock.ts'
import type { SiteModel } from './types.ts'

export { evenShares } from '../engine/pipe/stringSplit.ts'

export interface StringView {
  record: StringRecord
  /** A, B, C … in the order they are made; its own name where it has one. */
  name: string
  /** Null: not known yet. */
  sticks: number | null
  lengthM: number | null
  isShown: boolean
  /** Row it is parked in, 1 next to the line; null: not said, or it stays on the line. */
  row: number | null
}

/** A, B … Z, then 27, 28 …: nobody paints more letters on pipe. */
const letterOf = (index: number): string => (index < 26 ? String.fromCharCode(65 + index) : `${index + 1}`)

const views = new WeakMap<SiteModel, readonly StringView[]>()

/** Strings of the shown set-up in the order they are made. Empty: the job is one string that nobody has written down. */
export function stringsOf(site: SiteModel): readonly StringView[] {
  let made = views.get(site)
  if (made === undefined) views.set(site, (made = build(site)))
  return made
}

function build(site: SiteModel): StringView[] {
  const { stickLengthM, jointLossM, counts } = site.sticks
  return recordsOf(site.document, 'string').filter(({ setUpId }) => setUpId === site.setUp?.id).toSorted((a, b) => a.order - b.order).map((record, index) => {
    const sticks = counts.get(record.id) ?? null
    return {
      record,
      name: record.name === '' ? letterOf(index) : record.name,
      sticks,
      lengthM: sticks === null || stickLengthM === null || jointLossM === null ? null : madeLengthM(sticks, stickLengthM, jointLossM),
      isShown: site.string?.id === record.id,
      row: record.parkingRow === 0 ? null : record.parkingRow,
    }
  })
}

/** Room to walk beside each parked string: 3 ft, common practice, no published source. */
export const PARKING_WALK_M = 0.9144

export interface ParkedString {
  view: StringView
  /** Middle of its row beside the run, right positive. */
  offsetM: number
  fromM: number
  toM: number
}

export interface ParkingRows {
  /** Centre to centre of two rows: OD and room to walk. */
  spacingM: number
  /** From the line to the middle of row 1: half the wider of pipe and exit stands more on the line's side. */
  firstM: number
  /** Where the tails lie: clear of the machine. */
  fromM: number
}

/**
 * Where rows lie.
 *
 * Model:  spacing OD + 3 ft. Row 1: room to walk from the widest of pipe, stands and rollers on the exit line, whichever
 *         reaches farthest. Tails lie at the exit end of the machine: a string rolled aside beside it would meet it.
 * Output: null while the OD is unknown or there is no run.
 */
export function parkingRowsOf(site: SiteModel): ParkingRows | null {
  const { odM } = site.pipe
  if (odM === null || site.run === null) return null
  let [halfM, fromM] = [odM / 2, 0]
  for (const item of site.placed.values()) {
    const isOnLine = item.kind === 'machine' || ((item.kind === 'stand' || item.kind === 'roller') && item.runningM !== null && item.runningM > 0 && Math.abs(item.offsetM ?? 0) < odM)
    if (!isOnLine) continue
    for (let i = 0; i < item.outlineM.length; i += 2) {
      const { runningM, offsetM } = site.toRunning(item.outlineM[i]!, item.outlineM[i + 1]!)
      if (item.kind === 'machine') fromM = Math.max(fromM, runningM)
      else halfM = Math.max(halfM, Math.abs(offsetM))
    }
  }
  return { spacingM: odM + PARKING_WALK_M, firstM: halfM + PARKING_WALK_M + odM / 2, fromM }
}

/** Parked strings of known length, those of the strings not shown that have a row, in the order they are made. */
export function parkedStringsOf(site: SiteModel): readonly ParkedString[] {
  const all = stringsOf(site)
  if (all.length < 2) return []
  const rows = parkingRowsOf(site)
  if (rows === null) return []
  return all.flatMap((view) => {
    if (view.isShown || view.row === null || view.lengthM === null) return []
    const side = view.record.parkingSide === 'left' ? -1 : 1
    return [{ view, offsetM: side * (rows.firstM + (view.row - 1) * rows.spacingM), fromM: rows.fromM, toM: rows.fromM + view.lengthM }]
  })
}

export interface MidJoint {
  /** 1 joins the first two strings. */
  index: number
  /** Names of the strings it joins. */
  between: readonly [string, string]
  /** Day (0 first) and minute after midnight, as if the strings were joined as soon as the last one is made; null: the pipe is unknown, or no joint fits into a day. */
  startsAt: { day: number; min: number } | null
  doneAt: { day: number; min: number } | null
}

export interface MidJoints {
  joints: readonly MidJoint[]
  /** One of them from clamping to cooled and held, by low, likely and high times; null while the pipe is unknown. */
  eachS: { low: number; likely: number; high: number } | null
  /** Nobody said when work starts: reckoned from 7:00. */
  startAssumed: boolean
}

/**
 * Joints between strings.
 *
 * Model:  one from clamping to cooled (src/engine/clock), no stick to load: the two strings are drawn together. They
 *         come last: all joints of all strings, then these, one after the other with the rounds of the job.
 */
export function midJointsOf(site: SiteModel): MidJoints {
  const all = stringsOf(site)
  const { properties } = site.pipe
  const { clock, procedure, method } = site.job
  const startAssumed = clock.startMin === null
  const names = all.slice(1).map(({ name }, i): readonly [string, string] => [all[i]!.name, name])
  const bare = names.map((between, i): MidJoint => ({ index: i + 1, between, startsAt: null, doneAt: null }))
  if (properties === null) return { joints: bare, eachS: null, startAssumed }
  const steps = jointTimes({
    odM: properties.odM, minimumWallM: properties.minimumWallM, walks: method === 'walking',
    procedure: procedure === null ? null : { soakS: procedure.soakS.value, openCloseS: procedure.openCloseS.value, coolS: procedure.coolS.value, holdBeforePullS: procedure.holdBeforePullS.value },
  })
  const fused = steps.filter(({ step }) => step !== 'load' && step !== 'pull')
  const sum = (which: 'lowS' | 'likelyS' | 'highS'): number => fused.reduce((total, step) => total + step[which], 0)
  const eachS = { low: sum('lowS'), likely: sum('likelyS'), high: sum('highS') }
  if (all.some(({ sticks }) => sticks === null)) return { joints: bare, eachS, startAssumed }
  const before = all.reduce((joints, { sticks }) => joints + sticks! - 1, 0)
  const startMin = clock.startMin ?? ASSUMED_START_MIN
  const endMin = clock.endMin !== null && clock.endMin > startMin ? clock.endMin : null
  const { rows } = jobClock({ joints: before + names.length, steps, which: 'likelyS', startMin, endMin, breaks: clock.breaks })
  return {
    eachS, startAssumed,
    joints: bare.map((joint, i) => {
      const row = rows[before + i]
      return row === undefined ? joint : { ...joint, startsAt: { day: row.day, min: row.fuseMin }, doneAt: { day: row.day, min: row.cooledMin } }
    }),
  }
}

/** When each string is made, likely times, the joints before it first. Null: not known. */
export function madeAt(site: SiteModel): readonly ({ day: number; min: number } | null)[] {
  const all = stringsOf(site)
  const { steps } = clockOf(site)
  if (steps === null || all.some(({ sticks }) => sticks === null)) return all.map(() => null)
  const { clock } = site.job
  const startMin = clock.startMin ?? ASSUMED_START_MIN
  const endMin = clock.endMin !== null && clock.endMin > startMin ? clock.endMin : null
  const joints = all.reduce((sum, { sticks }) => sum + sticks! - 1, 0)
  const { rows } = jobClock({ joints, steps, which: 'likelyS', startMin, endMin, breaks: clock.breaks })
  let done = 0
  return all.map(({ sticks }) => {
    done += sticks! - 1
    const row = rows[done - 1]
    return row === undefined ? null : { day: row.day, min: row.cooledMin }
  })
}

/** Friction of a string in its bed, host pipe, bore or trench, where nobody has measured it: planning value 0.5 of ASTM F1962, from memory, confirm. */
export const BED_FRICTION_RATIO = 0.5

export interface Restart {
  lengthM: number
  weightN: number
  /** Moving on, µ·w·L. */
  pullN: number
  /** Starting again after it lay for a mid joint: friction × breakaway. */
  restartN: number
}

/** Pull of all strings joined, on the level, at the end of the way in. Null while pipe or lengths are unknown. */
export function restartOf(site: SiteModel): Restart | null {
  const { properties } = site.pipe
  const { plan } = site.sticks
  if (properties === null || plan === null) return null
  const lengthM = Math.min(plan.madeLengthM, plan.wantedLengthM)
  const weightN = properties.lineLoadNPerM * lengthM
  return { lengthM, weightN, pullN: BED_FRICTION_RATIO * weightN, restartN: BED_FRICTION_RATIO * breakawayFactors.high * weightN }
}
