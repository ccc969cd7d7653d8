/** Raw case 'clearance': JSON in SI units with short field names, as docs/headless.md gives them. */
import { type Obstacle, clearanceOf } from '../engine/clearance/solveClearance.ts'
import type { Vec } from '../geometry/vector.ts'
import { InputRefused, type Reader, listField, nameField, numberField, objectField, oneOf } from './fields.ts'

const anyNumber = numberField()
const notNegative = numberField({ atLeast: 0 })

/** Points of one case, all figures together. */
const MOST_POINTS = 100_000

const pair = listField(anyNumber, { atLeast: 2, atMost: 2 })
const place: Reader<Vec> = (value, path) => {
  const [xM, yM] = pair(value, path)
  return { xM: xM as number, yM: yM as number }
}
const places = listField(place, { atLeast: 1, atMost: MOST_POINTS })

const readPolygon = objectField({ type: oneOf('polygon'), pts: places }, {})
const readPolyline = objectField({ type: oneOf('polyline'), pts: places, width: notNegative }, {})
const readPoint = objectField({ type: oneOf('point'), x: anyNumber, y: anyNumber, radius: notNegative }, {})

const readObstacle: Reader<Obstacle> = (value, path) => {
  const type = typeof value === 'object' && value !== null && 'type' in value ? value.type : undefined
  if (type === 'polyline') {
    const { pts, width } = readPolyline(value, path)
    return { kind: 'polyline', points: pts, widthM: width }
  }
  if (type === 'point') {
    const { x, y, radius } = readPoint(value, path)
    return { kind: 'point', point: { xM: x, yM: y }, radiusM: radius }
  }
  if (type === 'polygon') return { kind: 'polygon', points: readPolygon(value, path).pts }
  oneOf('polygon', 'polyline', 'point')(type, `${path}.type`)
  throw new InputRefused(`${path}.type is missing`)
}

const readCase = objectField(
  {
    corridor: objectField({ pts: places, width: notNegative }, {}),
    obstacles: listField(readObstacle, { atLeast: 0, atMost: MOST_POINTS }),
  },
  { name: nameField },
)

/**
 * Solves one raw case. Output: `{ name, status: 'ok', obstacles: [{ dist, clearance, hit, overlap_area? }] }` in the
 * order of the obstacles; `overlap_area` for polygons. Throws InputRefused naming the field for bad input.
 */
export function solveClearanceCase(json: unknown): unknown {
  const { name, corridor, obstacles } = readCase(json, '')
  const points = obstacles.reduce((sum, o) => sum + (o.kind === 'point' ? 1 : o.points.length), corridor.pts.length)
  if (points > MOST_POINTS) throw new InputRefused(`the case has ${points} points, at most ${MOST_POINTS} are read`)
  const strip = { points: corridor.pts, widthM: corridor.width }
  return {
    ...(name === undefined ? {} : { name }),
    status: 'ok',
    obstacles: obstacles.map((obstacle) => {
      const { distanceM, clearanceM, isHit, overlapAreaM2 } = clearanceOf(strip, obstacle)
      const answer = { dist: distanceM, clearance: clearanceM, hit: isHit }
      return overlapAreaM2 === null ? answer : { ...answer, overlap_area: overlapAreaM2 }
    }),
  }
}
