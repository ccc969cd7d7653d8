/** Nearest place beside the run on which a person may stand. */
import { boundingBox, type Box } from '../geometry/polygon.ts'
import type { Vec } from '../geometry/vector.ts'
import { recordsOf } from '../scene/document.ts'
import type { SiteModel } from './types.ts'
import { pointsOf } from './ways.ts'
import type { Zone } from './zones.ts'

export interface SpotPlace {
  runningM: number
  offsetM: number
}

export interface SpotSearch {
  place: SpotPlace | null
  /** Distances worked out; the last place tried may take them past `MOST_DISTANCES` by one a figure. */
  distanceCount: number
}

const STEP_M = 0.25
const MOST_M = 30
/** Far out the steps grow with the distance: nobody minds a foot in thirty yards. */
const COARSER = 1.05
/** A person is this wide from the middle, and keeps off gear by as much. */
const PERSON_M = 0.3
/** Kept off the edge of a zone, so that rounding of the place leaves nobody in it. */
const OFF_EDGE_M = 0.001
/** On the outline of the yard counts as in it. */
const ON_OUTLINE_M = 1e-9
/** No further place is tried after this many distances; the hardest of 3,000 random yards took 446. */
export const MOST_DISTANCES = 4000

/**
 * Nearest place to `from`, to a quarter of a metre (a twentieth of the way far out), outside every RED and AMBER zone given, off machine, rack, buildings,
 * trees, fences and water, and within the boundary. Straight away from the pipe is tried first. Null where there is none
 * within 30 m, or no run.
 */
export const clearSpot = (site: SiteModel, from: SpotPlace, zones: readonly Zone[]): SpotPlace | null => searchClearSpot(site, from, zones).place

/**
 * The same with what it cost. Two things keep it short: a figure is only measured where its box comes near, and a place
 * that is d deep in something rules out everything within d of it.
 */
export function searchClearSpot(site: SiteModel, from: SpotPlace, zones: readonly Zone[]): SpotSearch {
  if (site.run === null) return { place: null, distanceCount: 0 }
  const field = fieldOf(site, zones)
  const at = placesNear(site, from.runningM)
  const side = from.offsetM < 0 ? -1 : 1
  for (let aroundM = 0; aroundM <= MOST_M; aroundM = Math.max(aroundM + STEP_M, aroundM * COARSER)) {
    const count = Math.max(1, Math.ceil((2 * Math.PI * aroundM) / Math.max(0.5, aroundM / 12)))
    for (let i = 0; i < count; i += 1) {
      if (field.distanceCount() >= MOST_DISTANCES) return { place: null, distanceCount: field.distanceCount() }
      const turnRad = (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * ((2 * Math.PI) / count)
      const place = { runningM: tidy(from.runningM + aroundM * Math.sin(turnRad)), offsetM: tidy(from.offsetM + side * aroundM * Math.cos(turnRad)) }
      if (field.isClear(at(place))) return { place, distanceCount: field.distanceCount() }
    }
  }
  return { place: null, distanceCount: field.distanceCount() }
}

const tidy = (valueM: number): number => Math.round(valueM * 1000) / 1000 + 0

/** Places of the site by the run; along a straight by two directions, a tenth of the cost of asking the run each time. */
function placesNear(site: SiteModel, aboutM: number): (place: SpotPlace) => Vec {
  const isBent = site.bends.some(({ fromM, toM }) => fromM < aboutM + MOST_M + STEP_M && toM > aboutM - MOST_M - STEP_M)
  if (isBent) return ({ runningM, offsetM }) => site.atRunning(runningM, offsetM)
  const [origin, ahead, right] = [site.atRunning(aboutM, 0), site.atRunning(aboutM + 1, 0), site.atRunning(aboutM, 1)]
  const [aheadX, aheadY, rightX, rightY] = [ahead.xM - origin.xM, ahead.yM - origin.yM, right.xM - origin.xM, right.yM - origin.yM]
  return ({ runningM, offsetM }) => ({ xM: origin.xM + (runningM - aboutM) * aheadX + offsetM * rightX, yM: origin.yM + (runningM - aboutM) * aheadY + offsetM * rightY })
}

/** A figure a person keeps out of: filled or a bare line, with the room round it. Negative room: so deep inside is still allowed. */
interface Obstacle {
  points: readonly Vec[]
  isFilled: boolean
  roomM: number
  box: Box
}

interface Field {
  isClear: (point: Vec) => boolean
  distanceCount: () => number
}

function fieldOf(site: SiteModel, zones: readonly Zone[]): Field {
  const obstacles = obstaclesOf(site, zones)
  const yards = recordsOf(site.document, 'boundary').map(({ points }) => points)
  /** Discs nobody can stand in: x, y and radius. What ruled out the last place likely rules out the next. */
  const shut: { xM: number; yM: number; radiusM: number }[] = []
  let lastHit = 0
  let distances = 0
  const rule = ({ xM, yM }: Vec, radiusM: number): false => {
    shut.push({ xM, yM, radiusM })
    lastHit = shut.length - 1
    return false
  }
  const isRuledOut = ({ xM, yM }: Vec): boolean => {
    const inDisc = (i: number): boolean => {
      const disc = shut[i]
      return disc !== undefined && (disc.xM - xM) ** 2 + (disc.yM - yM) ** 2 < disc.radiusM ** 2
    }
    if (inDisc(lastHit)) return true
    for (let i = shut.length - 1; i >= 0; i -= 1) {
      if (!inDisc(i)) continue
      lastHit = i
      return true
    }
    return false
  }
  return {
    distanceCount: () => distances,
    isClear: (point) => {
      if (isRuledOut(point)) return false
      for (const { points, isFilled, roomM, box } of obstacles) {
        if (!isNearBox(box, point, roomM)) continue
        distances += 1
        const outM = outsideM(points, point, isFilled)
        if (outM <= roomM) return rule(point, roomM - outM)
      }
      if (yards.length === 0) return true
      distances += yards.length
      const outM = Math.min(...yards.map((ring) => outsideM(ring, point, true)))
      return outM <= ON_OUTLINE_M || rule(point, outM)
    },
  }
}

const isNearBox = ({ minXM, minYM, maxXM, maxYM }: Box, { xM, yM }: Vec, roomM: number): boolean =>
  xM >= minXM - roomM && xM <= maxXM + roomM && yM >= minYM - roomM && yM <= maxYM + roomM

/**
 * Distance of a point from a figure's outline, negative inside a filled one (even-odd). Plain arithmetic, good to some
 * 1e-9 m: what it is held against is kept off by half a millimetre.
 */
function outsideM(points: readonly Vec[], { xM, yM }: Vec, isFilled: boolean): number {
  let leastM2 = Infinity
  let isInside = false
  const n = points.length
  for (let i = isFilled ? 0 : Math.min(1, n - 1); i < n; i += 1) {
    const a = points[(i + n - 1) % n] as Vec
    const b = points[i] as Vec
    const [dx, dy, px, py] = [b.xM - a.xM, b.yM - a.yM, xM - a.xM, yM - a.yM]
    const lengthM2 = dx * dx + dy * dy
    const ratio = lengthM2 === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / lengthM2))
    leastM2 = Math.min(leastM2, (px - ratio * dx) ** 2 + (py - ratio * dy) ** 2)
    if (a.yM > yM !== b.yM > yM && px * dy < py * dx === dy < 0) isInside = !isInside
  }
  return isFilled && isInside ? -Math.sqrt(leastM2) : Math.sqrt(leastM2)
}

function obstaclesOf(site: SiteModel, zones: readonly Zone[]): Obstacle[] {
  const obstacles: Obstacle[] = []
  const add = (points: readonly Vec[], isFilled: boolean, roomM: number): void => {
    const box = boundingBox(points)
    if (box !== null) obstacles.push({ points, isFilled, roomM, box })
  }
  // Most zones are the same at every joint: each outline once.
  const seen = new Set<string>()
  for (const zone of zones) {
    if (zone.zoneClass === 'BLUE') continue
    for (const ring of zone.rings) {
      const key = ring.map(({ xM, yM }) => `${xM},${yM}`).join()
      if (seen.has(key)) continue
      seen.add(key)
      add(ring, true, -OFF_EDGE_M / 2)
    }
  }
  for (const item of site.placed.values()) {
    const { record } = item
    if (record.kind === 'machine' || record.kind === 'rack') add(pointsOf(item.outlineM), true, PERSON_M)
    if (record.kind === 'building' || record.kind === 'water') add(record.points, true, PERSON_M)
    if (record.kind === 'fence') add(record.points, false, PERSON_M)
    if (record.kind === 'tree') add([item], false, (record.figures.radiusM.value ?? 2) + PERSON_M)
  }
  return obstacles
}
