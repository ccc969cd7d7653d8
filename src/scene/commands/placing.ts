import { pointBesidePath, pointOnPath, projectOnPath } from '../../geometry/arc.ts'
import { add, along, rotate, subtract, toTheRight, wrapAngleRad, type Vec } from '../../geometry/vector.ts'
import { runsOf, type YardDocument, type YardRecord } from '../document.ts'
import type { Edit } from '../edit.ts'
import type { PlacedRecord } from '../kinds/index.ts'
import type { Place } from '../parts.ts'
import type { RunRecord, SetUpRecord } from '../records/frame.ts'
import { isFeature, isItem, onAxis, pathOf, resolvePlace, runIdOf } from '../resolve.ts'
import { rounded } from '../rounding.ts'

export type Item = Extract<PlacedRecord, { place: Place }>
export type Feature = Exclude<PlacedRecord, Item>

const tidy = ({ xM, yM }: Vec): Vec => ({ xM: rounded(xM), yM: rounded(yM) })

export const freeAt = (at: Vec, headingRad: number): Place => ({ at: 'free', ...tidy(at), headingRad: rounded(wrapAngleRad(headingRad)) })

/** The same place after its point moved by `d` in the site; attached places stay attached, heading against their carrier unchanged. */
export function shiftedPlace(document: YardDocument, place: Place, d: Vec): Place {
  if (place.at === 'free') return { ...place, ...tidy(add(place, d)) }
  if (place.at === 'onRun') {
    const path = pathOf(document, place.runId)
    const { runningM, offsetM } = projectOnPath(path, add(pointBesidePath(path, place), d))
    return { ...place, runningM: rounded(runningM), offsetM: rounded(offsetM) }
  }
  const carrier = document.records[place.itemId]
  const headingRad = isItem(carrier) ? resolvePlace(document, carrier).headingRad : 0
  const turned = rotate(d, -headingRad)
  return { ...place, dxM: rounded(place.dxM + turned.xM), dyM: rounded(place.dyM + turned.yM) }
}

/** Turned counter-clockwise where it stands. */
export const turnedPlace = (place: Place, turnRad: number): Place =>
  place.at === 'free' ? { ...place, headingRad: rounded(wrapAngleRad(place.headingRad + turnRad)) } : { ...place, turnRad: rounded(wrapAngleRad(place.turnRad + turnRad)) }

/** Free, at the point and heading it has now. */
export function freedPlace(document: YardDocument, item: Item): Place {
  const at = resolvePlace(document, item)
  return freeAt(at, at.headingRad)
}

/** On a run, at the point and heading it has now. */
export function placeOnRun(document: YardDocument, at: { xM: number; yM: number; headingRad: number }, runId: string): Place {
  const path = pathOf(document, runId)
  const { runningM, offsetM } = projectOnPath(path, at)
  const turnRad = wrapAngleRad(at.headingRad - pointOnPath(path, runningM).headingRad)
  return { at: 'onRun', runId, runningM: rounded(runningM), offsetM: rounded(offsetM), turnRad: rounded(turnRad) }
}

/**
 * The place at a running distance and offset of its run: an attached item stays attached; a free one (or one on an item)
 * goes to that point of the site, free, and keeps its angle to the run.
 */
export function placeAtRunning(document: YardDocument, item: Item, to: { runningM?: number | undefined; offsetM?: number | undefined; turnRad?: number | undefined }): Place {
  const { place } = item
  if (place.at === 'onRun') return { ...place, runningM: rounded(to.runningM ?? place.runningM), offsetM: rounded(to.offsetM ?? place.offsetM), turnRad: rounded(to.turnRad ?? place.turnRad) }
  const runId = runIdOf(document, place)
  if (runId === null) return place
  const path = pathOf(document, runId)
  const now = resolvePlace(document, item, runId)
  const turnRad = to.turnRad ?? now.headingRad - pointOnPath(path, now.runningM ?? 0).headingRad
  const runningM = to.runningM ?? now.runningM ?? 0
  const at = pointBesidePath(path, { runningM, offsetM: to.offsetM ?? now.offsetM ?? 0 })
  const headingRad = pointOnPath(path, runningM).headingRad + turnRad
  if (place.at === 'free') return freeAt(at, headingRad)
  const moved = shiftedPlace(document, place, subtract(at, now))
  return turnedPlace(moved, headingRad - now.headingRad)
}

export const withPlace = (item: Item, place: Place): Item => ({ ...item, place })
export const withPoints = (feature: Feature, move: (point: Vec) => Vec): Feature => ({ ...feature, points: feature.points.map((p) => tidy(move(p))) })

/**
 * The set-up that moves when the item is moved: a machine attached at its own set-up marks the datum, so moving it
 * moves datum, axis and all that is attached to them. Null for anything else.
 */
export function setUpCarriedBy(document: YardDocument, record: YardRecord | undefined): SetUpRecord | null {
  if (record === undefined || !('setUpId' in record) || !isItem(record) || record.place.at !== 'onRun') return null
  const run = document.records[record.place.runId]
  if (run?.kind !== 'run' || run.setUpId !== record.setUpId) return null
  const setUp = document.records[run.setUpId]
  return setUp?.kind === 'setUp' ? setUp : null
}

/**
 * Edit of a set-up's datum or heading. The first vertex of its runs keeps its place along the axis when the datum moves
 * and its distance from the datum when the axis turns; further vertices stay where they are in the site.
 */
export function frameEdit(document: YardDocument, setUp: SetUpRecord, to: { datum?: Vec; headingRad?: number }): Edit {
  const next: SetUpRecord = { ...setUp, datum: tidy(to.datum ?? setUp.datum), headingRad: rounded(wrapAngleRad(to.headingRad ?? setUp.headingRad)) }
  const turned = next.headingRad !== setUp.headingRad
  const runs = runsOf(document).filter((run) => run.setUpId === setUp.id && run.vertices.length > 0)
  return { put: [next, ...runs.map((run) => withFirstVertex(run, setUp, next, turned))], remove: [] }
}

function withFirstVertex(run: RunRecord, before: SetUpRecord, after: SetUpRecord, turned: boolean): RunRecord {
  const [first, ...others] = run.vertices
  if (first === undefined) return run
  const corner = onAxis(before, first)
  const fromDatumM = Math.hypot(corner.xM - before.datum.xM, corner.yM - before.datum.yM)
  const moved = turned ? add(after.datum, along(after.headingRad, fromDatumM)) : onAxis(after, corner)
  return { ...run, vertices: [{ ...first, ...tidy(moved) }, ...others] }
}

/** Displacement of `alongM` down-string and `rightM` to the right of a heading. */
export const displacement = (headingRad: number, alongM: number, rightM: number): Vec => add(along(headingRad, alongM), toTheRight(headingRad, rightM))

/** What a selection comes to for a move: nothing moves twice. */
export interface Movers {
  setUps: readonly SetUpRecord[]
  items: readonly Item[]
  features: readonly Feature[]
  runs: readonly RunRecord[]
}

/**
 * Splits a selection for a move or a turn. Locked and missing records are passed over, and so is what moves anyhow:
 * an item on another item of the selection, or on a run whose set-up moves.
 */
export function moversOf(document: YardDocument, ids: readonly string[]): Movers {
  const chosen = [...new Set(ids)].map((id) => document.records[id]).filter((record) => record !== undefined && !('locked' in record && record.locked)) as YardRecord[]
  const setUps = new Map<string, SetUpRecord>()
  for (const record of chosen) {
    const setUp = record.kind === 'setUp' ? record : setUpCarriedBy(document, record)
    if (setUp !== null) setUps.set(setUp.id, setUp)
  }
  const chosenIds = new Set(chosen.map(({ id }) => id))
  const rides = (place: Place): boolean => {
    if (place.at === 'free') return false
    if (place.at === 'onRun') {
      const run = document.records[place.runId]
      return run?.kind === 'run' && setUps.has(run.setUpId)
    }
    const carrier = document.records[place.itemId]
    return chosenIds.has(place.itemId) || (isItem(carrier) && rides(carrier.place))
  }
  return {
    setUps: [...setUps.values()],
    items: chosen.filter((record): record is Item => isItem(record) && !rides(record.place)),
    features: chosen.filter((record): record is Feature => isFeature(record)),
    runs: chosen.filter((record): record is RunRecord => record.kind === 'run'),
  }
}
