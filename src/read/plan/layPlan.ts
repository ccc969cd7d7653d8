import { refused, type Reading } from '../refusal.ts'
import { footM, inchM } from '../../units/factors.ts'
import type { ForeignPlan, ForeignShape, PlanUnit } from './types.ts'

/** Metres of a unit. US survey foot: 1200/3937 m exactly (NIST SP 811, appendix B.6). */
const metresPer: Readonly<Record<Exclude<PlanUnit, 'degrees'>, number>> = { m: 1, ft: footM, usft: 1200 / 3937, in: inchM, cm: 0.01, mm: 0.001 }

/** WGS 84 ellipsoid: semi-major axis and flattening (NGA.STND.0036). */
const WGS84_AXIS_M = 6_378_137
const WGS84_FLATTENING = 1 / 298.257223563

/** Farther from the datum than this nothing of a yard lies; coordinates like that are those of a map. */
export const MOST_AWAY_M = 10_000

export interface LayChoices {
  unit: PlanUnit
  /** By its own coordinates, or its middle on the datum nail. Degrees always go by their middle. */
  where: 'map' | 'middle'
  datum: { xM: number; yM: number }
  /** Where the site frame has its zero on the map; null: nobody has said. */
  mapOrigin: { eastM: number; northM: number } | null
}

export interface LaidShape extends Omit<ForeignShape, 'points'> {
  points: readonly { xM: number; yM: number }[]
}

export interface LaidPlan {
  shapes: readonly LaidShape[]
  widthM: number
  heightM: number
  /** Distance of its middle from the datum. */
  awayM: number
  /** To be kept in the layout: what was taken off the file's coordinates. null: nothing new to keep. */
  mapOrigin: { eastM: number; northM: number } | null
}

interface Box { x0: number; y0: number; x1: number; y1: number }

const boxOf = (shapes: readonly ForeignShape[]): Box => {
  const box: Box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity }
  for (const { points } of shapes) for (const [x, y] of points) {
    box.x0 = Math.min(box.x0, x)
    box.x1 = Math.max(box.x1, x)
    box.y0 = Math.min(box.y0, y)
    box.y1 = Math.max(box.y1, y)
  }
  return box
}

/** Metres east and north a degree at this latitude: radii of curvature of the ellipsoid there. Good to a millimetre over a yard. */
const metresPerDegree = (latitudeDeg: number): { eastM: number; northM: number } => {
  const phi = (latitudeDeg * Math.PI) / 180
  const e2 = WGS84_FLATTENING * (2 - WGS84_FLATTENING)
  const w2 = 1 - e2 * Math.sin(phi) ** 2
  const normalM = WGS84_AXIS_M / Math.sqrt(w2)
  const meridianM = (WGS84_AXIS_M * (1 - e2)) / w2 ** 1.5
  return { eastM: (normalM * Math.cos(phi) * Math.PI) / 180, northM: (meridianM * Math.PI) / 180 }
}

const tidy = (valueM: number): number => Math.round(valueM * 1000) / 1000

/**
 * A foreign plan in the site frame: metres, x right, y up, north of the file up the sheet.
 *
 * Large coordinates are taken off and given back as `mapOrigin`, so that the site stays near zero and what is written out again lies where
 * it did. Refused: degrees that cannot be, and more than 20 km of extent.
 */
export function layPlan({ shapes }: Pick<ForeignPlan, 'shapes'>, { unit, where, datum, mapOrigin }: LayChoices): Reading<{ laid: LaidPlan }> {
  const box = boxOf(shapes)
  if (unit === 'degrees' && (Math.abs(box.x0) > 180 || Math.abs(box.x1) > 180 || Math.abs(box.y0) > 89 || Math.abs(box.y1) > 89)) return refused('coordinates beyond 180 or 89 are no degrees; choose another unit', 'coordenadas de más de 180 u 89 no son grados; elija otra unidad')
  const middle = { x: (box.x0 + box.x1) / 2, y: (box.y0 + box.y1) / 2 }
  const perDegree = unit === 'degrees' ? metresPerDegree(middle.y) : null
  const [perX, perY] = perDegree === null ? [metresPer[unit as Exclude<PlanUnit, 'degrees'>], metresPer[unit as Exclude<PlanUnit, 'degrees'>]] : [perDegree.eastM, perDegree.northM]
  const [widthM, heightM] = [(box.x1 - box.x0) * perX, (box.y1 - box.y0) * perY]
  if (Math.max(widthM, heightM) > 2 * MOST_AWAY_M) return refused('in this unit it is more than 20 km across; choose another unit', 'en esta unidad mide más de 20 km; elija otra unidad')
  const isByMap = where === 'map' && unit !== 'degrees'
  // What is taken off, in metres: the origin of the map, or what brings the middle on to the datum.
  const off = isByMap ? (mapOrigin ?? { eastM: 0, northM: 0 }) : { eastM: tidy(middle.x * perX - datum.xM), northM: tidy(middle.y * perY - datum.yM) }
  const laid = shapes.map((shape): LaidShape => ({ ...shape, points: shape.points.map(([x, y]) => ({ xM: x * perX - off.eastM, yM: y * perY - off.northM })) }))
  const isKept = !isByMap && unit !== 'degrees' && mapOrigin === null && (off.eastM !== 0 || off.northM !== 0)
  return { ok: true, laid: { shapes: laid, widthM, heightM, awayM: Math.hypot(middle.x * perX - off.eastM - datum.xM, middle.y * perY - off.northM - datum.yM), mapOrigin: isKept ? off : null } }
}
