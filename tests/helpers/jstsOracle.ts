/** Distances and areas by the JTS library, an independent implementation. */
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js'
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js'
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js'
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js'
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js'
import IsValidOp from 'jsts/org/locationtech/jts/operation/valid/IsValidOp.js'
import type { Shape } from '../../src/geometry/distance.ts'
import type { Vec } from '../../src/geometry/vector.ts'

const factory = new GeometryFactory()
const coordinates = (points: readonly Vec[]) => points.map(({ xM, yM }) => new Coordinate(xM, yM))

/** JTS has no polygon of one or two points, so these become what is left of them. */
function geometryOf(shape: Shape) {
  const points = shape.kind === 'point' ? [shape.point] : shape.points
  const [first] = points
  if (points.length === 1 || shape.kind === 'point') return factory.createPoint(coordinates(points)[0])
  if (shape.kind === 'polyline') return factory.createLineString(coordinates(points))
  if (points.length === 2) return factory.createLineString(coordinates(points))
  return factory.createPolygon(factory.createLinearRing(coordinates([...points, first as Vec])))
}

export const oracleDistanceM = (a: Shape, b: Shape): number => Number(DistanceOp.distance(geometryOf(a), geometryOf(b)))

/** Area common to a polygon and a strip, arcs flattened to 64 pieces a quarter; null where JTS calls the polygon invalid. */
export function oracleOverlapM2(polygon: readonly Vec[], line: readonly Vec[], widthM: number): number | null {
  const area = geometryOf({ kind: 'polygon', points: polygon })
  if (polygon.length < 3 || !new IsValidOp(area).isValid()) return null
  const strip = BufferOp.bufferOp(geometryOf({ kind: 'polyline', points: line }), widthM / 2, 64)
  return Number(OverlayOp.intersection(area, strip).getArea())
}
