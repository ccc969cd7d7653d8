/** The plan as GeoJSON in metres of the site. */
import type { SiteModel } from '../derive/types.ts'
import { planShapes, type PlanShape } from './planShapes.ts'

type Position = [number, number]

const round = (valueM: number): number => Math.round(valueM * 1e6) / 1e6

/** Closed, counter-clockwise (RFC 7946, 3.1.6). */
const ringOf = (points: readonly Position[]): Position[] => {
  let twiceArea = 0
  points.forEach(([x, y], i) => {
    const [u, v] = points[(i + 1) % points.length]!
    twiceArea += x * v - u * y
  })
  const turned = twiceArea < 0 ? points.toReversed() : [...points]
  return [...turned, turned[0]!]
}

const geometryOf = ({ as, points }: PlanShape, { eastM, northM }: { eastM: number; northM: number }): object => {
  const positions = points.map(({ xM, yM }): Position => [round(xM + eastM), round(yM + northM)])
  if (as === 'area') return { type: 'Polygon', coordinates: [ringOf(positions)] }
  return as === 'line' ? { type: 'LineString', coordinates: positions } : { type: 'Point', coordinates: positions[0]! }
}

/**
 * Text of the file. Coordinates are metres, not degrees: RFC 7946 wants longitude and latitude, which a yard measured by tape does
 * not have; the member `coordinateSystem` says so. Moved to the map origin where the layout has one.
 */
export const geoJsonOf = (site: SiteModel): string => {
  const origin = site.layout.mapOrigin ?? { eastM: 0, northM: 0 }
  return `${JSON.stringify({
    type: 'FeatureCollection',
    coordinateSystem: site.layout.mapOrigin === null ? 'site frame, metres, x right, y up' : 'map grid, metres, east, north',
    features: planShapes(site).map((shape) => ({
      type: 'Feature', id: shape.id, geometry: geometryOf(shape, origin), properties: { layer: shape.layer, name: shape.text, ...shape.properties },
    })),
  }, null, 1)}\n`
}
