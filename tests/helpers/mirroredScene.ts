/** The same yard seen in a mirror along x: left and right change places, nothing else. */
import type { YardDocument, YardRecord } from '../../src/scene/document.ts'
import type { Place } from '../../src/scene/parts.ts'

interface Point {
  xM: number
  yM: number
}

/** 0 stays 0 and does not become −0, so that mirrored twice is the same again. */
const minus = (value: number): number => 0 - value
const minusOrNull = (value: number | null): number | null => (value === null ? null : minus(value))
const flip = <P extends Point>(point: P): P => ({ ...point, yM: minus(point.yM) })

function mirroredPlace(place: Place): Place {
  if (place.at === 'free') return { ...flip(place), headingRad: minus(place.headingRad) }
  if (place.at === 'onRun') return { ...place, offsetM: minus(place.offsetM), turnRad: minus(place.turnRad) }
  return { ...place, dyM: minus(place.dyM), turnRad: minus(place.turnRad) }
}

function mirroredRecord(record: YardRecord): YardRecord {
  if (record.kind === 'setUp') return { ...record, datum: flip(record.datum), headingRad: minus(record.headingRad), crossFallRatio: minusOrNull(record.crossFallRatio) }
  if (record.kind === 'run') return { ...record, vertices: record.vertices.map(flip) }
  if (record.kind === 'job') return { ...record, stickBowTurnRad: minusOrNull(record.stickBowTurnRad) }
  if (record.kind === 'zoneChange') return { ...record, points: record.points === null ? null : record.points.map(flip) }
  if (record.kind === 'asSet') return { ...record, offsetM: minusOrNull(record.offsetM) }
  if (record.kind === 'rack') return { ...record, place: mirroredPlace(record.place), openSide: record.openSide === 'L' ? 'R' : 'L', stopsLeft: record.stopsRight, stopsRight: record.stopsLeft }
  if ('points' in record) return { ...record, points: record.points.map(flip) } as YardRecord
  if ('place' in record) return { ...record, place: mirroredPlace(record.place) } as YardRecord
  return record
}

/** Outlines keep the order of their corners and so turn the other way; nothing may depend on that either. */
export const mirroredScene = ({ records }: YardDocument): YardDocument => ({ records: Object.fromEntries(Object.entries(records).map(([id, record]) => [id, mirroredRecord(record)])) })
