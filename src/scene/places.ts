import { pathFromVertices, pointBesidePath, pointOnPath, projectOnPath, type Path } from '../geometry/arc.ts'
import { add, along, dotM2, rotate, subtract, wrapAngleRad, type Vec } from '../geometry/vector.ts'
import { runsOf, type YardDocument, type YardRecord } from './document.ts'
import type { PlacedRecord } from './kinds/index.ts'
import type { Place } from './parts.ts'
import type { RunRecord, SetUpRecord } from './records/frame.ts'

/** Where something lies: in the site frame, and beside the run it belongs to (null where the layout has no run). */
export interface ResolvedPlace {
  xM: number
  yM: number
  /** Counter-clockwise from +x, in (−π, π]. */
  headingRad: number
  /** From the datum along the run: exit positive, infeed negative. */
  runningM: number | null
  /** From the run, positive to the right looking down-string. */
  offsetM: number | null
}

/** A place that leads nowhere: it names a record that is not there, or comes back to itself. `ids` is the chain of references. */
export class PlaceError extends RangeError {
  readonly ids: readonly string[]
  constructor(message: string, ids: readonly string[]) {
    super(message)
    this.name = 'PlaceError'
    this.ids = ids
  }
}

/** The first leg is never shorter than this, so that it always has the direction of the axis. */
const SHORTEST_FIRST_LEG_M = 0.1

/** Where the first vertex of a run lies: on the axis, at its distance along it. */
export const onAxis = (setUp: Pick<SetUpRecord, 'datum' | 'headingRad'>, point: Vec): Vec => {
  const alongM = dotM2(subtract(point, setUp.datum), along(setUp.headingRad, 1))
  return add(setUp.datum, along(setUp.headingRad, Math.max(SHORTEST_FIRST_LEG_M, alongM)))
}

const paths = new WeakMap<RunRecord, { setUp: SetUpRecord; path: Path }>()

/**
 * Path of a run from its set-up's datum (running 0) down-string.
 *
 * The first leg is the axis by construction: of the first vertex only its distance along the axis counts. Without
 * vertices the path is 1 m of axis; both ends extend straight, so the infeed side is the axis backwards.
 * Fails: PlaceError naming the run or its set-up where one is not there.
 */
export function pathOf(document: YardDocument, runId: string): Path {
  const run = document.records[runId]
  if (run?.kind !== 'run') throw new PlaceError(`run ${runId} is not in the document`, [runId])
  const setUp = document.records[run.setUpId]
  if (setUp?.kind !== 'setUp') throw new PlaceError(`set-up ${run.setUpId} of run ${runId} is not in the document`, [runId, run.setUpId])
  const made = paths.get(run)
  if (made?.setUp === setUp) return made.path
  const { datum, headingRad } = setUp
  const [first, ...others] = run.vertices
  const rest = first === undefined ? [{ ...add(datum, along(headingRad, 1)), radiusM: 0 }] : [{ ...onAxis(setUp, first), radiusM: first.radiusM ?? 0 }]
  const path = pathFromVertices([{ ...datum, radiusM: 0 }, ...rest, ...others.map((v) => ({ xM: v.xM, yM: v.yM, radiusM: v.radiusM ?? 0 }))])
  paths.set(run, { setUp, path })
  return path
}

/** Middle of a feature's points, the place it is moved and named by. */
export const middleOf = (points: readonly Vec[]): Vec => {
  const n = Math.max(1, points.length)
  return { xM: points.reduce((sum, p) => sum + p.xM, 0) / n, yM: points.reduce((sum, p) => sum + p.yM, 0) / n }
}

const firstRuns = new WeakMap<YardDocument, string | null>()

/** Id of the first run, found once a document: every free item asks for it in every frame of a drag. */
const firstRunId = (document: YardDocument): string | null => {
  let id = firstRuns.get(document)
  if (id === undefined) firstRuns.set(document, (id = runsOf(document)[0]?.id ?? null))
  return id
}

/** The run an item belongs to: the one it is on, the one of what it is attached to, else the first of the document. */
export function runIdOf(document: YardDocument, place: Place): string | null {
  if (place.at === 'onRun') return place.runId
  const root = place.at === 'onItem' ? rootPlace(document, place, []) : place
  return root.at === 'onRun' ? root.runId : firstRunId(document)
}

function rootPlace(document: YardDocument, place: Place, chain: readonly string[]): Exclude<Place, { at: 'onItem' }> {
  if (place.at !== 'onItem') return place
  return rootPlace(document, parentOf(document, place, chain).place, [...chain, place.itemId])
}

type Item = Extract<PlacedRecord, { place: Place }>

/** Whether a record has a place of its own (items do; features carry points). */
export const isItem = (record: YardRecord | undefined): record is Item => record !== undefined && 'place' in record
export const isFeature = (record: YardRecord | undefined): record is Exclude<PlacedRecord, { place: Place }> => record !== undefined && 'points' in record && record.kind !== 'zoneChange'

function parentOf(document: YardDocument, place: Extract<Place, { at: 'onItem' }>, chain: readonly string[]): Item {
  const { itemId } = place
  if (chain.includes(itemId)) {
    const loop = [...chain.slice(chain.indexOf(itemId)), itemId]
    throw new PlaceError(`places go round in a loop: ${loop.join(' → ')}`, loop)
  }
  const parent = document.records[itemId]
  if (!isItem(parent)) throw new PlaceError(`item ${itemId} is not in the document or has no place`, [...chain, itemId])
  return parent
}

interface SitePose {
  xM: number
  yM: number
  headingRad: number
}

function poseOf(document: YardDocument, place: Place, chain: readonly string[]): SitePose {
  if (place.at === 'free') return { xM: place.xM, yM: place.yM, headingRad: wrapAngleRad(place.headingRad) }
  if (place.at === 'onRun') {
    const path = pathOf(document, place.runId)
    const heading = pointOnPath(path, place.runningM).headingRad
    return { ...pointBesidePath(path, place), headingRad: wrapAngleRad(heading + place.turnRad) }
  }
  const parent = poseOf(document, parentOf(document, place, chain).place, [...chain, place.itemId])
  return { ...add(parent, rotate({ xM: place.dxM, yM: place.dyM }, parent.headingRad)), headingRad: wrapAngleRad(parent.headingRad + place.turnRad) }
}

const resolved = new WeakMap<PlacedRecord, { path: Path | null; answer: ResolvedPlace }>()

/**
 * Where a place, an item or a feature lies.
 *
 * References are followed as a tree (run → its set-up, item → item). An item on a run keeps the running distance and
 * offset it was given; anything else is projected on to the run it belongs to (`runIdOf`), or on to `runId` where named.
 * A feature lies at the middle of its points, heading 0. The answer for a record is kept as long as its path is the
 * same, across documents: in a drag only what moves is worked out again.
 * Fails: PlaceError naming the chain where a reference is missing or goes round in a loop.
 */
export function resolvePlace(document: YardDocument, placeOrRecord: Place | PlacedRecord, runId?: string): ResolvedPlace {
  if ('at' in placeOrRecord) return resolve(document, placeOrRecord, runId)
  const record = placeOrRecord
  const place = placeOf(record)
  if (runId !== undefined || place.at === 'onItem') return resolve(document, place, runId, [record.id])
  const on = place.at === 'onRun' ? place.runId : firstRunId(document)
  const path = on === null ? null : pathOf(document, on)
  const known = resolved.get(record)
  if (known !== undefined && known.path === path) return known.answer
  const answer = resolve(document, place, undefined, [record.id])
  resolved.set(record, { path, answer })
  return answer
}

const placeOf = (record: PlacedRecord): Place => (isItem(record) ? record.place : { at: 'free', ...middleOf(record.points), headingRad: 0 })

function resolve(document: YardDocument, place: Place, runId: string | undefined, chain: readonly string[] = []): ResolvedPlace {
  const pose = poseOf(document, place, chain)
  if (place.at === 'onRun' && (runId ?? place.runId) === place.runId) return { ...pose, runningM: place.runningM, offsetM: place.offsetM }
  const on = runId ?? runIdOf(document, place)
  return on === null ? { ...pose, runningM: null, offsetM: null } : { ...pose, ...projectOnPath(pathOf(document, on), pose) }
}
