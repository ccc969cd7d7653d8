/** The machine travels along sticks strung on the right-of-way (docs/formulas/walking.md). */
import { inchM } from '../units/factors.ts'
import { distanceBetween } from '../geometry/distance.ts'
import type { Vec } from '../geometry/vector.ts'
import type { MachineRecord } from '../scene/kinds/machine.ts'
import { runLine } from './ways.ts'
import type { MissingInput, SiteModel } from './types.ts'

export interface StrungStick {
  /** 1 is the nose stick, at the far end of the run. */
  stick: number
  fromM: number
  toM: number
}

export interface WalkJoint {
  joint: number
  /** Where it is made along the run. */
  runningM: number
  /** The two sticks in the jaws. */
  fromM: number
  toM: number
  /** Rise per length of the ground from end to end of the window, and the most it stands off that line; null: no levels. */
  slopeRatio: number | null
  bumpM: number | null
  /** How far the ends of the two straight sticks come to lie beside the run where it bends. */
  swingM: number
  /** How far its loose stick is drawn up from where it was strung. */
  moveM: number
}

export interface Walk {
  /** Gap between strung sticks: carriage travel and 6 to 12 in; null: travel unknown. */
  gapM: { least: number; most: number } | null
  missing: readonly MissingInput[]
  /** As strung, with the least gap (none while the travel is unknown): far end first. */
  sticks: readonly StrungStick[]
  joints: readonly WalkJoint[]
  /** From the tail of the last strung stick to the nose: longer than the string by all gaps and losses. */
  strungFromM: number
  strungToM: number
}

/** Common practice, no published source: a hand and a facer between two sticks besides the carriage's travel. */
const GAP_LEAST_M = 6 * inchM
const GAP_MOST_M = 12 * inchM
const SAMPLE_M = 1.5

const walks = new WeakMap<SiteModel, Walk | null>()

/** Null where the job is not made walking, or stick length or run are missing. Worked out once a site. */
export function walkOf(site: SiteModel): Walk | null {
  let walk = walks.get(site)
  if (walk === undefined) walks.set(site, (walk = build(site)))
  return walk
}

/**
 * Model:  the finished string lies from the datum to L(N) along the run. The machine begins at its far end and comes back:
 *         joint k is made at L(N) − L(k), the string of k sticks lying beyond it where it stays, stick k + 1 drawn up to it.
 *         Sticks are strung nose to tail with a gap, the first where it ends up; so stick i is drawn up by (i − 1)(gap + loss).
 */
function build(site: SiteModel): Walk | null {
  const { stickLengthM, jointLossM, stickCount, stringLengthM } = site.sticks
  if (site.job.method !== 'walking' || stickLengthM === null || site.run === null || site.setUp === null) return null
  const machine = site.placed.get(site.jaws.machineId ?? '')?.record as MachineRecord | undefined
  const travelM = machine?.figures.carriageTravelM.value ?? null
  const missing: MissingInput[] = machine === undefined
    ? [{ recordId: site.layout.id, path: 'machine', label: { en: 'a machine on the plan', es: 'una máquina en el plano' } }]
    : travelM === null ? [{ recordId: machine.id, path: 'figures.carriageTravelM.value', label: { en: 'carriage travel', es: 'carrera del carro' } }] : []
  const gapM = travelM === null ? null : { least: travelM + GAP_LEAST_M, most: travelM + GAP_MOST_M }
  const gap = gapM?.least ?? 0
  const endM = stringLengthM(stickCount)
  const sticks = Array.from({ length: stickCount }, (_, i): StrungStick => {
    const toM = endM - i * (stickLengthM + gap)
    return { stick: i + 1, fromM: toM - stickLengthM, toM }
  })
  const joints = Array.from({ length: Math.max(0, stickCount - 1) }, (_, i): WalkJoint => {
    const runningM = endM - stringLengthM(i + 1)
    const [fromM, toM] = [runningM - stickLengthM, runningM + stickLengthM]
    return { joint: i + 1, runningM, fromM, toM, ...groundIn(site, fromM, toM), swingM: Math.max(asideM(site, runningM, fromM), asideM(site, runningM, toM)), moveM: (i + 1) * (gap + (jointLossM ?? 0)) }
  })
  return { gapM, missing, sticks, joints, strungFromM: sticks.at(-1)?.fromM ?? 0, strungToM: endM }
}

function groundIn(site: SiteModel, fromM: number, toM: number): Pick<WalkJoint, 'slopeRatio' | 'bumpM'> {
  if (site.ground.from === 'unknown') return { slopeRatio: null, bumpM: null }
  const [a, b] = [site.groundLevelAt(fromM), site.groundLevelAt(toM)]
  const slopeRatio = (b - a) / (toM - fromM)
  const count = Math.max(2, Math.ceil((toM - fromM) / SAMPLE_M))
  let bumpM = 0
  for (let i = 1; i < count; i += 1) {
    const at = fromM + ((toM - fromM) * i) / count
    bumpM = Math.max(bumpM, Math.abs(site.groundLevelAt(at) - a - slopeRatio * (at - fromM)))
  }
  return { slopeRatio, bumpM }
}

/** A place of the run from the straight line along it at another. */
function asideM(site: SiteModel, alongM: number, atM: number): number {
  if (site.bends.length === 0) return 0
  const { xM, yM, headingRad } = site.atRunning(alongM)
  const at = site.atRunning(atM)
  return Math.abs(Math.cos(headingRad) * (at.yM - yM) - Math.sin(headingRad) * (at.xM - xM))
}

/** Stretches of the run between two running distances on which something lies within a width of it. */
export interface Crossing {
  itemId: string
  fromM: number
  toM: number
}

/** Looked at every foot: what is narrower than that nobody drives on. */
const CROSSING_STEP_M = 0.3048

/** Where roads and walkways lie across what is strung; a width nobody gave counts as none. */
export function crossingsOf(site: SiteModel, walk: Walk): readonly Crossing[] {
  const { strungFromM, strungToM } = walk
  const line = runLine(site, strungFromM, strungToM)
  return [...site.placed.values()].flatMap(({ record }): Crossing[] => {
    if (record.kind !== 'road' && record.kind !== 'walkway') return []
    const halfM = (record.figures.widthM.value ?? 0) / 2
    const shape = { kind: 'polyline', points: record.points } as const
    if (distanceBetween({ kind: 'polyline', points: line }, shape).distanceM > halfM) return []
    return stretchesWithin(strungFromM, strungToM, (atM) => distanceBetween({ kind: 'point', point: pointAt(site, atM) }, shape).distanceM <= Math.max(halfM, CROSSING_STEP_M / 2)).map((stretch) => ({ itemId: record.id, ...stretch }))
  }).toSorted((a, b) => a.fromM - b.fromM)
}

const pointAt = (site: SiteModel, runningM: number): Vec => {
  const { xM, yM } = site.atRunning(runningM)
  return { xM, yM }
}

function stretchesWithin(fromM: number, toM: number, isIn: (atM: number) => boolean): { fromM: number; toM: number }[] {
  const found: { fromM: number; toM: number }[] = []
  const count = Math.ceil((toM - fromM) / CROSSING_STEP_M)
  for (let i = 0; i <= count; i += 1) {
    const atM = Math.min(toM, fromM + i * CROSSING_STEP_M)
    const open = found.at(-1)
    if (!isIn(atM)) continue
    if (open !== undefined && atM - open.toM <= CROSSING_STEP_M * 1.5) open.toM = atM
    else found.push({ fromM: atM, toM: atM })
  }
  return found
}
