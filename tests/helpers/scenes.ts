import type { YardDocument, YardRecord } from '../../src/scene/document.ts'
import { isFeature, isItem } from '../../src/scene/resolve.ts'
import { rotate, type Vec } from '../../src/geometry/vector.ts'

/** The whole scene turned about the origin and then moved: datum, free items, features, bends, hand-drawn zones. */
export function movedScene(document: YardDocument, by: { dxM: number; dyM: number; turnRad?: number }): YardDocument {
  const turnRad = by.turnRad ?? 0
  const at = ({ xM, yM }: Vec): { xM: number; yM: number } => {
    const turned = rotate({ xM, yM }, turnRad)
    return { xM: turned.xM + by.dxM, yM: turned.yM + by.dyM }
  }
  const move = (record: YardRecord): YardRecord => {
    if (record.kind === 'setUp') return { ...record, datum: at(record.datum), headingRad: record.headingRad + turnRad }
    if (record.kind === 'run') return { ...record, vertices: record.vertices.map((vertex) => ({ ...vertex, ...at(vertex) })) }
    if (record.kind === 'zoneChange' && record.points !== null) return { ...record, points: record.points.map(at) }
    if (isItem(record) && record.place.at === 'free') return { ...record, place: { ...record.place, ...at(record.place), headingRad: record.place.headingRad + turnRad } }
    if (isFeature(record)) return { ...record, points: record.points.map(at) }
    return record
  }
  return { records: Object.fromEntries(Object.entries(document.records).map(([id, record]) => [id, move(record)])) }
}

/** Frozen to the bottom: anything that writes into it throws. */
export function deepFrozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value)
    for (const inner of Object.values(value)) deepFrozen(inner)
  }
  return value
}
