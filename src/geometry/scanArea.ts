import { boundingBox } from './polygon.ts'
import { type Vec, rotate } from './vector.ts'

/** Direction of the scan lines, rad: no side of a drawn figure runs along it, so every side is cut by many lines. */
const SCAN_HEADING_RAD = 0.7371

/** Work is bounded: lines times figures' sides stays near this, between the least and the most lines. */
const SCAN_WORK = 4e7
const FEWEST_LINES = 400
const MOST_LINES = 4000

/**
 * Area common to a filled polygon (even-odd) and the strip of `widthM` along `line`, by parallel scan lines.
 *
 * For figures of many points, where cutting outlines against each other would take time with the square of them.
 * On each line the covered length is exact; lines are summed at the middle of their bands.
 * Accuracy: with 4,000 lines (up to 10,000 sides) some 1e-4 of the area, 1e-2 for 100,000 sides that cross everywhere.
 * Cost O(lines · sides), at most some seconds for 100,000 sides. Figures without area give 0.
 */
export function scannedOverlapM2(polygon: readonly Vec[], line: readonly Vec[], widthM: number): number {
  const box = boundingBox(line)
  if (!box || polygon.length < 3 || !(widthM > 0)) return 0
  const middle = { xM: (box.minXM + box.maxXM) / 2, yM: (box.minYM + box.maxYM) / 2 }
  const turned = (points: readonly Vec[]): Float64Array => {
    const flat = new Float64Array(2 * points.length)
    points.forEach((p, i) => {
      const { xM, yM } = rotate({ xM: p.xM - middle.xM, yM: p.yM - middle.yM }, SCAN_HEADING_RAD)
      flat[2 * i] = xM
      flat[2 * i + 1] = yM
    })
    return flat
  }
  const ring = turned(polygon)
  const path = turned(line.length === 1 ? [line[0] as Vec, line[0] as Vec] : line)
  const radiusM = widthM / 2
  const [lowPoly, highPoly] = yRange(ring, 0)
  const [lowPath, highPath] = yRange(path, radiusM)
  const fromY = Math.max(lowPoly, lowPath)
  const heightM = Math.min(highPoly, highPath) - fromY
  if (!(heightM > 0)) return 0
  const lines = Math.round(Math.min(MOST_LINES, Math.max(FEWEST_LINES, SCAN_WORK / ((ring.length + path.length) / 2))))
  const scan = { crossings: new Float64Array(ring.length / 2), lows: new Float64Array(path.length / 2), highs: new Float64Array(path.length / 2) }
  let sumM = 0
  for (let k = 0; k < lines; k++) {
    const y = fromY + ((k + 0.5) * heightM) / lines
    const crossings = polygonCrossings(ring, y, scan.crossings)
    if (crossings.length > 0) sumM += coveredM(crossings, ...stripIntervals(path, y, radiusM, scan))
  }
  return (sumM * heightM) / lines
}

function yRange(flat: Float64Array, marginM: number): [number, number] {
  let [low, high] = [Infinity, -Infinity]
  for (let i = 1; i < flat.length; i += 2) {
    low = Math.min(low, flat[i] as number)
    high = Math.max(high, flat[i] as number)
  }
  return [low - marginM, high + marginM]
}

/** Where the ring crosses the line at y, sorted. */
function polygonCrossings(ring: Float64Array, y: number, into: Float64Array): Float64Array {
  let count = 0
  for (let j = ring.length - 2, i = 0; i < ring.length; j = i, i += 2) {
    const [ay, by] = [ring[j + 1] as number, ring[i + 1] as number]
    if (ay > y === by > y) continue
    const [ax, bx] = [ring[j] as number, ring[i] as number]
    into[count++] = ax + ((y - ay) / (by - ay)) * (bx - ax)
  }
  return into.subarray(0, count).sort()
}

/** Left ends and right ends, each sorted, of the pieces of the line at y within `radiusM` of a segment of the path. */
function stripIntervals(path: Float64Array, y: number, radiusM: number, into: { lows: Float64Array; highs: Float64Array }): [Float64Array, Float64Array] {
  let count = 0
  for (let i = 0; i + 3 < path.length; i += 2) {
    const [ax, ay, bx, by] = [path[i] as number, path[i + 1] as number, path[i + 2] as number, path[i + 3] as number]
    if (y < Math.min(ay, by) - radiusM || y > Math.max(ay, by) + radiusM) continue
    let [low, high] = [Infinity, -Infinity]
    const reach = (x: number, halfM: number): void => {
      low = Math.min(low, x - halfM)
      high = Math.max(high, x + halfM)
    }
    // Everything near a segment is convex: its two discs and the rims beside it bound the piece.
    if (Math.abs(y - ay) <= radiusM) reach(ax, Math.sqrt(radiusM * radiusM - (y - ay) ** 2))
    if (Math.abs(y - by) <= radiusM) reach(bx, Math.sqrt(radiusM * radiusM - (y - by) ** 2))
    const lengthM = Math.hypot(bx - ax, by - ay)
    if (lengthM > 0 && by !== ay) {
      for (const side of [radiusM / lengthM, -radiusM / lengthM]) {
        const ratio = (y - ay - side * (bx - ax)) / (by - ay)
        if (ratio >= 0 && ratio <= 1) reach(ax - side * (by - ay) + ratio * (bx - ax), 0)
      }
    }
    if (low <= high) {
      into.lows[count] = low
      into.highs[count++] = high
    }
  }
  return [into.lows.subarray(0, count).sort(), into.highs.subarray(0, count).sort()]
}

/** Length that lies both between an odd and the next crossing and in any of the intervals. */
function coveredM(crossings: Float64Array, lows: Float64Array, highs: Float64Array): number {
  let [c, l, h, x, sumM] = [0, 0, 0, -Infinity, 0]
  while (c < crossings.length && h < highs.length) {
    const next = Math.min(crossings[c] as number, highs[h] as number, l < lows.length ? (lows[l] as number) : Infinity)
    if (c % 2 === 1 && l > h) sumM += next - x
    x = next
    if (l < lows.length && lows[l] === next) l += 1
    else if (crossings[c] === next) c += 1
    else h += 1
  }
  return sumM
}
